"""Digests of files. A process that lives on, such as the preview, reads a file again only where it may have changed."""

import hashlib
import time
from dataclasses import dataclass, field
from pathlib import Path

SETTLED = 2.0
"""Seconds after its last change from which a file's times are trusted: two writes closer together may share a time."""

_Stamp = tuple[int, int, int, int]


@dataclass(slots=True)
class Digests:
    """What the files were at the last look."""

    known: dict[Path, tuple[_Stamp, str]] = field(default_factory=dict)

    def of(self, path: Path) -> str:
        """The digest of a file's bytes. Raises OSError where it cannot be read."""
        status = path.stat()
        stamp = (status.st_mtime_ns, status.st_ctime_ns, status.st_size, status.st_ino)
        before = self.known.get(path)
        if before and before[0] == stamp:
            return before[1]
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
        if max(stamp[:2]) < (time.time() - SETTLED) * 1e9:
            self.known[path] = stamp, digest
        return digest


def joined(*parts: str) -> str:
    """One digest of several texts in this order."""
    return hashlib.sha256("\0".join(parts).encode("utf-8", "surrogateescape")).hexdigest()[:40]
