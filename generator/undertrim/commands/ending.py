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
from undertrim.words import Message, message

_WAY_OUT = {
    errno.ENOSPC: message("ending/disk-full"),
    errno.EDQUOT: message("ending/share-used-up"),
    errno.EFBIG: message("ending/file-too-large"),
    errno.EROFS: message("ending/read-only"),
    errno.EACCES: message("ending/not-allowed"),
    errno.EPERM: message("ending/not-allowed"),
    errno.EMFILE: message("ending/too-many-files"),
    errno.ENFILE: message("ending/too-many-files"),
    errno.ENOMEM: message("ending/memory-gone"),
    errno.EAGAIN: message("ending/no-more-processes"),
    errno.EIO: message("ending/disk-broken"),
    errno.ENOENT: message("ending/went-away"),
    errno.ENOTDIR: message("ending/no-folder-on-the-way"),
    errno.EISDIR: message("ending/folder-there"),
    errno.EEXIST: message("ending/something-there"),
    errno.ENAMETOOLONG: message("ending/long-name"),
    errno.ELOOP: message("ending/circle"),
}


def of_the_surroundings(error: OSError) -> Message | None:
    """What the machine, its disk or its folders did, with the way out; None where it is rather our fault."""
    name = str(error.filename2 or error.filename or "")
    ours = error.errno == errno.ENOENT and name.startswith(str(resources.inside()))
    if error.errno is None or ours:
        return None
    fault = (error.strerror or type(error).__name__).lower()
    way_out = _WAY_OUT.get(error.errno, message("ending/look"))
    if not name:
        return message("ending/fault", fault=fault, way_out=way_out)
    return message("ending/at", place=printable(name), fault=fault, way_out=way_out)


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
    sys.unraisablehook = _told_again


def _told_again(lost: "sys.UnraisableHookArgs") -> None:
    """What is raised while Python cleans an object up goes nowhere: a word to end that came just then comes once more, a moment later.

    What objects say that a word to end left half made is no news.
    """
    if isinstance(lost.exc_value, SystemExit) and isinstance(lost.exc_value.code, int):
        number = lost.exc_value.code - 128
    elif isinstance(lost.exc_value, KeyboardInterrupt):
        number = int(signal.SIGINT)
    else:
        if not _told:
            sys.__unraisablehook__(lost)
        return
    again = threading.Timer(0.01, os.kill, (os.getpid(), number))
    again.daemon = True
    again.start()


_told: list[int] = []
"""The words to end that came."""


def _end(number: int, _: FrameType | None) -> None:
    _told.append(number)
    raise SystemExit(128 + number)
