"""What becomes of a tether: what is done with it as its part comes off, and at which step it ends, and how."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from undertrim.derive.procedure import purposes
from undertrim.derive.procedure.node import Node
from undertrim.record.model import Assignment, Opening, Part, Tether, VehicleRecord, When

STAYING = ("leave", "goes-with")
"""Fates of what is not undone at all."""

TAKEN = ("to-gear", "park", "bridge")
"""Fates that the fitting of new gear ends where the part is replaced."""


@dataclass(frozen=True, slots=True)
class TetherLine:
    """One tether in one step.

    `act` is leave, goes-with or undo as its part comes off; rejoin, lay-in, to-gear, park or bridge where it ends. A plug that a test
    may use is rejoined before the tests and `joined` as its part goes back; what was joined again is tried last: try.
    `later` says how an undone one may end: one act, or two where that depends on the visit. `node` is the part it is on where the
    step is about something else.
    """

    tether: Tether
    act: str
    later: tuple[str, ...] = ()
    node: Node | None = None

    @property
    def when(self) -> When:
        """The cars it is for: its own, and those of its part where the step is about something else."""
        return _both(self.node.thing.when, self.tether.when) if self.node else self.tether.when


def _both(one: When, other: When) -> When:
    found = dict(one.clauses)
    for name, choices in other.clauses:
        found[name] = tuple(choice for choice in found[name] if choice in choices) if name in found else choices
    return When(tuple(found.items()))


def fate_of_tether(part: Part, tether: Tether) -> str:
    """What becomes of a tether: as written, or by what becomes of its part."""
    return tether.then or ("to-gear" if part.replaced == "yes" else "rejoin")


def stays_joined(part: Part, tether: Tether) -> bool:
    """Whether it is never undone."""
    return fate_of_tether(part, tether) in STAYING


def _live(part: Part, car: Assignment) -> Iterator[Tether]:
    return (tether for tether in part.tethers.values() if tether.when.holds(car))


def coming_off(part: Part, car: Assignment, *, returns: bool) -> tuple[TetherLine, ...]:
    """The tethers as their part comes off; `returns` says that some visits put it back though new gear replaces it."""
    return tuple(_undone(part, tether, returns=returns) for tether in _live(part, car))


def _undone(part: Part, tether: Tether, *, returns: bool) -> TetherLine:
    fate = fate_of_tether(part, tether)
    if fate in STAYING:
        return TetherLine(tether, fate)
    return TetherLine(tether, "undo", tuple(dict.fromkeys((fate, "rejoin") if returns else (fate,))))


def going_back(part: Part, car: Assignment) -> tuple[TetherLine, ...]:
    """The tethers as their part goes back or moves over; what was left where it was has no line."""
    lines = (TetherLine(tether, _ending(part, tether)) for tether in _live(part, car))
    return tuple(line for line in lines if line.act != "leave")


def refitted(part: Part, car: Assignment) -> tuple[TetherLine, ...]:
    """The tethers as their part goes back after the tests: what a test may use is joined already."""
    return tuple(
        replace(line, act="joined") if line.act == "rejoin" and purposes.for_a_test(line.tether) else line
        for line in going_back(part, car)
    )


def _ending(part: Part, tether: Tether) -> str:
    """A replaced part that goes back all the same takes its tethers back too, whatever new gear would have made of them."""
    fate = fate_of_tether(part, tether)
    if fate == "goes-with":
        return "lay-in"
    return "rejoin" if part.replaced == "yes" and fate in TAKEN else fate


def taken_over(node: Node, car: Assignment) -> tuple[TetherLine, ...]:
    """The tethers of a replaced part as new gear is fitted in its place."""
    part = node.thing
    assert isinstance(part, Part)
    lines = (TetherLine(tether, fate_of_tether(part, tether), node=node) for tether in _live(part, car))
    return tuple(line for line in lines if line.act in TAKEN and all(choices for _, choices in line.when.clauses))


def only_there(record: VehicleRecord, part: Node, opening: Node) -> bool:
    """Whether the tethers of a replaced part end at this opening in every visit of every car.

    Only then may they stand in a step that all visits share. Elsewhere they have a step of their own, which some visits lack.
    """
    assert isinstance(opening.thing, Opening)
    naming = [one.id for one in record.openings.values() if part.thing.id in one.behind]
    return naming == [opening.thing.id] and (part.side is not None or len(opening.thing.each) < 2)
