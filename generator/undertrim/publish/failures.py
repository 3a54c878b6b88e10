"""What a vehicle is not published for: which part of it failed, and whose fault that is."""

import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from undertrim.derive.cars import TooMany
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.work.limits import MEGABYTES, SECONDS
from undertrim.work.worker import Failed, Fault

CHECK = "run 'undertrim check' for the details"
OURS = "this is our fault, not the record's: report it with the record"


@dataclass(frozen=True, slots=True)
class Failure:
    """A record whose vehicle could not be prepared: what is wrong, the way out, and where in the program, if that is ours."""

    path: Path
    address: str
    text: str
    hint: str
    trace: str = ""


class Broken(Exception):  # noqa: N818 - it names the state of what is made
    """One part of what is published of a vehicle could not be made; the text says which, and why."""


@contextmanager
def making(what: str) -> Iterator[None]:
    """Names what was being made when something went wrong; what is the machine's fault, or the record's, goes through."""
    try:
        yield
    except (OSError, MemoryError, Broken, Unplannable, TooMany):
        raise
    except Exception as error:
        raise Broken(f"{what} cannot be made: {type(error).__name__}: {str(error)[:300]}") from error


def broken(path: Path, address: str, error: Broken) -> Failure:
    """What to say of a vehicle of which a part could not be made."""
    cause = error.__cause__ or error
    return Failure(path, address, str(error), OURS, "".join(traceback.format_exception(cause, limit=-8)))


def failure(path: Path, address: str, why: Failed) -> Failure:
    """What to say of a vehicle whose worker has no result."""
    limit = {Fault.TIME: SECONDS, Fault.MEMORY: MEGABYTES}.get(why.fault)
    large = f"look for something far larger than it should be; a slow machine may need a higher {limit}"
    text = why.text if why.fault is Fault.ERROR else f"what is published of it {why.text}"
    return Failure(path, address, text, large if limit else OURS, why.trace)
