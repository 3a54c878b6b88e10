"""Where a workspace is: the folder that holds `records/`. By itself, since every command asks for it, also one that reads no record."""

from pathlib import Path

from undertrim.words import SaidError, message


class NoWorkspace(SaidError):  # noqa: N818 - it names what happened
    """There is no `records` folder here or above."""


def root(start: Path) -> Path:
    """The folder that holds `records/`, at `start` or the nearest above it. Raises NoWorkspace."""
    start = start.resolve()
    for folder in (start, *start.parents):
        if (folder / "records").is_dir():
            return folder
        if folder.name == "records" and folder.is_dir():
            return folder.parent
    raise NoWorkspace(message("files/no-workspace", folder=str(start)))
