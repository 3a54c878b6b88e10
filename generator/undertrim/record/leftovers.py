"""Clears what no longer belongs to any record out of a folder of remembered results."""

import shutil
import time
from collections.abc import Collection
from contextlib import suppress
from pathlib import Path

KEPT = 24 * 3600.0
"""Seconds for which something unused stays: a reverted edit comes back at once, and another run may be about to use it."""


def sweep(folder: Path, used: Collection[str]) -> None:
    """Remove the files and folders in `folder` that are not named in `used` and have not changed for a day."""
    before = time.time() - KEPT
    for path in folder.iterdir() if folder.is_dir() else ():
        if path.name not in used:
            with suppress(OSError):
                if path.lstat().st_mtime < before:
                    shutil.rmtree(path) if path.is_dir() else path.unlink()
