"""The way out for a file under a wrong name: a command that works when it is typed where the message is read."""

import os
import shlex
from pathlib import Path

from undertrim.words import Message, message


def renaming(now: Path, wanted: Path) -> Message | str:
    """How to rename a file, whether or not git knows it yet; in words where another file would be lost."""
    if wanted.exists() and not (now.exists() and wanted.samefile(now)):
        return message("renaming/there-already", file=as_typed(wanted))
    if wanted.parent.exists() or now.parent == wanted.parent:
        return command("mv", now, wanted)
    return f"{command('mkdir', '-p', wanted.parent)} && {command('mv', now, wanted)}"


def command(*words: str | Path) -> str:
    """Words and paths as a command for a POSIX shell (IEEE Std 1003.1, Shell & Utilities)."""
    return shlex.join(word if isinstance(word, str) else as_typed(word) for word in words)


def as_typed(path: Path) -> str:
    """A path as one would type it here; it never begins like an option."""
    shown = os.path.relpath(path) if path.is_relative_to(Path.cwd()) else str(path)
    return f"./{shown}" if shown.startswith("-") else shown
