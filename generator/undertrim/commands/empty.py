"""A collection without records is not one without problems."""

from undertrim.commands.usage import Usage
from undertrim.record.misnamed import misnamed
from undertrim.record.problem import printable
from undertrim.record.store import Workspace
from undertrim.words import message


def refuse_empty(place: Workspace) -> None:
    """Raises Usage where there is no record at all, and nothing that somebody may have meant as one."""
    if not place.files() and not any(misnamed(place)):
        raise Usage(message("commands/no-records", records=printable(str(place.shown(place.records)))))
