"""The replays of many procedures of one record: each done once for all cars that are alike to it."""

from dataclasses import dataclass, field

from undertrim.derive import cars
from undertrim.derive.procedure.node import Node, home
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.fault import Fault
from undertrim.derive.simulation.replay import replay_in
from undertrim.derive.simulation.ways import Ways
from undertrim.record.model import Assignment, Opening, Prep, Ref, VehicleRecord

_NONE = frozenset[str]()


@dataclass(slots=True)
class _Procedure:
    """A procedure, the variants that its replay may ask for, and what was found by the choices of these."""

    steps: tuple[Step, ...]
    asked: list[str]
    found: dict[tuple[str | None, ...], list[Fault]] = field(default_factory=dict)


class Replays:
    """What was found in the procedures of a record.

    Cars are alike to a procedure where they have the same choices of all variants that its replay may ask for: those named at what its
    steps are about, at whatever may have to come off before that, and at all preparations and runs.
    """

    def __init__(self, record: VehicleRecord) -> None:
        self._record = record
        self._named = cars.named(record)
        self._by_any_way = Ways(record, {})
        self._of_nodes: dict[str, frozenset[str]] = {}
        self._procedures: dict[int, _Procedure] = {}
        self._ways: dict[tuple[tuple[str, str], ...], Ways] = {}

    def of(self, car: Assignment, steps: tuple[Step, ...]) -> list[Fault]:
        """The faults of the first wrong instant, or of the end; an empty list for a safe procedure."""
        if id(steps) not in self._procedures:  # they are kept below, so that no others come to have their id
            self._procedures[id(steps)] = _Procedure(steps, sorted(self._asked(steps)))
        procedure = self._procedures[id(steps)]
        choices = tuple(map(car.get, procedure.asked))
        if choices not in procedure.found:
            procedure.found[choices] = replay_in(self._into(car), steps)
        return procedure.found[choices]

    def _into(self, car: Assignment) -> Ways:
        key = tuple(sorted(car.items()))
        if key not in self._ways:
            self._ways[key] = Ways(self._record, car)
        return self._ways[key]

    def _asked(self, steps: tuple[Step, ...]) -> frozenset[str]:
        anyway = (self._named.get((section,), _NONE) for section in ("preps", "runs"))
        return _NONE.union(*anyway, *map(self._of_step, steps))

    def _of_step(self, step: Step) -> frozenset[str]:
        """The variants named at what a step is about, and at the parts whose tethers it ends."""
        nodes = (step.node, *(line.node for line in step.tethers)) if step.tethers else (step.node,)
        return _NONE.union(*(self._of_node(node) for node in nodes if node))

    def _of_node(self, node: Node) -> frozenset[str]:
        if node.id not in self._of_nodes:
            places = [home(node.thing), *(("parts", name.partition("@")[0]) for name in self._before(node))]
            self._of_nodes[node.id] = _NONE.union(*(self._named.get(place, _NONE) for place in places))
        return self._of_nodes[node.id]

    def _before(self, node: Node) -> frozenset[str]:
        """The parts that may have to come off before a thing can be worked at, by any way in and in any car."""
        thing = node.worked
        if isinstance(thing, Opening):
            return self._by_any_way.behind(node, thing)
        refs = thing.after if isinstance(thing, Prep) else (Ref(thing.id),)
        return frozenset(self._by_any_way.reached(refs, node.side))
