"""From a job to its procedure: which nodes, in what order, and the way back."""

from collections.abc import Collection, Hashable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from undertrim.derive.procedure.assembly import Assembly, Refit
from undertrim.derive.procedure.car_steps import CarSteps, RecordSteps
from undertrim.derive.procedure.cheapest import Selection, cheapest_set
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.likeness import Key, Likeness
from undertrim.derive.procedure.node import OPENING, node_id
from undertrim.derive.procedure.nodes import Layout, lay_out
from undertrim.derive.procedure.order import Rank, order
from undertrim.derive.procedure.refit_zones import Zones, zones
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.way_back import ranked
from undertrim.record.model import Assignment, Opening, Part, Prep, Reached, Thing, VehicleRecord

_NONE = frozenset[str]()


@dataclass(frozen=True, slots=True)
class Target:
    """One job, an opening or what is reached for, at one side (empty where it exists once)."""

    job: str
    side: str = ""

    @property
    def node(self) -> str:
        """Its node id in a layout."""
        return OPENING + node_id(self.job, self.side)

    def __str__(self) -> str:
        return node_id(self.job, self.side)


@dataclass(frozen=True, slots=True)
class Procedure:
    """The derived steps of one visit to one car; `closed` are the targets left out of it, with what is inside on their way."""

    record: VehicleRecord
    targets: tuple[Target, ...]
    car: Assignment
    steps: tuple[Step, ...]
    selection: Selection
    closed: tuple[tuple[Target, tuple[Thing, ...]], ...] = ()


def targets(record: VehicleRecord) -> tuple[Target, ...]:
    """Every job of the record at every side, in file order: the openings, then what is reached for."""
    return tuple(Target(name, side) for name, job in record.jobs.items() for side in job.each or ("",))


class Planner:
    """Plans any number of visits to the cars of one record; what visits to one car share is worked out once."""

    def __init__(self, record: VehicleRecord) -> None:
        self.record = record
        self._layouts: dict[Key, Layout] = {}
        self._cars: dict[Key, tuple[Rank, CarSteps]] = {}
        self._zones_made: dict[Key, Zones] = {}
        self._backs: dict[Key, dict[str, int]] = {}
        self._likeness = Likeness(record)
        self._planned: dict[Hashable, tuple[tuple[Step, ...], Selection]] = {}
        self._ids: dict[Hashable, tuple[str, ...]] = {}

    @cached_property
    def _of_record(self) -> RecordSteps:
        return RecordSteps(self.record, frozenset(name for name, _ in self.layout({}).elsewhere))

    def layout(self, car: Assignment) -> Layout:
        """The graph of one car; an empty `car` gives the whole record."""
        key = self._likeness.of_layout(car)
        if key not in self._layouts:
            self._layouts[key] = lay_out(self.record, dict(key))
        return self._layouts[key]

    def rank(self, car: Assignment) -> Rank:
        """The master order: the whole record's, or this car's where the record as a whole has none.

        Where states collide in some job so that the car has none either, each node's wish: the other jobs can still be planned.
        """
        return self._of_car(self.layout(car))[0]

    def plan(self, wanted: Collection[Target], car: Assignment) -> Procedure:
        """The procedure for a visit; openings that this car does not have, or that are inside the high voltage, are passed over.

        Raises Unreachable when some opening cannot be reached, TooTangled when its routes interlock too much.
        """
        layout = self.layout(car)
        present = _open(wanted, layout)
        alike = self._alike(present, layout)
        if alike not in self._planned:
            assembly, selection = self._assembly(present, layout)
            self._planned[alike] = assembly.steps(), selection
        closed = ((target, by) for target in wanted if (by := _closed(target, layout)))
        return Procedure(self.record, tuple(present), car, *self._planned[alike], tuple(closed))

    def closed(self, target: Target, car: Assignment) -> tuple[Thing, ...]:
        """What on the cheapest way to a target is inside the high-voltage system: a way round it is taken if there is one."""
        return _closed(target, self.layout(car))

    def step_ids(self, wanted: Collection[Target], car: Assignment) -> tuple[str, ...]:
        """The ids of the steps of `plan`, for when many visits are compared. Raises what `plan` raises."""
        layout = self.layout(car)
        present = _open(wanted, layout)
        alike = self._alike(present, layout)
        if alike not in self._ids:
            self._ids[alike] = self._assembly(present, layout)[0].ids()
        return self._ids[alike]

    def _alike(self, present: Sequence[Target], layout: Layout) -> Hashable:
        """What a visit rests on in one car."""
        part = self._likeness.of_visit(layout, [target.node for target in present])
        return tuple(present), part, id(self._of_car(layout)[0]), self._zones(layout)

    def _assembly(self, present: Sequence[Target], layout: Layout) -> tuple[Assembly, Selection]:
        rank, of_car = self._of_car(layout)
        selection = cheapest_set(layout.graph, [target.node for target in present], layout.ordering)
        ordered = [layout.nodes[name] for name in order(layout.ordering, selection, rank)]
        before = relied_on(layout, selection)
        return Assembly(of_car, ordered, before, layout.homes, self._refit(layout, rank)), selection

    def _refit(self, layout: Layout, rank: Rank) -> Refit:
        """The way back of a car: its order is that of the whole record where its way in is."""
        of = self.layout({}) if self.ordered and rank is self._whole[0] else layout
        if of.key not in self._backs:
            self._backs[of.key] = ranked(of, sorted(of.nodes, key=lambda name: (rank[name], of.graph.place[name])))
        return Refit(layout.refit_after, self._backs[of.key], self._zones(layout))

    @cached_property
    def ordered(self) -> bool:
        """Whether there is one order for all cars of the record; some cars may differ in it, or a job may be out of reach."""
        return _ordered(self.layout({}))

    def catalogue(self) -> tuple[Step, ...]:
        """Every step that any visit to any car of the record can have, once each, in the master order if the record is `ordered`.

        Lines inside a step keep their own `when`.
        """
        layout = self.layout({})
        rank, of_car = self._of_car(layout)
        nodes = sorted(layout.nodes.values(), key=lambda node: rank[node.id])
        also_refit = frozenset(name for name, _ in layout.elsewhere)
        refit, before = self._refit(layout, rank), layout.ordering.needs
        return Assembly(of_car, nodes, before, layout.homes, refit, also_refit, every=True).steps()

    def _zones(self, layout: Layout) -> Zones:
        """Where the nodes of a car go back: as in the whole record where that knows all that goes back after each of them."""
        if layout.key not in self._zones_made:
            whole = self.layout({})
            known = self.ordered and all(
                after <= whole.followers.get(name, _NONE) for name, after in layout.followers.items()
            )
            self._zones_made[layout.key] = self._zones(whole) if known and layout is not whole else self._zoned(layout)
        return self._zones_made[layout.key]

    def _zoned(self, layout: Layout) -> Zones:
        of_car = self._of_car(layout)[1]
        touchy = [name for name, node in layout.nodes.items() if of_car.wants_battery_off(node)]
        return zones(touchy, layout.followers)

    def _of_car(self, layout: Layout) -> tuple[Rank, CarSteps]:
        if layout.key not in self._cars:
            rank, preparing = self._ranked(layout)
            self._cars[layout.key] = rank, CarSteps(self._of_record, layout.car, preparing)
        return self._cars[layout.key]

    def _ranked(self, own: Layout) -> tuple[Rank, frozenset[str]]:
        """The order that visits to a car follow, and the nodes of its preparing section."""
        if self.ordered and self.layout({}).rank.keys() >= own.nodes.keys():
            return self._whole
        rank = own.rank if _ordered(own) else own.wishes
        return rank, _preparing(own, rank)

    @cached_property
    def _whole(self) -> tuple[Rank, frozenset[str]]:
        layout = self.layout({})
        return layout.rank, _preparing(layout, layout.rank)


def _open(wanted: Collection[Target], layout: Layout) -> list[Target]:
    """The targets that a car has and that can be worked at."""
    return [target for target in wanted if target.node in layout.nodes and not _closed(target, layout)]


def _closed(target: Target, layout: Layout) -> tuple[Thing, ...]:
    if not layout.inside or target.node not in layout.nodes:
        return ()
    selection = cheapest_set(layout.graph, [target.node], layout.ordering)
    return tuple(layout.nodes[name].worked for name in layout.nodes if name in selection.nodes & layout.inside)


def _ordered(layout: Layout) -> bool:
    try:
        return bool(layout.rank)
    except Unreachable:
        return False


def relied_on(layout: Layout, selection: Selection) -> Mapping[str, Collection[str]]:
    """For each selected node what comes before it: prerequisites, and the nodes of the routes it relies on."""
    before = {node: layout.ordering.before[node] for node in selection.nodes}
    for (node, choice), route in selection.routes.items():
        before[node] |= layout.graph.any_of[node][choice][route]
    return before


def _preparing(layout: Layout, rank: Rank) -> frozenset[str]:
    """Nodes of the preparing section: up to the first part that an opening needs for its own sake."""
    own = _for_their_own_sake(layout)
    if not own:
        return frozenset(layout.nodes)
    first = min(own, key=rank.__getitem__)
    return frozenset(name for name in layout.nodes if rank[name] < rank[first])


def _for_their_own_sake(layout: Layout) -> set[str]:
    """Parts reached from the jobs through parts alone, not through a preparation.

    What is reached for its own sake and lies before a preparation too, such as the cover of the battery, does not count for that: other
    visits take it off to prepare the car.
    """
    openings = [node.id for node in layout.nodes.values() if isinstance(node.thing, Opening)]
    reached = [node.id for node in layout.nodes.values() if isinstance(node.thing, Reached)]
    before_preps = _through_parts(layout, [need for name in _preps(layout) for need in layout.graph.needs[name]])
    found = _through_parts(layout, openings) | (_through_parts(layout, reached) - before_preps)
    return {name for name in found if isinstance(layout.nodes[name].thing, Part)}


def _preps(layout: Layout) -> list[str]:
    return [node.id for node in layout.nodes.values() if isinstance(node.thing, Prep)]


def _through_parts(layout: Layout, start: Sequence[str]) -> set[str]:
    """The nodes of `start` and all that they need, as far as no preparation comes between."""
    waiting, seen = list(start), set[str]()
    while waiting:
        name = waiting.pop()
        if name in seen or isinstance(layout.nodes[name].thing, Prep):
            continue
        seen.add(name)
        waiting.extend(layout.graph.needs[name])
    return seen
