"""What a vehicle is not published for: which part of it failed, and whose fault that is."""

import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from undertrim.publish.facts.vehicle import Unplannable
from undertrim.record.combinations import TooMany
from undertrim.words import Message, SaidError, Value, message
from undertrim.work.limits import MEGABYTES, SECONDS
from undertrim.work.worker import Failed, Fault


@dataclass(frozen=True, slots=True)
class Failure:
    """A record whose vehicle could not be prepared: what is wrong, and where in the program, if that is ours."""

    path: Path
    address: str
    said: Message
    trace: str = ""


class Broken(SaidError):  # noqa: N818 - it names what happened
    """One part of what is published of a vehicle could not be made."""


@contextmanager
def making(what: Value) -> Iterator[None]:
    """Names what was being made when something went wrong; what is the machine's fault, or the record's, goes through."""
    try:
        yield
    except (OSError, MemoryError, Broken, Unplannable, TooMany):
        raise
    except Exception as error:
        fault = f"{type(error).__name__}: {str(error)[:300]}"
        raise Broken(message("building/cannot-be-made", what=what, error=fault)) from error


def broken(path: Path, address: str, error: Broken) -> Failure:
    """What to say of a vehicle of which a part could not be made."""
    cause = error.__cause__ or error
    return Failure(path, address, error.said, "".join(traceback.format_exception(cause, limit=-8)))


def refused(path: Path, address: str, why: Value) -> Failure:
    """What to say of a vehicle for which no plan can be made: the check tells more of it."""
    return Failure(path, address, message("building/run-check", fault=why))


def failure(path: Path, address: str, why: Failed) -> Failure:
    """What to say of a vehicle whose worker has no result."""
    return Failure(path, address, _meaning(why), why.trace)


def _meaning(why: Failed) -> Message:
    limit = {Fault.TIME: SECONDS, Fault.MEMORY: MEGABYTES}.get(why.fault)
    if limit:
        return message("building/too-large", why=why.said, limit=limit)
    code = "building/failed" if why.fault is Fault.ERROR else "building/ended"
    return message(code, why=why.said)
