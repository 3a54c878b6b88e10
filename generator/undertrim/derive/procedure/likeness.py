"""Which cars are alike for a visit: in those with the same likeness the visit has the same steps, so it is planned for one of them."""

from collections.abc import Collection, Hashable, Mapping
from dataclasses import dataclass
from functools import cached_property

from undertrim.derive import cars
from undertrim.derive.procedure.node import home
from undertrim.derive.procedure.nodes import Layout
from undertrim.record.model import Assignment, VehicleRecord
from undertrim.record.source import Pointer

_PLANNED = ("preps", "parts", "openings", "runs", "after_battery")
"""The sections of a record of which steps are made."""

_NONE = frozenset[str]()

Key = tuple[tuple[str, str], ...]


class Likeness:
    """What the layouts of one record, and visits to its cars, rest on."""

    def __init__(self, record: VehicleRecord) -> None:
        self._named = cars.named(record)
        self._planned = _NONE.union(*(self._named.get((section,), _NONE) for section in _PLANNED))
        self._cars: dict[Key, _Car] = {}

    def of_layout(self, car: Assignment) -> Key:
        """The choices of a car on which its layout rests."""
        return tuple(sorted((variant, choice) for variant, choice in car.items() if variant in self._planned))

    def of_visit(self, layout: Layout, present: Collection[str]) -> Hashable:
        """All that the steps of a visit to these job nodes rest on in a car, but for its order of all nodes and the way back.

        That is the part of its layout that the visit may come to by any route, and the choices of those variants that something there
        asks for. What else the car has may have changed this part (a state that something else needs too), and is then seen in it.
        """
        if layout.key not in self._cars:
            self._cars[layout.key] = _Car(layout, self._named)
        return self._cars[layout.key].part(present)


@dataclass(frozen=True)  # without slots: what is the same for all visits to the car is worked out once
class _Car:
    layout: Layout
    named: Mapping[Pointer, frozenset[str]]

    def part(self, present: Collection[str]) -> Hashable:
        """What a visit may come to."""
        reached = _NONE.union(*map(self.layout.reached, present))
        nodes = frozenset(map(self._nodes.__getitem__, reached))
        return (
            self._choices(("after_battery",)),
            nodes,
            *(_among(reached, to) for to in (self._held_back, self.layout.homes)),
        )

    @cached_property
    def _nodes(self) -> dict[str, Hashable]:
        """What each node is in this car."""
        of = self.layout
        return {
            name: (
                name,
                of.graph.before[name],
                of.graph.any_of.get(name),
                of.refit_after.get(name),
                self._choices(home(node.thing)),
            )
            for name, node in of.nodes.items()
        }

    @cached_property
    def _held_back(self) -> dict[str, frozenset[str]]:
        """What waits for others only where both are done, and for which."""
        held = ((name, early - self.layout.graph.before[name]) for name, early in self.layout.ordering.before.items())
        return {name: early for name, early in held if early}

    def _choices(self, place: Pointer) -> Key:
        """The choices of the car that something at a place of the record asks for."""
        return tuple((name, choice) for name, choice in self.layout.car.items() if name in self.named.get(place, ()))


def _among(reached: frozenset[str], to: Mapping[str, frozenset[str]]) -> Hashable:
    """What leads from some nodes to others of them."""
    return tuple((name, others & reached) for name, others in to.items() if name in reached and others & reached)
