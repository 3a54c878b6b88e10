"""Which steps belong to which visit, for every car and every set of openings: what a page needs to filter its steps.

In most records the steps of a visit are those of its openings taken one by one, in one order. Where routes or parts that move over
make a visit differ from that, its steps are listed by themselves, so what a page shows is always what the planner says.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain, combinations
from math import comb

from undertrim.derive import cars
from undertrim.derive.procedure.mixing import mixing, regular
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.derive.procedure.steps import Step
from undertrim.record.combinations import TooMany
from undertrim.record.model import Assignment
from undertrim.words import message

MOST_LISTED = 10
"""Up to so many targets every set that differs is listed; a record with more keeps to pairs, and to all of them together."""

MOST_VISITS = 200_000
"""So many visits the page of a record may have: 195 kinds of car with ten places each. Two cores plan 8,000 in a second."""

Ids = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CarPlans:
    """For one car: the step ids of each target by itself, and of every set of targets that is not simply their sum."""

    car: Assignment
    singles: dict[str, Ids]
    sets: dict[Ids, Ids]


@dataclass(frozen=True, slots=True)
class Choices:
    """All steps of a record in one order, and for each car which of them each visit has."""

    steps: tuple[Step, ...]
    cars: tuple[CarPlans, ...]


def choices(planner: Planner) -> Choices:
    """The choices of a record. Raises Unreachable when an opening cannot be reached, TooTangled when routes interlock too
    much, TooMany."""
    wanted = targets(planner.record)
    _refuse_too_many(len(cars.assignments(planner.record)), len(wanted))
    visits = [_Visits(planner, car, wanted) for car in cars.assignments(planner.record)]
    used = {name for visit in visits for name in visit.used}
    steps = tuple(step for step in planner.catalogue() if step.id in used)
    place = {step.id: i for i, step in enumerate(steps)}
    return Choices(steps, tuple(CarPlans(visit.car, visit.singles, dict(visit.deviating(place))) for visit in visits))


def _refuse_too_many(kinds: int, wanted: int) -> None:
    """Counts the visits before they are planned. Raises TooMany."""
    visits = kinds * (2**wanted if wanted <= MOST_LISTED else comb(wanted, 2) + wanted)
    if visits > MOST_VISITS:
        numbers = {"kinds": kinds, "places": wanted, "visits": visits, "most": MOST_VISITS}
        raise TooMany(message("cars/too-many-visits", **numbers))


class _Visits:
    """The visits to one car: planned one by one where targets mix, put together from those where they do not."""

    def __init__(self, planner: Planner, car: Assignment, wanted: Sequence[Target]) -> None:
        self.car = car
        self.wanted = wanted
        self.used: set[str] = set()
        self._planner = planner
        layout = planner.layout(car)
        mixed = mixing(layout) if regular(planner, car) else layout.nodes.keys()
        self.mixed = tuple(target for target in wanted if target.node in mixed)
        self.singles = {str(target): self._plan([target]) for target in wanted}
        self.planned = {tuple(map(str, chosen)): self._plan(chosen) for chosen in self._sets()}

    def _plan(self, chosen: Sequence[Target]) -> Ids:
        ids = self._planner.step_ids(chosen, self.car)
        self.used.update(ids)
        return ids

    def deviating(self, place: Mapping[str, int]) -> Iterator[tuple[Ids, Ids]]:
        """The sets of targets whose steps are not the sum of their targets' steps in the one order."""
        visits: dict[Ids, Ids] = {(name,): ids for name, ids in self.singles.items()} | self.planned
        differing = {chosen: ids for chosen, ids in visits.items() if ids != self._sum(chosen, place)}
        yield from differing.items()
        rest = [str(target) for target in self.wanted if target not in self.mixed]
        for chosen, ids in differing.items():
            for more in chain.from_iterable(combinations(rest, size) for size in range(1, len(rest) + 1)):
                if self._listed(len(chosen) + len(more)):
                    together = tuple(name for name in map(str, self.wanted) if name in chosen or name in more)
                    absent = not any(self.singles[name] for name in more)
                    yield together, ids if absent else self._sum(more, place, ids)

    def _sets(self) -> Iterator[tuple[Target, ...]]:
        """The sets of mixing targets to plan."""
        for size in range(2, len(self.mixed) + 1):
            if self._listed(size) or size == len(self.mixed):
                yield from combinations(self.mixed, size)

    def _listed(self, size: int) -> bool:
        most = len(self.wanted)
        return most <= MOST_LISTED or size in (2, most)

    def _sum(self, chosen: Ids, place: Mapping[str, int], with_: Ids = ()) -> Ids:
        """The steps of targets by themselves, and some more, in the one order."""
        return tuple(
            sorted({*with_, *chain.from_iterable(self.singles[name] for name in chosen)}, key=place.__getitem__)
        )
