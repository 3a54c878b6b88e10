"""Digests of files. A process that lives on, such as the preview, reads a file again only where it may have changed."""

import errno
import hashlib
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from undertrim.record import plain_files

SETTLED = 2.0
"""Seconds after its last change from which a file's times are trusted: two writes closer together may share a time."""

LARGEST = 100_000_000
"""Bytes of a file that are looked at; no picture of the handbook is larger."""

_Stamp = tuple[int, int, int, int]


@dataclass(slots=True)
class Digests:
    """What the files were at the last look."""

    known: dict[Path, tuple[_Stamp, str]] = field(default_factory=dict)
    said: dict[str, frozenset[str]] = field(default_factory=dict)

    def of(self, path: Path) -> str:
        """The digest of a file's bytes. Raises OSError where it cannot be read."""
        status = path.stat()
        stamp = (status.st_mtime_ns, status.st_ctime_ns, status.st_size, status.st_ino)
        before = self.known.get(path)
        if before and before[0] == stamp:
            return before[1]
        digest = hashlib.sha256(_content(path)).hexdigest()
        if max(stamp[:2]) < (time.time() - SETTLED) * 1e9:
            self.known[path] = stamp, digest
        return digest

    def words(self, path: Path, found_in: Callable[[bytes], frozenset[str]]) -> frozenset[str]:
        """What is found in a file's bytes, remembered for as long as they are the same. Raises OSError where it cannot be read."""
        digest = self.of(path)
        if digest not in self.said:
            self.said[digest] = found_in(_content(path))
        return self.said[digest]


def _content(path: Path) -> bytes:
    try:
        return plain_files.read(path, LARGEST)
    except plain_files.NotPlain as error:
        raise OSError(errno.EINVAL, "not a file", str(path)) from error


def joined(*parts: str) -> str:
    """One digest of several texts in this order."""
    return hashlib.sha256("\0".join(parts).encode("utf-8", "surrogateescape")).hexdigest()[:40]
