"""What happens inside a worker process: one piece of work after the other, each answered with its result or the reason there is none."""

import errno
import os
import signal
import threading
import traceback
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from multiprocessing import parent_process
from multiprocessing.connection import Connection, wait
from typing import Any

from undertrim.words import Value, message
from undertrim.work.limits import Limits, hold, worn


class Fault(StrEnum):
    """Why a piece of work has no result."""

    TIME = "time"
    MEMORY = "memory"
    ENDED = "ended"
    ERROR = "error"


@dataclass(frozen=True, slots=True)
class Failed:
    """A piece of work without a result: `said` is half a sentence on what happened, `trace` where, if that is known."""

    fault: Fault
    said: Value
    trace: str = ""


@dataclass(frozen=True, slots=True)
class Trouble:
    """The machine failed, a full disk for example: no other item would fare better."""

    error: OSError


GONE = frozenset({errno.ENOENT, errno.ESTALE})
"""What is wrong with one file alone: it went away while it was worked on."""


def labour(line: Connection, inherited: Iterable[Connection], allowed: Limits) -> None:
    """Answer (work, item) with (answer, whether this process should be replaced), until the line is closed."""
    for other in inherited:  # copies of the ends of others: with them open, no end of a process would be noticed
        other.close()
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C is for whoever started us, and who then ends us
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    hold(allowed.megabytes)
    try:
        while True:
            work, item = line.recv()
            _send(line, answer(work, item, allowed), worn(allowed.megabytes))
    except (EOFError, ConnectionError):
        return


def _end_with_parent() -> None:
    """Whoever started us may be killed outright: nothing must go on working for nobody."""
    parent = parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(1)


def answer(work: Callable[[Any], Any], item: Any, allowed: Limits) -> Any:
    """The result of `work`, or why there is none."""
    try:
        return work(item)
    except MemoryError:
        return Failed(Fault.MEMORY, message("work/memory", megabytes=allowed.megabytes))
    except OSError as error:
        if error.errno in GONE:
            return Failed(Fault.ERROR, f"{error.strerror}: {error.filename}")
        return Trouble(error)
    except Exception as error:  # noqa: BLE001 - whatever it is, the others go on and this one is named
        return Failed(Fault.ERROR, f"{type(error).__name__}: {error}", traceback.format_exc(limit=-8))


def _send(line: Connection, found: Any, replace: bool) -> None:
    try:
        line.send((found, replace))
    except (EOFError, ConnectionError):
        raise
    except Exception as error:  # noqa: BLE001 - what cannot be sent is a fault of the work, not of the line
        line.send((Failed(Fault.ERROR, f"{type(error).__name__}: {error}", traceback.format_exc(limit=-8)), True))
