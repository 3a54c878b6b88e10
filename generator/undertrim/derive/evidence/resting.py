"""The blocks of facts that some openings of one car rest on: what somebody has seen who took out and joined what they ask for."""

from collections.abc import Iterable, Iterator, Mapping

from undertrim.derive import jobs
from undertrim.derive.evidence import seen
from undertrim.derive.evidence.fingerprint import WHOLE, fingerprints
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.node import home
from undertrim.derive.procedure.planning import Planner, Procedure, Target
from undertrim.record.model import VehicleRecord, VerifiedPart
from undertrim.record.source import Data

_TAKEN_OVER = ("functions", "duties", "sound", "ladders")
"""Sections of what a receiver takes over from the factory radio."""


def targets(record: VehicleRecord, of: Iterable[str], side: str, car: Mapping[str, str]) -> tuple[Target, ...]:
    """The openings by name at one side, or wherever they are. Raises jobs.BadRequest."""
    return tuple(one for one in jobs.wanted(record, of, car) if not side or one.side in ("", side))


def of_stamp(record: VehicleRecord, data: Data, stamp: VerifiedPart) -> frozenset[str]:
    """The blocks that a stamp would have now; none where the record has no such opening or no way to it."""
    car = seen.answers(record, seen.seen(record, stamp.car))
    try:
        return frozenset(blocks(record, data, targets(record, stamp.of, stamp.side or "", car), car))
    except (jobs.BadRequest, Unreachable, TooTangled):
        return frozenset()


def blocks(record: VehicleRecord, data: Data, wanted: tuple[Target, ...], car: Mapping[str, str]) -> tuple[str, ...]:
    """The names of the blocks, in the order of the record; `data` is the record as a whole. Raises Unreachable, TooTangled, jobs.BadRequest."""
    planner, known = Planner(record), jobs.car(record, car)
    plans = [planner.plan(wanted, one) for one in jobs.open_cars(record, known)]
    found = {f"variants/{name}" for name in car} | set(WHOLE) - {"rest"}
    for plan in plans:
        found.update("/".join(place) for place in _things(plan))
    found.update(_beside(record, found))
    return tuple(
        name for name in fingerprints(data) if name in found or name.partition("/")[0] in _sections(record, wanted)
    )


def _things(plan: Procedure) -> Iterator[tuple[str, str]]:
    """What the steps are about, and what is worked at."""
    for step in plan.steps:
        if step.node:
            section, name = home(step.node.thing)
            yield str(section), str(name)
    for target in plan.targets:
        section, name = home(plan.record.jobs[target.job])
        yield str(section), str(name)


def _beside(record: VehicleRecord, found: set[str]) -> Iterator[str]:
    """Where these are, the plugs at them, and the cable that a place for an amplifier is fed by."""
    here = [thing for thing in record.things if "/".join(map(str, home(thing))) in found]
    yield from (f"areas/{thing.area}" for thing in here if thing.area)
    yield from (
        f"connectors/{plug.id}" for plug in record.connectors.values() if f"parts/{plug.at.partition('/')[0]}" in found
    )
    yield from (
        f"runs/{run}" for one in here if (run := getattr(one, "run", ""))
    )  # where the kind of opening is fed by one


def _sections(record: VehicleRecord, wanted: Iterable[Target]) -> tuple[str, ...]:
    """The sections that belong to what is worked at as a whole."""
    worked = (record.openings.get(target.job) for target in wanted)
    return _TAKEN_OVER if any(one is not None and one.takes_over for one in worked) else ()
