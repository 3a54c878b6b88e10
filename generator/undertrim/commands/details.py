"""The command that says more, so that it works when it is typed where the message is read."""

import shlex
from pathlib import Path

from undertrim.record.root import NoWorkspace, root
from undertrim.record.store import Workspace
from undertrim.words import message, say

_worked_in: list[Workspace] = []
"""The workspace of the command that runs, as soon as it is found: a message may be made far from its options."""


def working_in(place: Workspace) -> Workspace:
    """Remember which workspace the command works in."""
    _worked_in[:] = [place]
    return place


def see_check() -> str:
    """How to see what is wrong with the records the command works with, which may not be those around here."""
    elsewhere = [place for place in _worked_in if not _is_around_here(place)]
    where = shlex.join(["--in", str(elsewhere[0].root)]) if elsewhere else ""
    return say(message("commands/see-check-there", where=where) if where else message("commands/see-check"))


def _is_around_here(place: Workspace) -> bool:
    try:
        return root(Path.cwd()).samefile(place.root)
    except (NoWorkspace, OSError):
        return False
