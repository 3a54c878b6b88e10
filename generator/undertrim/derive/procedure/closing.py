"""Steps around the tests: plugs joined for them, and what is tried and measured once everything is back."""

from collections.abc import Iterator

from undertrim.derive.electrical.bounds import usual
from undertrim.derive.procedure import fates, purposes, states
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.naming import about
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.tools import tool_called
from undertrim.record.model import Assignment, Part, Rest, Tether
from undertrim.record.units import Quantity
from undertrim.words import Items, Value, message

POWERED = {"battery": "on", "ignition": "on"}
ASLEEP = {"battery": "on", "ignition": "off"}


def join(node: Node, car: Assignment) -> Iterator[Step]:
    """Join again, with the part still off, the plugs that a test may use; nothing where it has none."""
    part = node.thing
    assert isinstance(part, Part)
    lines = tuple(TetherLine(line.tether, "rejoin") for line in fates.refitted(part, car) if line.act == "joined")
    if lines:
        yield Step(
            f"join:{node.id}", "join", "test", about(message("steps/join"), node), (message("steps/join-how"),), node, tethers=lines,
        )  # fmt: skip


def try_out(node: Node, car: Assignment) -> Iterator[Step]:
    """Try what works through the plugs that were joined again; nothing where there are none."""
    part = node.thing
    assert isinstance(part, Part)
    lines = tuple(TetherLine(line.tether, "try") for line in fates.going_back(part, car) if _tried(line))
    if lines:
        yield Step(
            f"try:{node.id}", "try", "try", about(message("steps/try"), node), (), node, tethers=lines, needs=POWERED
        )


def _tried(line: TetherLine) -> bool:
    """Whether something electric was joined again; of what was never undone, only where the record says how to prove it."""
    tether = line.tether
    if not states.tether_kind(tether.kind).electric or line.act not in ("rejoin", "lay-in"):
        return False
    return bool(tether.test) or (line.act == "rejoin" and tether.circuit == "ordinary")


def words(tether: Tether) -> Value:
    """How to try what works through a plug: the record's own test, or what is usual for what it serves."""
    usual_ways = tuple(text for name in purposes.served(tether) if (text := purposes.purpose(name).try_))
    return tether.test or (Items(usual_ways, "spaced") if usual_ways else message("steps/serves-unknown"))


def restraint_lamp() -> Iterator[Step]:
    """See that the restraint system finds itself whole."""
    yield Step("try:restraint", "try", "try", message("steps/lamp"), (message("steps/lamp-how"),), needs=POWERED)


def at_rest(known: Rest | None) -> Iterator[Step]:
    """Measure what the car draws asleep, against what it drew as it came."""
    current = known.current if known and isinstance(known.current, Quantity) else None
    asleep = known.asleep_after if known and isinstance(known.asleep_after, Quantity) else None
    text = (
        message("steps/rest-how"),
        message("steps/rest-asleep", time=asleep) if asleep else message("steps/rest-asleep-unknown"),
        message("steps/rest-drew", current=current)
        if current
        else message("steps/rest-drew-unknown", usual=usual("rest_limit") * 1000),
    )
    yield Step(
        "measure:rest", "measure", "after", message("steps/rest"), text, tools=(tool_called("clamp-meter"),),
        unknown=not (current and asleep), needs=ASLEEP,
    )  # fmt: skip
