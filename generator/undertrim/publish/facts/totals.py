"""What a whole visit comes to: tools, fasteners, purchases, time."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.procedure import tally
from undertrim.derive.visit import totals as derived
from undertrim.publish.facts import names, words
from undertrim.publish.facts import steps as facts
from undertrim.publish.facts.shown_steps import Purchase, Tally
from undertrim.record.model import VehicleRecord
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class ShownTool:
    """A tool with what will do in its place."""

    name: Value
    instead: Sequence[Value]


@dataclass(frozen=True, slots=True)
class Totals:
    """What one visit comes to; `minutes` leaves out the `untimed` steps, `waits` are in s, None where a length is not recorded."""

    tools: Sequence[ShownTool]
    fasteners: Sequence[Tally]
    buy: Sequence[Purchase]
    minutes: float
    untimed: int
    waits: Sequence[float | None]
    time_text: Value


@dataclass(frozen=True, slots=True)
class CarTotals:
    """The totals for kinds of car that come to the same."""

    cars: Sequence[Mapping[str, str]]
    totals: Totals
    words: Value


def of_cars(record: VehicleRecord, each: Sequence[derived.Totals]) -> list[CarTotals]:
    """The totals for each kind of car."""
    return [
        CarTotals([dict(car) for car in one.cars], shown(one), names.kinds_of_car(record, one.cars)) for one in each
    ]


def shown(made: derived.Totals) -> Totals:
    """The totals of a visit."""
    spent = made.time
    return Totals(
        tools=[tool(item) for item in made.tools],
        fasteners=[facts.count(item) for item in made.fasteners],
        buy=[facts.purchase(item) for item in made.buy],
        minutes=round(spent.minutes, 2),
        untimed=spent.untimed,
        waits=spent.waits,
        time_text=time_text(spent),
    )


def tool(item: tally.Tool) -> ShownTool:
    """A tool with what will do in its place."""
    return ShownTool(item.name, item.instead)


def time_text(spent: tally.Time, most: float | None = None) -> Value:
    """The time, with what it leaves out; `most` are the minutes where it takes longest, if that differs."""
    time = words.minutes(spent.minutes)
    longest = words.minutes(spent.minutes if most is None else most)
    span = time if longest == time else message("times/span", least=time, most=longest)
    work = message("times/work", time=span)
    untimed = message("times/untimed", count=spent.untimed) if spent.untimed else ""
    waits = (_waits(wait, number) for wait, number in Counter(spent.waits).items())
    return message("times/whole", parts=words.listed(work, untimed, *waits, joined="comma-plus"))


def _waits(wait: float | None, number: int) -> Value:
    """Waits of one length, in s."""
    if wait is None:
        return message("times/wait-unknown", count=number)
    return message("times/wait", count=number, time=words.minutes(wait / 60))
