"""The cautions of a record with the places they stand at."""

from collections.abc import Iterator

from undertrim.check.findings import Subject
from undertrim.record.model import Caution
from undertrim.record.source import Pointer


def stated(subject: Subject) -> Iterator[tuple[Pointer, Caution]]:
    """Every caution of every preparation, part and opening, without those in which the schema refused something."""
    record = subject.record
    for section, things in (("preps", record.preps), ("parts", record.parts), ("openings", record.openings)):
        for thing in things.values():
            for index, caution in enumerate(thing.cautions):
                pointer = (section, thing.id, "cautions", index)
                if subject.intact(pointer):
                    yield pointer, caution
