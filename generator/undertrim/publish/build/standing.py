"""The site that stands: built in a folder beside it, put in its place in one step, and whole whatever happens meanwhile.

Beside `site` works one build at a time, in `.site-building`. Whoever is killed leaves that folder; the next one finds that nobody holds
it, puts back what was moved away, and clears the rest.
"""

import ctypes
import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from undertrim.words import message
from undertrim.work.refused import Refused

try:
    import fcntl
except ImportError:  # Windows: there, two builds at once are not noticed
    fcntl = None  # type: ignore[assignment]


class Taken(Refused):
    """Another build is at work on the same site; the text says so."""


class NoPlace(Refused):
    """The site cannot go where it is asked to; the text says why, and the way out."""


@contextmanager
def beside(out: Path) -> Iterator[Path]:
    """A folder on the same disk as `out` that is ours alone and goes when we are done. Raises Taken."""
    folder = out.parent / f".{out.name}-building"
    lock = _held(folder, out)
    try:
        (folder / ".gitignore").write_text("*\n", encoding="utf-8")
        _cleared(folder, out)
        yield folder
    finally:
        if _restored(folder, out):
            shutil.rmtree(folder, ignore_errors=True)
        os.close(lock)


@contextmanager
def preview(root: Path) -> Iterator[Path]:
    """A folder for one preview below `root`; what killed ones left there goes."""
    for left in root.glob(".preview-*-building"):
        with suppress(Taken, OSError), beside(left.with_name(left.name[1 : -len("-building")])):
            pass
    with beside(root / f"preview-{os.getpid()}") as folder:
        yield folder


def _held(folder: Path, out: Path) -> int:
    """Make the folder and hold it; the system lets go of it when this process ends, however that happens."""
    while True:
        folder.mkdir(parents=True, exist_ok=True)
        number = os.open(folder / "held", os.O_RDWR | os.O_CREAT | os.O_CLOEXEC)
        try:
            _lock(number, out)
            if _same(number, folder / "held"):
                return number
        except BaseException:
            os.close(number)
            raise
        os.close(number)  # whoever held it removed it before we had it


def _lock(number: int, out: Path) -> None:
    if fcntl is not None:
        try:
            fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError as error:
            raise Taken(message("building/taken", folder=str(out))) from error


def _same(number: int, path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(number), path.stat())
    except FileNotFoundError:
        return False


def _cleared(folder: Path, out: Path) -> None:
    """Put back the site that a killed build had moved away, and remove what else it left."""
    if not _restored(folder, out):
        raise NoPlace(message("building/put-back", old=str(folder / "old"), folder=str(out)))
    for name in ("fresh", "old"):
        if (folder / name).exists():
            shutil.rmtree(folder / name)


def _restored(folder: Path, out: Path) -> bool:
    """Whether no site stands aside while none is in its place."""
    old = folder / "old"
    if old.exists() and not out.exists():
        with suppress(OSError):
            old.rename(out)
    return out.exists() or not old.exists()


def swap(fresh: Path, out: Path, folder: Path) -> None:
    """Put `fresh` in the place of `out`: the old site stands until the new one does."""
    if not out.exists():
        fresh.rename(out)
    elif not _exchanged(fresh, out):
        out.rename(folder / "old")
        try:
            fresh.rename(out)
        except BaseException:
            (folder / "old").rename(out)
            raise


def _exchanged(one: Path, other: Path) -> bool:
    """Let two folders change their names in one step, where the system and the disk can do that.

    Linux renameat2(2) with RENAME_EXCHANGE (2), AT_FDCWD (-100); macOS renamex_np(2) with RENAME_SWAP (2).
    """
    names = os.fsencode(one), os.fsencode(other)
    try:
        library = ctypes.CDLL(None, use_errno=True)
        if sys.platform == "darwin":
            return bool(library.renamex_np(*names, ctypes.c_uint(2)) == 0)
        return bool(library.renameat2(-100, names[0], -100, names[1], ctypes.c_uint(2)) == 0)
    except (OSError, AttributeError, TypeError):
        return False


def refuse_elsewhere(out: Path, root: Path) -> None:
    """A site replaces all that is in its folder: not the records, nor a folder of something else. Raises NoPlace."""
    records = root / "records"
    if out == root or root.is_relative_to(out) or out.is_relative_to(records):
        raise NoPlace(message("building/holds-records", folder=str(out)))
    if out.exists() and not out.is_dir():
        raise NoPlace(message("building/no-folder", folder=str(out)))
    if out.is_dir() and any(out.iterdir()) and not (out / "index.html").is_file():
        raise NoPlace(message("building/holds-other", folder=str(out)))
