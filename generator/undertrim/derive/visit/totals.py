"""What a visit comes to, over all its steps."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from undertrim.derive.procedure import tally
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
    found: list[Totals] = []
    for plan in plans:
        made = of(plan.steps)
        same = next((place for place, one in enumerate(found) if replace(one, cars=()) == made), None)
        if same is None:
            found.append(replace(made, cars=(plan.car,)))
        else:
            found[same] = replace(made, cars=(*found[same].cars, plan.car))
    return tuple(found)


def of(steps: Sequence[Step]) -> Totals:
    """What some steps come to, whatever the cars."""
    return Totals((), tally.tools(steps), tally.fasteners(steps), tally.purchases(steps), tally.time(steps))
