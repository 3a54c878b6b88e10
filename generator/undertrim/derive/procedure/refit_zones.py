"""What goes back before power, and what needs the battery off once more.

A part that was only laid aside with a restraint plug joined is back before power where what hangs on the plug may fire. Where it may
lie about (an airbag lamp), the gear is tested open, and the battery goes off again before the part is touched: every such part lies in
front of the gear, so putting it back first would bury what is tested.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.procedure import fates, purposes
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.walks import reach
from undertrim.record.model import Assignment, Part


@dataclass(frozen=True, slots=True)
class Zones:
    """The nodes that go back with the battery off again, and those that can only follow them; all others go back before."""

    dead: frozenset[str] = frozenset()
    last: frozenset[str] = frozenset()

    def of(self, node: str) -> int:
        """0 before the battery goes off again, 1 while it is, 2 once it is back."""
        return 1 if node in self.dead else 2 if node in self.last else 0


def zones(touchy: Collection[str], followers: Mapping[str, Collection[str]]) -> Zones:
    """The zones of a record: `touchy` nodes want the battery off to go back, `followers` says what goes back after each node.

    What must go back between two of them goes back while it is off.
    """
    behind = reach(followers, [other for name in touchy for other in followers[name]])
    dead = {name for name in behind if not reach(followers, [name]).isdisjoint(touchy)} | set(touchy)
    return Zones(frozenset(dead), frozenset(behind - dead))


def in_zones(back: Sequence[Node], where: Zones) -> tuple[list[Node], list[Node], list[Node]]:
    """Nodes in their order, by zone."""
    kept: tuple[list[Node], list[Node], list[Node]] = ([], [], [])
    for node in back:
        kept[where.of(node.id)].append(node)
    return kept


def back_before_power(part: Part, car: Assignment) -> bool:
    """Whether the ignition must stay off while the part is off: a restraint plug is undone, what may fire lies about, a seat is loose."""
    restraint = (t for t in part.tethers.values() if t.circuit == "restraint" and t.when.holds(car))
    return purposes.seat_loose(part, car) or any(
        not fates.stays_joined(part, tether) or not purposes.may_lie_loose(tether) for tether in restraint
    )
