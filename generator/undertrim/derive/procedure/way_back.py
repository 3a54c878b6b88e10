"""The order in which things go back: what must be back before power, and what needs the battery off once more.

A part that was only laid aside with a restraint plug joined is back before power where what hangs on the plug may fire. Where it may
lie about (an airbag lamp), the gear is tested open, and the battery goes off again before the part is touched: every such part lies in
front of the gear, so putting it back first would bury what is tested.
"""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.walks import reach

Before = Mapping[str, Collection[str]]


@dataclass(frozen=True, slots=True)
class Zones:
    """The nodes that go back with the battery off again, and those that can only follow them; all others go back before."""

    dead: frozenset[str] = frozenset()
    last: frozenset[str] = frozenset()

    def of(self, node: str) -> int:
        """0 before the battery goes off again, 1 while it is, 2 once it is back."""
        return 1 if node in self.dead else 2 if node in self.last else 0


def zones(touchy: Collection[str], before: Before) -> Zones:
    """The zones of a record: `touchy` nodes want the battery off to go back, `before` says what was done before each node.

    What must be done between two of them goes back between them.
    """
    ahead = reach(before, [other for name in touchy for other in before[name]])
    dead = {name for name in ahead if not reach(before, [name]).isdisjoint(touchy)} | set(touchy)
    return Zones(frozenset(dead), frozenset(ahead - dead))


def must_be_back(done: Iterable[Node], before: Before, wanted: Callable[[Node], bool]) -> set[str]:
    """The nodes for which `wanted` holds, and all that was done after them because of them."""
    found: set[str] = set()
    for node in done:
        if wanted(node) or not found.isdisjoint(before[node.id]):
            found.add(node.id)
    return found


def in_zones(back: Sequence[Node], where: Zones) -> tuple[list[Node], list[Node], list[Node]]:
    """Nodes in their order, by zone."""
    kept: tuple[list[Node], list[Node], list[Node]] = ([], [], [])
    for node in back:
        kept[where.of(node.id)].append(node)
    return kept
