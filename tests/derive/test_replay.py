"""The replay catches a procedure that is wrong, whoever wrote it: each way of spoiling a good one has a fault of its own."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from undertrim.derive import cars
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.derive.simulation import replay
from undertrim.record.model import Part, Prep, VehicleRecord, Wait
from undertrim.record.store import Workspace
from undertrim.record.units import parse

ROOT = Path(__file__).parents[2]
RECORDS = sorted((ROOT / "records" / "vehicles").rglob("*.yaml"))

Steps = list[Step]
Spoiler = Callable[[VehicleRecord, Steps], Iterator[Steps]]


def record_of(path: Path) -> VehicleRecord:
    found = Workspace(ROOT).load(path).record
    assert isinstance(found, VehicleRecord)
    return found


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_every_job_pair_and_car_of_the_records_is_safe(path: Path) -> None:
    record = record_of(path)
    planner, every = Planner(record), targets(record)
    visits = (
        [[one] for one in every]
        + [[one, other] for i, one in enumerate(every) for other in every[i + 1 :]]
        + [list(every)]
    )
    for car in cars.assignments(record):
        for visit in visits:
            assert replay(record, car, planner.plan(visit, car).steps) == []


def without(steps: Steps, unwanted: Step) -> Steps:
    return [step for step in steps if step is not unwanted]


def swapped(steps: Steps, old: Step, new: Step) -> Steps:
    return [new if step is old else step for step in steps]


def moved(steps: Steps, what: Step, before: Step) -> Steps:
    kept = without(steps, what)
    place = next(i for i, step in enumerate(kept) if step is before)
    return [*kept[:place], what, *kept[place:]]


def dropping(kind: str) -> Spoiler:
    """Leave out one step of a kind."""

    def spoil(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
        yield from (without(steps, step) for step in steps if step.kind == kind and (kind != "restore" or step.text))

    return spoil


def drop_mechanical_test(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    yield from (without(steps, step) for step in steps if step.kind == "test" and step.section == "refit")


def needed(record: VehicleRecord, step: Step) -> bool:
    """Whether some other node names this part as a prerequisite, so that leaving it out is a fault."""
    return isinstance(step.node.thing if step.node else None, Part)


def drop_removal(record: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    yield from (without(steps, step) for step in steps if step.kind == "remove")


def drop_battery_off(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    for step in steps:
        thing = step.node.thing if step.node else None
        if step.kind == "prepare" and isinstance(thing, Prep) and thing.sets.get("battery") == "off":
            yield without(steps, step)


def battery_off_first(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """The battery goes off before what needs it on."""
    off = next(
        (
            s
            for s in steps
            if s.kind == "prepare"
            and s.node
            and isinstance(s.node.thing, Prep)
            and s.node.thing.sets.get("battery") == "off"
        ),
        None,
    )
    for step in steps:
        thing = step.node.thing if step.node else None
        if off and step.kind == "prepare" and isinstance(thing, Prep) and thing.needs.get("battery") == "on":
            yield moved(steps, off, step)


def power_before_battery(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    on = next((step for step in steps if step.id == "power:on"), None)
    back = next(
        (
            s
            for s in steps
            if s.kind == "restore" and s.node and isinstance(s.node.thing, Prep) and "battery" in s.node.thing.sets
        ),
        None,
    )
    if on and back:
        yield moved(steps, on, back)


def leave_ignition_on(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    yield from (without(steps, step) for step in steps if step.id == "power:off")


def forget_joining(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """A refit leaves one undone tether open."""
    for step in steps:
        for line in step.tethers:
            if step.kind in ("refit", "move") and line.act == "rejoin":
                yield swapped(
                    steps, step, replace(step, tethers=tuple(other for other in step.tethers if other is not line))
                )


def forget_undoing(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """A part comes off with a tether still joined."""
    for step in steps:
        for line in step.tethers:
            if step.kind == "remove" and line.act == "undo":
                yield swapped(
                    steps, step, replace(step, tethers=tuple(other for other in step.tethers if other is not line))
                )


def undo_restraint(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """A restraint plug that should stay joined is undone, and power comes on with the plug open."""
    for step in steps:
        for line in step.tethers:
            if step.kind == "remove" and line.tether.circuit == "restraint" and line.act == "leave":
                undone = tuple(TetherLine(other.tether, "undo") if other is line else other for other in step.tethers)
                yield swapped(steps, step, replace(step, tethers=undone))


def lose_a_fastener(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """One fewer goes back than came out."""
    for step in steps:
        for line in step.fasteners:
            if (
                step.kind in ("refit", "move")
                and isinstance(line.count, int)
                and line.fastener.kind not in ("hook", "bond")
            ):
                fewer = _Fewer(line.fastener, line.fate)
                yield swapped(
                    steps,
                    step,
                    replace(step, fasteners=tuple(fewer if other is line else other for other in step.fasteners)),
                )


class _Fewer(FastenerLine):
    """A line that puts in one fewer than its record says."""

    @property
    def count(self) -> int:
        assert isinstance(self.fastener.count, int)
        return self.fastener.count - 1


def reuse_single_use(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    for step in steps:
        for line in step.fasteners:
            if line.fate == "new":
                old = FastenerLine(line.fastener, "back")
                yield swapped(
                    steps,
                    step,
                    replace(step, fasteners=tuple(old if other is line else other for other in step.fasteners)),
                )


def touch_look_alike(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    for step in steps:
        for line in step.fasteners:
            if step.kind == "remove" and line.fate == "leave":
                out = FastenerLine(line.fastener, "out")
                yield swapped(
                    steps,
                    step,
                    replace(step, fasteners=tuple(out if other is line else other for other in step.fasteners)),
                )


def forget_seal(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    for step in steps:
        thing = step.node.thing if step.node else None
        if step.kind == "refit" and isinstance(thing, Part) and thing.seal:
            yield swapped(steps, step, replace(step, text=()))


def shorten_wait(record: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """A wait shorter than the maker's before restraint wiring is touched."""
    touches = any(line.tether.circuit == "restraint" for step in steps for line in step.tethers)
    for step in steps:
        if touches and step.kind == "wait" and step.wait and not isinstance(step.wait.time, str):
            yield swapped(steps, step, replace(step, wait=Wait(parse("60 s", "time"), step.wait.why)))


def drop_wait(record: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    touches = any(line.tether.circuit == "restraint" for step in steps for line in step.tethers)
    yield from (without(steps, step) for step in steps if step.kind == "wait" and touches)


def refit_too_early(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """A part goes back before one that lies behind it."""
    backs = [step for step in steps if step.kind == "refit"]
    for first, later in pairwise(backs):
        if first.node and later.node and isinstance(first.node.thing, Part):
            behind = [*(ref.part for ref in first.node.thing.after), *(f.under for f in first.node.thing.held_by)]
            if later.node.thing.id in behind and first.side in ("", later.side):
                yield moved(steps, later, first)


SPOILERS: dict[str, tuple[Spoiler, set[str]]] = {
    "a removal is left out": (drop_removal, {"order", "left-off", "fastener-extra", "tether-extra"}),
    "a refit is left out": (dropping("refit"), {"left-off", "tether-open", "unsealed", "order"}),
    "a move over is left out": (dropping("move"), {"left-off", "tether-open", "order"}),
    "a preparation is not undone": (dropping("restore"), {"state", "unrestored"}),
    "the test of a cable or rod is left out": (drop_mechanical_test, {"untested"}),
    "the battery stays on": (drop_battery_off, {"state", "restraint-live", "fastener-extra"}),
    "the battery goes off before what needs it": (battery_off_first, {"state", "order", "locked-in"}),
    "power before the battery is back": (power_before_battery, {"state"}),
    "the ignition stays on": (leave_ignition_on, {"state"}),
    "a tether is not joined again": (forget_joining, {"tether-open"}),
    "a tether is not undone": (forget_undoing, {"tether-missed"}),
    "a restraint plug is undone and power comes on": (undo_restraint, {"restraint-open"}),
    "a fastener is left over": (lose_a_fastener, {"fastener-left-over"}),
    "a single-use fastener is used again": (reuse_single_use, {"single-use"}),
    "a look-alike is taken out": (touch_look_alike, {"look-alike"}),
    "a covering is not sealed": (forget_seal, {"unsealed"}),
    "a wait is shorter than the maker's": (shorten_wait, {"wait-short"}),
    "there is no wait at all": (drop_wait, {"wait-short", "wait-missing"}),
    "a part goes back before what lies behind it": (refit_too_early, {"order"}),
}


@pytest.mark.parametrize("name", SPOILERS)
def test_a_spoiled_procedure_is_caught(name: str) -> None:
    spoil, kinds = SPOILERS[name]
    tried = 0
    for path in RECORDS:
        record = record_of(path)
        planner = Planner(record)
        for car in cars.assignments(record):
            good = list(planner.plan(targets(record), car).steps)
            for bad in spoil(record, good):
                tried += 1
                faults = replay(record, car, bad)
                assert faults, f"{record.vehicle.model}: nothing was said"
                assert {fault.kind for fault in faults} <= kinds, [fault.message for fault in faults]
    assert tried, "no record has anything to spoil in this way"
