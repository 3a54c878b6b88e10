"""From a job to its procedure: which nodes, in what order, and the way back."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.procedure import cautions, states, steps
from undertrim.derive.procedure.cheapest import Selection, cheapest_set
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.nodes import OPENING, Layout, Node, lay_out, node_id
from undertrim.derive.procedure.order import order
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, Opening, Part, Prep, VehicleRecord


@dataclass(frozen=True, slots=True)
class Target:
    """One opening at one side (empty where it exists once)."""

    opening: str
    side: str = ""

    @property
    def node(self) -> str:
        """Its node id in a layout."""
        return OPENING + node_id(self.opening, self.side)

    def __str__(self) -> str:
        return node_id(self.opening, self.side)


@dataclass(frozen=True, slots=True)
class Procedure:
    """The derived steps of one visit to one car."""

    record: VehicleRecord
    targets: tuple[Target, ...]
    car: Assignment
    steps: tuple[Step, ...]
    selection: Selection


def targets(record: VehicleRecord) -> tuple[Target, ...]:
    """Every opening of the record at every side, in file order."""
    return tuple(Target(name, side) for name, opening in record.openings.items() for side in opening.each or ("",))


class Planner:
    """Plans any number of visits to the cars of one record; the graph of each car is laid out once."""

    def __init__(self, record: VehicleRecord) -> None:
        self.record = record
        self._layouts: dict[tuple[tuple[str, str], ...], Layout] = {}

    def layout(self, car: Assignment) -> Layout:
        """The graph of one car; an empty `car` gives the whole record."""
        key = tuple(sorted(car.items()))
        if key not in self._layouts:
            self._layouts[key] = lay_out(self.record, car)
        return self._layouts[key]

    def rank(self, car: Assignment) -> Mapping[str, int]:
        """The master order: the whole record's, or this car's where the record as a whole has none."""
        try:
            whole = self.layout({}).rank
        except Unreachable:
            return self.layout(car).rank
        return whole if whole.keys() >= self.layout(car).nodes.keys() else self.layout(car).rank

    def plan(self, wanted: Collection[Target], car: Assignment) -> Procedure:
        """The procedure for a visit; openings that this car does not have are passed over.

        Raises Unreachable when some opening cannot be reached, TooTangled when its routes interlock too much.
        """
        layout = self.layout(car)
        present = tuple(target for target in wanted if target.node in layout.nodes)
        selection = cheapest_set(layout.graph, [target.node for target in present])
        ordered = [layout.nodes[name] for name in order(layout.ordering, selection, self.rank(car))]
        made = _Procedure(self.record, car, ordered, self._preparing(layout)).steps()
        return Procedure(self.record, present, car, tuple(made), selection)

    def catalogue(self) -> tuple[Step, ...]:
        """Every step that any visit to any car of the record can have, once each, in the master order.

        Lines inside a step keep their own `when`. Raises Unreachable when the record as a whole has no order.
        """
        layout = self.layout({})
        ordered = sorted(layout.nodes.values(), key=lambda node: layout.rank[node.id])
        return tuple(_Procedure(self.record, {}, ordered, self._preparing(layout)).steps())

    def _preparing(self, layout: Layout) -> frozenset[str]:
        """Nodes of the preparing section: up to the first part that an opening needs for its own sake."""
        rank = self.rank(layout.car)
        own = self._for_their_own_sake(layout)
        first = min((rank[name] for name in own), default=len(rank))
        return frozenset(name for name in layout.nodes if rank[name] < first)

    def _for_their_own_sake(self, layout: Layout) -> set[str]:
        """Parts reached from the openings through parts alone, not through a preparation."""
        waiting = [name for name in layout.nodes if name.startswith(OPENING)]
        seen: set[str] = set()
        while waiting:
            name = waiting.pop()
            if name in seen or isinstance(layout.nodes[name].thing, Prep):
                continue
            seen.add(name)
            waiting.extend(layout.graph.needs[name])
        return {name for name in seen if isinstance(layout.nodes[name].thing, Part)}


class _Procedure:
    """Assembles the steps from the ordered nodes."""

    def __init__(self, record: VehicleRecord, car: Assignment, ordered: Sequence[Node], preparing: frozenset[str]) -> None:
        self.record = record
        self.car = car
        self.preparing = preparing
        self.done = [node for node in ordered if not isinstance(node.thing, Opening)]
        self.openings = [node for node in ordered if isinstance(node.thing, Opening)]
        self.battery = next((n for n in self.done if isinstance(n.thing, Prep) and n.thing.sets.get("battery") == "off"), None)

    def steps(self) -> list[Step]:
        """All steps from before the first screw to after the last."""
        around = self.battery is not None
        bare = [
            *(steps.todos(self.record, self.car, "before") if around else ()),
            *self._opening_up(),
            *self._fitting(),
            *self._closing(),
            *(steps.todos(self.record, self.car, "after") if around else ()),
        ]
        restraint = any(_touches_restraint(node, self.car) for node in self.done)
        guarded = (cautions.add(step, self.record, self.car, restraint=restraint) for step in bare)
        return list(_with_states(guarded))

    def _opening_up(self) -> Iterator[Step]:
        for node in self.done:
            section = "prepare" if node.id in self.preparing else "remove"
            if isinstance(node.thing, Prep):
                yield from steps.prepare(node, self.car, section)
            else:
                yield steps.remove(node, self.car, section)

    def _fitting(self) -> Iterator[Step]:
        for opening in self.openings:
            for node in self.done:
                if isinstance(node.thing, Part) and node.thing.goes_to == opening.thing.id:
                    yield steps.move_over(node, opening, self.car)
            yield from steps.install(opening)

    def _closing(self) -> Iterator[Step]:
        """The way back in reverse; battery and tests as early as every restraint plug is joined again."""
        back = [node for node in reversed(self.done) if node is not self.battery]
        last = max((i for i, node in enumerate(back) if _leaves_restraint_open(node, self.car)), default=-1)
        for node in back[: last + 1]:
            yield from self._put_back(node)
        yield from self._power_and_test()
        for node in back[last + 1 :]:
            yield from self._put_back(node)

    def _put_back(self, node: Node) -> Iterator[Step]:
        thing = node.thing
        if isinstance(thing, Prep):
            step = steps.restore(node)
            if step:
                yield step
        elif isinstance(thing, Part) and thing.replaced == "no" and not thing.goes_to:
            yield steps.refit(node, self.car)
            yield from steps.tether_tests(node, self.car)

    def _power_and_test(self) -> Iterator[Step]:
        if self.battery:
            step = steps.restore(self.battery)
            if step:
                yield replace(step, section="test")
        if self.openings:
            yield Step("power:on", "power", "test", "Power up for the test", ("Switch the ignition on. Leave the engine off.",))
            for node in self.openings:
                yield from steps.opening_tests(node)
            yield Step("power:off", "power", "test", "Power down", ("Switch the ignition off before anything is refitted.",))


def _touches_restraint(node: Node, car: Assignment) -> bool:
    thing = node.thing
    return isinstance(thing, Part) and any(t.circuit == "restraint" and t.when.holds(car) for t in thing.tethers.values())


def _leaves_restraint_open(node: Node, car: Assignment) -> bool:
    return isinstance(node.thing, Part) and node.thing.replaced == "no" and steps.restraint_open(node.thing, car)


def _with_states(made: Iterable[Step]) -> Iterator[Step]:
    """Each step with the state of battery and ignition while it is done."""
    now = {name: states.initial()[name] for name in ("battery", "ignition")}
    for step in made:
        thing = step.node.thing if step.node else None
        if isinstance(thing, Prep) and step.kind == "prepare":
            now = {**now, **{k: v for k, v in thing.sets.items() if k in now}}
        elif isinstance(thing, Prep) and step.kind == "restore":
            now = {**now, **{k: states.initial()[k] for k in thing.sets if k in now}}
        elif step.kind == "power":
            now = {**now, "ignition": step.id.removeprefix("power:")}
        yield replace(step, state=now)
