"""The record as a graph for one car: a node for every part, preparation and opening, once per side where it exists per side.

Node ids are the record's ids; a side is added as `@left`. The node of an opening, and of what is reached for, is `open:<id>`, a usual preparation's `usual:<id>`.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from undertrim.derive.procedure import states
from undertrim.derive.procedure.graph import Choice, Graph
from undertrim.derive.procedure.homes import homes
from undertrim.derive.procedure.node import OPENING, Node, node_id
from undertrim.derive.procedure.order import master_order
from undertrim.derive.procedure.turns import Turns
from undertrim.derive.procedure.walks import reach
from undertrim.derive.procedure.wishes import Wish, wishes
from undertrim.record.model import Assignment, Fastener, Opening, Part, Prep, Reached, Ref, Side, States, VehicleRecord

GUESS = 2.0
"""Minutes a step without a recorded time counts when routes are compared; it is never shown."""

USUAL_COST = 0.2
"""The same for a usual preparation, such as setting the parking brake."""

CLOSED_COST = 1e6
"""The same for what is inside the high-voltage system: any way round it is cheaper."""


@dataclass(frozen=True)
class Layout:
    """All nodes of a record for one car, with what comes before what. `car` has the choices on which something here rests.

    `graph` holds true prerequisites (they are pulled into a job); `ordering` adds those that only matter between nodes that are
    both done, such as "whatever needs the battery on comes before it goes off".
    """

    record: VehicleRecord
    car: Assignment
    nodes: Mapping[str, Node]
    graph: Graph
    ordering: Graph
    refit_after: Mapping[str, frozenset[str]]
    """For each node the parts that are back before it goes back, as the record says; what follows from `graph` is not in it."""

    _reached: dict[str, frozenset[str]] = field(default_factory=dict)

    def reached(self, node: str) -> frozenset[str]:
        """The node and everything it may need by any route."""
        if node not in self._reached:
            self._reached[node] = frozenset(reach(self.graph.needs, [node]))
        return self._reached[node]

    @cached_property
    def key(self) -> tuple[tuple[str, str], ...]:
        """By which the layouts of one record are told apart."""
        return tuple(self.car.items())

    @cached_property
    def followers(self) -> Mapping[str, frozenset[str]]:
        """For each node what can only go back after it: what came off before it and made way for it, and what waits for it as written."""
        found = {name: set(self.ordering.needs.get(name, ())) for name in self.nodes}
        for name, awaited in self.refit_after.items():
            for other in awaited:
                found[other].add(name)
        return {name: frozenset(after) for name, after in found.items()}

    @cached_property
    def inside(self) -> frozenset[str]:
        """The nodes that are inside the high-voltage system, where nobody works."""
        return frozenset(
            name
            for name, node in self.nodes.items()
            if not isinstance(node.thing, Reached) and self.record.high_voltage(node.thing) == "inside"
        )

    @cached_property
    def homes(self) -> Mapping[str, frozenset[str]]:
        """For each part that is replaced or moves over, the openings with which it does."""
        return homes(self.record, self.nodes, self.reached)

    @cached_property
    def elsewhere(self) -> list[tuple[str, str]]:
        """(part, job) for parts that are replaced or move over and also stand in the way of a job not their home."""
        openings = [name for name in self.nodes if name.startswith(OPENING)] if self.homes else []
        return [
            (name, opening)
            for opening in openings
            for name in self.graph.in_file_order(self.reached(opening) & self.homes.keys())
            if opening not in self.homes[name]
        ]

    @cached_property
    def wishes(self) -> Mapping[str, Wish]:
        """Where each node would like to stand if nothing had to come before anything."""
        return wishes(self.nodes, self.graph, self.ordering)

    @cached_property
    def rank(self) -> Mapping[str, int]:
        """Each node's place in the one stable order of the whole record. Raises Unreachable on a cycle."""
        return {node: i for i, node in enumerate(master_order(self.ordering, self.wishes))}


def lay_out(record: VehicleRecord, car: Assignment) -> Layout:
    """The graph of `record` for one car. References to nothing are passed over: the checker reports them."""
    builder = _Builder(record, car)
    nodes = dict(builder.nodes())
    after, any_of = builder.edges(nodes)
    needs = {node.id: states.needs(node.thing) for node in nodes.values()}
    builder.add_setters(nodes, needs, after)
    builder.add_setters(nodes, needs, after)  # once more: what one node sets, another may need set back
    nodes = _usual_last(nodes)
    costs = {name: _cost(record, node) for name, node in nodes.items()}
    graph = Graph(costs, after, any_of)
    turns = Turns(nodes, needs, after)
    soft = {name: {*after.get(name, ()), *turns.held_back(name)} for name in nodes}
    return Layout(record, car, nodes, graph, Graph(costs, soft, any_of), builder.refit_after(nodes))


def _usual_last(nodes: Mapping[str, Node]) -> dict[str, Node]:
    """The record's own nodes as they are, then the usual preparations in the order of their table, whatever asked for them first."""
    usual = [prep.id for prep in states.usual().values() if prep.id in nodes]
    return {name: nodes[name] for name in (*(name for name in nodes if not name.startswith(states.USUAL)), *usual)}


def _cost(record: VehicleRecord, node: Node) -> float:
    if isinstance(node.thing, Reached):
        return 0.0
    if record.high_voltage(node.thing) == "inside":
        return CLOSED_COST
    if isinstance(node.thing, Opening):
        return 0.0
    if node.id.startswith(states.USUAL):
        return USUAL_COST
    known = node.minutes
    return GUESS if known is None else known


class _Builder:
    def __init__(self, record: VehicleRecord, car: Assignment) -> None:
        self.record = record
        self.car = car

    def nodes(self) -> Iterator[tuple[str, Node]]:
        """Preparations, parts and jobs that this car has, in file order."""
        things: list[tuple[str, Part | Prep | Opening | Reached, tuple[Side, ...]]] = [
            *((name, prep, ()) for name, prep in self.record.preps.items()),
            *((name, part, part.each) for name, part in self.record.parts.items()),
            *((OPENING + name, job, job.each) for name, job in self.record.jobs.items()),
        ]
        for name, thing, each in things:
            if thing.when.holds(self.car):
                for side in each or (None,):
                    yield node_id(name, side), Node.of(name, thing, side)

    def edges(self, nodes: Mapping[str, Node]) -> tuple[dict[str, set[str]], dict[str, tuple[Choice, ...]]]:
        """Written prerequisites: all of the first, one route of each of the second."""
        after = {name: self._resolve(nodes, self._refs(node.thing), node) for name, node in nodes.items()}
        any_of = {
            name: tuple(
                tuple(frozenset(self._resolve(nodes, route, node)) for route in choice.values())
                for choice in node.thing.after_any
            )
            for name, node in nodes.items()
            if isinstance(node.thing, Part) and node.thing.after_any
        }
        return after, any_of

    def refit_after(self, nodes: Mapping[str, Node]) -> dict[str, frozenset[str]]:
        """What a part waits for on the way back, as written."""
        return {
            name: frozenset(self._resolve(nodes, node.thing.refit_after, node))
            for name, node in nodes.items()
            if isinstance(node.thing, Part) and node.thing.refit_after
        }

    def _refs(self, thing: Part | Prep | Opening | Reached) -> Iterator[Ref]:
        """What must be done first: as written, what hides a fastener, and for an opening also what moves over to it and what covers its cable's way."""
        if isinstance(thing, Reached):
            yield from thing.behind
            return
        if isinstance(thing, Opening):
            yield from (Ref(name) for name in thing.behind)
            run = self.record.runs.get(thing.along)
            if run and run.when.holds(self.car):
                yield from run.over
            yield from (Ref(name) for name, part in self.record.parts.items() if part.goes_to == thing.id)
            return
        yield from thing.after
        yield from hidden(thing.held_by, self.car)

    def _resolve(self, nodes: Mapping[str, Node], refs: Iterable[Ref], user: Node) -> set[str]:
        live = (ref for ref in refs if ref.when.holds(self.car))
        return {name for ref in live for name in self._targets(nodes, ref, user)}

    def _targets(self, nodes: Mapping[str, Node], ref: Ref, user: Node) -> Iterator[str]:
        """The nodes a reference means: same side, the side it names, or all sides from a thing that has none."""
        if ref.part in nodes:
            yield ref.part
            return
        sides: tuple[Side, ...] = ("left", "right")
        wanted = ref.side or user.side
        for side in (wanted,) if wanted else sides:
            if node_id(ref.part, side) in nodes:
                yield node_id(ref.part, side)

    def add_setters(self, nodes: dict[str, Node], needs: dict[str, States], after: dict[str, set[str]]) -> None:
        """For each need: the preparation that sets it comes first; for a state the car arrives in, only the record's own."""
        waiting = list(nodes)
        preps = [node.thing for node in nodes.values() if isinstance(node.thing, Prep)]
        while waiting:
            user = waiting.pop(0)
            for state, value in needs[user].items():
                for setter in self._setters(preps, user, state, value):
                    if setter.id not in nodes:
                        nodes[setter.id] = Node(setter.id, setter)
                        needs[setter.id], after[setter.id] = setter.needs, set()
                        preps.append(setter)
                        waiting.append(setter.id)
                    after[user].add(setter.id)

    def _setters(self, preps: Sequence[Prep], user: str, state: str, value: str) -> list[Prep]:
        """The preparation that sets a state: the record's own or the usual one.

        Several only where the state wants all of them, or the car is left open and the record's own apply to some variants.
        """
        found: list[Prep] = []
        for prep in preps:
            if prep.sets.get(state) == value and prep.id != user:
                found.append(prep)
                if (self.car or not prep.when.clauses) and not states.together(state):
                    return found
        if any(self.car or not prep.when.clauses for prep in found):
            return found
        spare = states.usual().get((state, value)) if _must_be_set(preps, state, value) else None
        return [*found, spare] if spare and spare.id != user else found


def _must_be_set(preps: Sequence[Prep], state: str, value: str) -> bool:
    """Whether the car does not stand so by itself: it does not arrive so, or something changes it."""
    return value != states.initial().get(state) or any(prep.sets.get(state, value) != value for prep in preps)


def hidden(held_by: Iterable[Fastener], car: Assignment) -> Iterator[Ref]:
    """What covers the fasteners that must be reached."""
    for fastener in held_by:
        if fastener.under and fastener.leave == "no" and fastener.when.holds(car):
            yield Ref(fastener.under)
