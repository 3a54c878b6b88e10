"""How a command ends: what the surroundings did to it is told in a sentence, and what is not theirs is our fault."""

import codecs
import errno
import io
import os
import signal
import sys
import threading
from contextlib import suppress
from types import FrameType

from undertrim import resources
from undertrim.record.problem import printable

_WAY_OUT = {
    errno.ENOSPC: "the disk is full: make room and run it again",
    errno.EDQUOT: "your share of the disk is used up: make room and run it again",
    errno.EFBIG: "the file would be larger than the system lets it: raise the limit",
    errno.EROFS: "the disk is read-only: work where you may write",
    errno.EACCES: "you may not do that there: see who owns it, or work in another folder",
    errno.EPERM: "you may not do that there: see who owns it, or work in another folder",
    errno.EMFILE: "too many files are open: raise the limit of the system",
    errno.ENFILE: "too many files are open: raise the limit of the system",
    errno.ENOMEM: "the machine has no memory left: end something else",
    errno.EAGAIN: "the system lets no more processes start: end some, or raise the limit",
    errno.EIO: "the disk cannot be read or written: see whether it is sound",
    errno.ENOENT: "it went away meanwhile, or was never there",
    errno.ENOTDIR: "something on the way there is no folder",
    errno.EISDIR: "a folder stands where a file should be",
    errno.EEXIST: "something else stands there: move it away",
    errno.ENAMETOOLONG: "the name is longer than the system takes",
    errno.ELOOP: "links lead round in a circle: remove one",
}


def of_the_surroundings(error: OSError) -> str:
    """What the machine, its disk or its folders did, with the way out; empty where it is rather our fault."""
    name = str(error.filename2 or error.filename or "")
    ours = error.errno == errno.ENOENT and name.startswith(str(resources.inside()))
    if error.errno is None or ours:
        return ""
    place = f"'{printable(name)}': " if name else ""
    said = (error.strerror or type(error).__name__).lower()
    return f"{place}{said}: {_WAY_OUT.get(error.errno, 'see whether the place is sound')}"


def show_anything() -> None:
    """Let no letter end a command that the output cannot show: there it becomes its number, as JSON would write it."""
    codecs.register_error("undertrim", _numbered)
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        if stream is None:  # closed by whoever started us
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: SIM115, PTH123
        elif isinstance(stream, io.TextIOWrapper) and stream.errors == "strict":
            stream.reconfigure(errors="undertrim")


def _numbered(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    units = error.object[error.start : error.end].encode("utf-16-be", "surrogatepass")
    numbers = (units[at : at + 2].hex() for at in range(0, len(units), 2))
    return "".join(f"\\u{number}" for number in numbers), error.end


def leave_output() -> None:
    """Nobody reads any more: what is still to be written, now or when Python ends, goes nowhere."""
    with suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


def end_tidily_when_told() -> None:
    """Let `kill` and a closed terminal end a command like Ctrl-C does: with its folders removed and its workers ended."""
    if threading.current_thread() is not threading.main_thread():
        return
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) is signal.SIG_DFL:
            signal.signal(number, _end)


def _end(number: int, _: FrameType | None) -> None:
    raise SystemExit(128 + number)
