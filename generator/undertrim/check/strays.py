"""What the records hold beside records, as problems: it is named wherever all records are checked."""

from collections.abc import Iterator, Sequence
from pathlib import Path

from undertrim.record import photo_files
from undertrim.record.misnamed import misnamed
from undertrim.record.problem import Level, Position, Problem, printable
from undertrim.record.store import Workspace
from undertrim.words import message

RULE = "file"


def strays(workspace: Workspace, paths: Sequence[Path]) -> Iterator[Problem]:
    """A problem for each file that is not read although it seems to be meant, and for each name that some system cannot hold.

    Those among and below `paths`, or all if none are given.
    """
    yield from _ownerless(workspace, paths)
    places = [path.resolve() for path in paths] or [workspace.records]
    for item in misnamed(workspace):
        if not any(item.path.is_relative_to(place) for place in places):
            continue
        level = Level.WARNING if item.left_behind else Level.ERROR
        yield Problem(workspace.shown(item.path), Position(1, 1), level, RULE, item.said)


def _ownerless(workspace: Workspace, paths: Sequence[Path]) -> Iterator[Problem]:
    """Photographs of no record; told wherever all records of their make are checked."""
    for path in photo_files.ownerless(workspace.own("vehicles", "")):
        if not paths or any(path.resolve().is_relative_to(asked.resolve()) for asked in paths):
            said = message("files/photos-of-none", name=printable(path.name))
            yield Problem(workspace.shown(path), Position(1, 1), Level.WARNING, RULE, said)
