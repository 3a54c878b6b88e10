"""Ways to spoil a good procedure, each with the kinds of fault that the replay must find."""

# Long because it is one table: each way to spoil a procedure stands with the faults that must be found.

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import cache
from itertools import pairwise
from pathlib import Path

from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.record.model import Part, Prep, VehicleRecord, Wait
from undertrim.record.store import Workspace
from undertrim.record.units import parse

ROOT = Path(__file__).parents[1]
RECORDS = sorted((ROOT / "records" / "vehicles").rglob("*.yaml"))

Steps = list[Step]
Spoiler = Callable[[VehicleRecord, Steps], Iterator[Steps]]


@cache
def record_of(path: Path) -> VehicleRecord:
    found = Workspace(ROOT).load(path).record
    assert isinstance(found, VehicleRecord)
    return found


def without(steps: Steps, unwanted: Step) -> Steps:
    return [step for step in steps if step is not unwanted]


def swapped(steps: Steps, old: Step, new: Step) -> Steps:
    return [new if step is old else step for step in steps]


def moved(steps: Steps, what: Step, before: Step) -> Steps:
    kept = without(steps, what)
    place = next(i for i, step in enumerate(kept) if step is before)
    return [*kept[:place], what, *kept[place:]]


def stateless(steps: Sequence[Step]) -> Steps:
    """Steps as somebody would write them by hand, without the state beside them: what is wrong must show in what they do."""
    return [replace(step, state={}) for step in steps]


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
            if step.kind in ("refit", "move", "join") and line.act == "rejoin":
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
            yield swapped(steps, step, replace(step, seal=""))


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


def drop_try(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    yield from (without(steps, step) for step in steps if step.kind == "try")


def try_without_power(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    on = next((step for step in steps if step.id == "power:on:try"), None)
    off = next((step for step in steps if step.id == "power:off:try"), None)
    if on and off:
        yield without(without(steps, on), off)


def try_too_early(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """Something is tried while its part is still off."""
    test = next((step for step in steps if step.section == "test" and step.kind == "test"), None)
    for step in steps:
        if test and step.kind == "try" and step.node and not _back(steps, step, test):
            yield moved(steps, step, test)


def _back(steps: Steps, step: Step, before: Step) -> bool:
    back = [s for s in steps[: steps.index(before)] if s.kind in ("refit", "move") and s.node == step.node]
    return bool(back)


def measure_awake(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """The current at rest is read with the ignition on, and with the battery off."""
    rest = next(step for step in steps if step.kind == "measure")
    for step in steps:
        if step.kind == "power" and step.id.startswith("power:off"):
            yield moved(steps, rest, step)
    yield moved(steps, rest, next(step for step in steps if step.kind == "install"))


def join_too_late(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """What a test uses is joined once the test is over."""
    off = next((step for step in steps if step.id == "power:off"), None)
    for step in steps:
        if (
            off
            and step.kind == "join"
            and any(line.tether.serves[:1] in (("sound",), ("windows",)) for line in step.tethers)
        ):
            refit = next(s for s in steps if s.kind == "refit" and s.node == step.node)
            if steps.index(refit) > steps.index(off):
                yield moved(steps, step, off)


def stay_on(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    """The battery does not go off again for what goes back with restraint wiring."""
    again = [step for step in steps if step.again]
    if again:
        yield [step for step in steps if step not in again]


def wrong_state_shown(_: VehicleRecord, steps: Steps) -> Iterator[Steps]:
    for step in steps:
        if step.kind == "install" or (step.kind == "test" and step.needs):
            yield swapped(steps, step, replace(step, state={"battery": "off" if step.kind == "test" else "on"}))


SPOILERS: dict[str, tuple[Spoiler, set[str]]] = {
    "a removal is left out": (drop_removal, {"order", "left-off", "fastener-extra", "tether-extra"}),
    "a refit is left out": (
        dropping("refit"),
        {"left-off", "tether-open", "unsealed", "order", "try-before-refit", "restraint-loose", "restraint-open"},
    ),
    "a move over is left out": (dropping("move"), {"left-off", "tether-open", "order"}),
    "a preparation is not undone": (dropping("restore"), {"state", "unrestored", "locked-in"}),
    "the test of a cable or rod is left out": (drop_mechanical_test, {"untested"}),
    "the battery stays on": (drop_battery_off, {"state", "restraint-live", "fastener-extra", "caution-state"}),
    "the battery goes off before what needs it": (battery_off_first, {"state", "order", "locked-in"}),
    "power before the battery is back": (power_before_battery, {"state"}),
    "the ignition stays on": (leave_ignition_on, {"state", "battery-under-load"}),
    "a tether is not joined again": (forget_joining, {"tether-open", "test-unjoined", "restraint-open"}),
    "a tether is not undone": (forget_undoing, {"tether-missed"}),
    "a restraint plug is undone and power comes on": (undo_restraint, {"restraint-open"}),
    "a fastener is left over": (lose_a_fastener, {"fastener-left-over"}),
    "a single-use fastener is used again": (reuse_single_use, {"single-use"}),
    "a look-alike is taken out": (touch_look_alike, {"look-alike"}),
    "a covering is not sealed": (forget_seal, {"unsealed"}),
    "a wait is shorter than the maker's": (shorten_wait, {"wait-short"}),
    "there is no wait at all": (drop_wait, {"wait-short", "wait-missing"}),
    "a part goes back before what lies behind it": (refit_too_early, {"order", "restraint-live"}),
    "what was joined is never tried": (drop_try, {"untried", "lamp-unwatched"}),
    "something is tried without power": (try_without_power, {"state"}),
    "something is tried before its part is back": (try_too_early, {"try-before-refit", "state"}),
    "the current at rest is read awake": (measure_awake, {"state"}),
    "what a test uses is joined after it": (join_too_late, {"test-unjoined"}),
    "restraint wiring goes back with the battery on": (stay_on, {"restraint-live"}),
    "another state stands beside a step": (wrong_state_shown, {"state-shown"}),
}
