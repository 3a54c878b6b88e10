"""Digests of files. A process that lives on, such as the preview, reads a file again only where it may have changed."""

import errno
import hashlib
import os
import time
from collections.abc import Callable
from pathlib import Path

from undertrim.record import plain_files
from undertrim.record.ledger import Ledger

SETTLED = 2.0
"""Seconds after its last change from which a file's times are trusted: two writes closer together may share a time."""

LARGEST = 100_000_000
"""Bytes of a file that are looked at; no picture of the handbook is larger."""


class Digests:
    """What the files were at the last look: of this process, or of the last one where a `ledger` has it. There a file is called by where it is below `root`."""

    def __init__(self, ledger: Ledger | None = None, root: Path | None = None) -> None:
        self.ledger = ledger or Ledger()
        self._root = f"{root}{os.sep}" if root else ""

    def of(self, path: Path) -> str:
        """The digest of a file's bytes. Raises OSError where it cannot be read."""
        name, status = os.fspath(path).removeprefix(self._root), os.stat(path)  # noqa: PTH116 - a third of the time
        stamp = [status.st_mtime_ns, status.st_ctime_ns, status.st_size, status.st_ino]
        before = self.ledger.get(name)
        if before and before[0] == stamp:
            return str(before[1])
        digest = hashlib.sha256(_content(path)).hexdigest()
        if max(stamp[:2]) < (time.time() - SETTLED) * 1e9:
            self.ledger.put(name, [stamp, digest])
        return digest

    def words(self, path: Path, found_in: Callable[[bytes], frozenset[str]]) -> frozenset[str]:
        """What is found in a file's bytes, remembered for as long as they are the same. Raises OSError where it cannot be read."""
        said = f"said {self.of(path)}"
        known = self.ledger.get(said)
        if known is None:
            known = sorted(found_in(_content(path)))
            self.ledger.put(said, known)
        return frozenset(known)


def _content(path: Path) -> bytes:
    try:
        return plain_files.read(path, LARGEST)
    except plain_files.NotPlain as error:
        raise OSError(errno.EINVAL, "not a file", str(path)) from error


def joined(*parts: str) -> str:
    """One digest of several texts in this order."""
    return hashlib.sha256("\0".join(parts).encode("utf-8", "surrogateescape")).hexdigest()[:40]
