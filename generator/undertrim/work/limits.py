"""How long one file may take, and how much memory it may need."""

import os
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from undertrim.words import message
from undertrim.work.refused import Refused

SECONDS = "UNDERTRIM_TIME_LIMIT"
MEGABYTES = "UNDERTRIM_MEMORY_LIMIT"
MOST = 1_000_000
"""No limit may be set higher: it would be none, and a mistyped one more likely."""


class BadLimit(Refused):
    """A limit in the environment is not a number that can be used; the message says which and what to write."""


@dataclass(frozen=True, slots=True)
class Limits:
    """What each file may use: seconds on the clock, and megabytes (10^6 bytes) of memory of its own.

    Both are far more than any record needs (a large one takes 2 s and 300 MB with its sheets), so that a slow machine is never
    taken for a bad record.
    """

    seconds: float = 120
    megabytes: int = 2000


def limits(environment: Mapping[str, str] = os.environ) -> Limits:
    """The limits that the environment asks for, or the usual ones. Raises BadLimit."""
    usual = Limits()
    return Limits(_number(environment, SECONDS, int(usual.seconds)), _number(environment, MEGABYTES, usual.megabytes))


def _number(environment: Mapping[str, str], name: str, usual: int) -> int:
    typed = environment.get(name, "").strip()
    if not typed:
        return usual
    if not (typed.isascii() and typed.isdigit() and len(typed) < 10 and 1 <= int(typed) <= MOST):
        raise BadLimit(message("work/bad-limit", name=name, typed=repr(typed[:40]), most=MOST))
    return int(typed)


def hold(megabytes: int) -> None:
    """Let this process have so much memory more than it has now; beyond it, Python raises MemoryError.

    What it has now it may owe to the process that it is a copy of, and no file is to blame for that. Linux alone counts what a
    process writes to (RLIMIT_DATA, getrlimit(2), since 4.7); elsewhere the limit of time has to do.
    """
    _AT_FIRST.append(_peak())
    if sys.platform != "linux":
        return
    import resource

    _, hard = resource.getrlimit(resource.RLIMIT_DATA)
    wanted = megabytes * 1_000_000 + _data()
    soft = wanted if hard == resource.RLIM_INFINITY else min(wanted, hard)
    resource.setrlimit(resource.RLIMIT_DATA, (soft, hard))
    resource.setrlimit(resource.RLIMIT_CORE, (0, resource.getrlimit(resource.RLIMIT_CORE)[1]))


def worn(megabytes: int) -> bool:
    """Whether this process once took more than half of that: a fresh one should take the next file, so that none pays for another."""
    return _peak() - (_AT_FIRST[-1] if _AT_FIRST else 0) > megabytes * 500_000


_AT_FIRST: list[int] = []
"""The most that this process had held when it was given its limit, in bytes."""


def _peak() -> int:
    """The most that this process has held, in bytes; 0 where nobody counts it."""
    if sys.platform == "win32":
        return 0
    import resource

    unit = 1 if sys.platform == "darwin" else 1024
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * unit


def _data() -> int:
    """What counts against RLIMIT_DATA now, in bytes (proc_pid_statm(5), the sixth number, in pages)."""
    try:
        pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[5])
    except (OSError, IndexError, ValueError):
        return 0
    return pages * os.sysconf("SC_PAGE_SIZE")
