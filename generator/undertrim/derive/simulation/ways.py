"""The ways into one car: which parts a reference means there, what is under what, and what is behind an opening.

None of it changes while a procedure runs, so it is found once for all procedures that are replayed of one car.
"""

from collections.abc import Iterable, Iterator

from undertrim.derive.procedure.node import Node, node_id
from undertrim.record.model import Assignment, Opening, Part, Prep, Ref, VehicleRecord


def covers(part: Part | Prep, car: Assignment, side: str | None) -> Iterator[Ref]:
    """The parts under which fasteners of one side sit, or of both where there is one of it."""
    for fastener in part.held_by:
        if side and fastener.side not in (None, side):
            continue
        if fastener.under and fastener.leave == "no" and fastener.when.holds(car):
            yield Ref(fastener.under)


class Ways:
    """The ways into one car of a record; what was asked once is kept."""

    def __init__(self, record: VehicleRecord, car: Assignment) -> None:
        self.record = record
        self.car = car
        self._before: dict[tuple[str, str | None], frozenset[str]] = {}
        self._behind: dict[tuple[str, str], frozenset[str]] = {}
        self._making_room: dict[tuple[str, str], frozenset[str]] = {}

    def fitted(self, ref: Ref, side: str | None) -> tuple[str, ...]:
        """The node ids that a reference means in this car; empty where the part is not fitted."""
        thing = self.record.parts.get(ref.part)
        if thing is None or not thing.when.holds(self.car) or not ref.when.holds(self.car):
            return ()
        if not thing.each:
            return (ref.part,)
        wanted = ref.side or side
        return tuple(node_id(ref.part, each) for each in thing.each if wanted in (None, each))

    def before(self, part: Part, side: str | None) -> frozenset[str]:
        """The nodes that must be off before a part comes off at a side: those it names, and those over its fasteners."""
        key = (part.id, side)
        if key not in self._before:
            self._before[key] = frozenset(self._all((*part.after, *covers(part, self.car, side)), side))
        return self._before[key]

    def behind(self, node: Node, opening: Opening) -> frozenset[str]:
        """Every node that may have to come off to get at an opening, whatever the route."""
        key = (node.id, opening.id)
        if key not in self._behind:
            self._behind[key] = frozenset(self.reached(map(Ref, opening.behind), node.side))
        return self._behind[key]

    def making_room(self, node: Node, opening: Opening) -> frozenset[str]:
        """The parts behind which new gear here takes their place: those that are replaced, and that no other opening claims by its `behind`."""
        key = (node.id, opening.id)
        if key not in self._making_room:
            self._making_room[key] = frozenset(
                name for name in self.behind(node, opening) if self._makes_room(name.partition("@")[0], opening)
            )
        return self._making_room[key]

    def _makes_room(self, part: str, opening: Opening) -> bool:
        claims = [one for one in self.record.openings.values() if part in one.behind]
        return self.record.parts[part].replaced == "yes" and (not claims or opening in claims)

    def reached(self, refs: Iterable[Ref], side: str | None) -> set[str]:
        """The nodes that some references mean, and all that may have to come off before them."""
        waiting = list(self._all(refs, side))
        found: set[str] = set()
        while waiting:
            name = waiting.pop()
            if name not in found:
                found.add(name)
                waiting.extend(self._next(name))
        return found

    def _next(self, name: str) -> Iterator[str]:
        """What comes before one node, by each of its routes."""
        part, own = self.record.parts[name.partition("@")[0]], name.partition("@")[2] or None
        routes = (ref for choice in part.after_any for refs in choice.values() for ref in refs)
        yield from self.before(part, own)
        yield from self._all(routes, own)

    def _all(self, refs: Iterable[Ref], side: str | None) -> Iterator[str]:
        for ref in refs:
            yield from self.fitted(ref, side)
