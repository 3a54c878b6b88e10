"""Reads files that are files: a pipe would be waited for without end, and a device never ends."""

import os
import stat
from pathlib import Path


class NotPlain(Exception):  # noqa: N818 - it names what was found
    """What stands there is a folder, pipe, socket or device."""


def read(path: Path, most: int) -> bytes:
    """The bytes of a file; of one that is longer than `most`, just enough to tell. Raises OSError and NotPlain."""
    number = os.open(path, os.O_RDONLY | _AT_ONCE)
    if not stat.S_ISREG(os.fstat(number).st_mode):
        os.close(number)
        raise NotPlain(str(path))
    with os.fdopen(number, "rb") as file:
        return file.read(most + 1)


_AT_ONCE = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
"""Opening a pipe waits for its other end otherwise."""
