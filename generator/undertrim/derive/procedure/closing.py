"""Steps around the tests: plugs joined for them, and what is tried and measured once everything is back."""

from collections.abc import Iterator

from undertrim.derive.electrical.bounds import usual
from undertrim.derive.procedure import fates, purposes, states
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, Part, Rest, Tether
from undertrim.record.units import Quantity, show

POWERED = {"battery": "on", "ignition": "on"}
ASLEEP = {"battery": "on", "ignition": "off"}


def join(node: Node, car: Assignment) -> Iterator[Step]:
    """Join again, with the part still off, the plugs that a test may use; nothing where it has none."""
    part = node.thing
    assert isinstance(part, Part)
    lines = tuple(TetherLine(line.tether, "rejoin") for line in fates.refitted(part, car) if line.act == "joined")
    if lines:
        yield Step(
            f"join:{node.id}", "join", "test", f"Join for the test: {_named(node)}",
            ("Lay the part where its wiring is not pulled, and join what a test may use. It stays joined.",), node, tethers=lines,
        )  # fmt: skip


def try_out(node: Node, car: Assignment) -> Iterator[Step]:
    """Try what works through the plugs that were joined again; nothing where there are none."""
    part = node.thing
    assert isinstance(part, Part)
    lines = tuple(TetherLine(line.tether, "try") for line in fates.going_back(part, car) if _tried(line))
    if lines:
        yield Step(f"try:{node.id}", "try", "try", f"Try: {_named(node)}", (), node, tethers=lines, needs=POWERED)


def _tried(line: TetherLine) -> bool:
    """Whether something electric was joined again; of what was never undone, only where the record says how to prove it."""
    tether = line.tether
    if not states.tether_kind(tether.kind).electric or line.act not in ("rejoin", "lay-in"):
        return False
    return bool(tether.test) or (line.act == "rejoin" and tether.circuit == "ordinary")


def words(tether: Tether) -> str:
    """How to try what works through a plug: the record's own test, or what is usual for what it serves."""
    usual_ways = [text for name in purposes.served(tether) if (text := purposes.purpose(name).try_)]
    return tether.test or " ".join(usual_ways) or "What it serves is not recorded: find out, and try that."


def restraint_lamp() -> Iterator[Step]:
    """See that the restraint system finds itself whole."""
    yield Step("try:restraint", "try", "try", "Watch the airbag lamp", (_LAMP,), needs=POWERED)


_LAMP = (
    "With the ignition just switched on it must light, and go out after its self-check, in the time the maker names. "
    "If it stays dark, stays lit or comes back: stop, have the stored faults read, and do not hand the car over."
)


def at_rest(known: Rest | None) -> Iterator[Step]:
    """Measure what the car draws asleep, against what it drew as it came."""
    current = known.current if known and isinstance(known.current, Quantity) else None
    asleep = known.asleep_after if known and isinstance(known.asleep_after, Quantity) else None
    text = (
        "Latch the doors, bonnet and boot as if shut, take the key away and lock. Put a clamp meter round the battery lead; the battery stays joined.",
        f"Read it {show(asleep)} after locking: the car is then asleep."
        if asleep
        else "How long this car takes to fall asleep is not recorded: watch until the reading stays low, usually 20 to 60 min (common practice).",
        f"As it came it drew {show(current)}. What the new gear draws when switched off comes on top; anything more, look for what stays awake."
        if current
        else f"What this car drew as it came is not recorded. Usual is up to {usual('rest_limit') * 1000:g} mA (common practice); write the reading down.",
    )
    yield Step(
        "measure:rest", "measure", "after", "Measure the current at rest", text, tools=("DC clamp meter",),
        unknown=not (current and asleep), needs=ASLEEP,
    )  # fmt: skip


def _named(node: Node) -> str:
    return f"{node.thing.name}, {node.side}" if node.side else node.thing.name
