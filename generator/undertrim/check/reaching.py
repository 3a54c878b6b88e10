"""The vehicles that changed gear reaches though their records are what they were, and what that turns for them."""

from collections.abc import Iterator, Sequence
from functools import partial
from pathlib import Path

from undertrim.derive.fit.stock import Stock
from undertrim.derive.review.by_stock import Turned, turned
from undertrim.derive.review.change import Side, Sort
from undertrim.derive.review.outcome import Short, VehicleChange
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace, address
from undertrim.words import Value, message
from undertrim.work.crew import Crew, Failed

TOGETHER = 50
"""So many vehicles a worker is given at once: the stock is sent with them."""


def reached(
    here: Workspace, paths: Sequence[Path], stocks: tuple[Stock, Stock], gear: Sequence[str]
) -> Iterator[list[VehicleChange | Short]]:
    """The vehicles that only other gear reaches, some at a time; many are shared out to workers."""
    some = [paths[start : start + TOGETHER] for start in range(0, len(paths), TOGETHER)]
    work = partial(_by_stock, here, turned(stocks, gear))
    if len(some) < 2:
        yield from map(work, some)
        return
    with Crew() as workers:
        for among, found in zip(some, workers.each(work, some), strict=True):
            yield [uncompared(path, found.said) for path in among] if isinstance(found, Failed) else found


def _by_stock(here: Workspace, gear: Turned, paths: Sequence[Path]) -> list[VehicleChange | Short]:
    """What other gear turns for some vehicles; one that cannot be read is left to the check."""
    done: list[VehicleChange | Short] = []
    for path in paths:
        if not gear.reaches(path.read_bytes()):
            continue
        entry = here.load(path)
        if isinstance(entry.record, VehicleRecord) and not entry.problems:
            try:
                one = gear.vehicle(Side(entry.record, entry.address, entry.source.data))
            except Exception as error:  # noqa: BLE001 - whatever it is, the run goes on and the record is named
                done.append(uncompared(path, named(error)))
            else:
                done += [] if one.empty else [one]
    return done


def named(error: Exception) -> str:
    """What went wrong, in short."""
    return f"{type(error).__name__}: {str(error)[:200]}"


def uncompared(path: Path, error: Value) -> Short:
    """A vehicle for which something of ours, or its worker, failed."""
    return Short(address(path), "", Sort.CHANGED, why=message("review/uncompared", error=error))
