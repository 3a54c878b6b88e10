"""What a visit comes to, over all its steps."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.procedure import tally
from undertrim.derive.procedure.choices import CarPlans, Choices
from undertrim.derive.procedure.planning import Procedure
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment


@dataclass(frozen=True, slots=True)
class Totals:
    """Tools, fasteners with what becomes of them, what is to buy, and the time; `cars` are the kinds of car that it holds for."""

    cars: tuple[Assignment, ...]
    tools: tuple[tally.Tool, ...]
    fasteners: tuple[tally.Count, ...]
    buy: tuple[tally.Purchase, ...]
    time: tally.Time


def totals(plans: Sequence[Procedure]) -> tuple[Totals, ...]:
    """One for each group of cars in which all of it is the same."""
    return _alike((plan.car, plan.steps) for plan in plans)


def of_record(made: Choices) -> tuple[Totals, ...]:
    """The same of all jobs of a record, which no car has all of: what cannot be together is never added up."""
    return _alike((one.car, tuple(_of_car(made.steps, one))) for one in made.cars)


def _of_car(steps: Sequence[Step], plans: CarPlans) -> Iterator[Step]:
    """The steps of one car's jobs, with the fasteners that it has."""
    wanted = {name for ids in plans.singles.values() for name in ids}
    for step in steps:
        if step.id in wanted:
            lines = tuple(line for line in step.fasteners if line.fastener.when.holds(plans.car))
            yield step if len(lines) == len(step.fasteners) else replace(step, fasteners=lines)


def _alike(cars: Iterable[tuple[Assignment, tuple[Step, ...]]]) -> tuple[Totals, ...]:
    held = list(cars)  # all at once: steps are told apart by where they are kept
    added_up = {_which(steps): steps for _, steps in held}
    each = {which: of(steps) for which, steps in added_up.items()}
    found: list[Totals] = []
    for car, steps in held:
        made = each[_which(steps)]
        same = next((place for place, one in enumerate(found) if replace(one, cars=()) == made), None)
        if same is None:
            found.append(replace(made, cars=(car,)))
        else:
            found[same] = replace(made, cars=(*found[same].cars, car))
    return tuple(found)


def _which(steps: Sequence[Step]) -> tuple[int, ...]:
    """The very steps, quicker than comparing what they say."""
    return tuple(map(id, steps))


def of(steps: Sequence[Step]) -> Totals:
    """What some steps come to, whatever the cars."""
    return Totals((), tally.tools(steps), tally.fasteners(steps), tally.purchases(steps), tally.time(steps))
