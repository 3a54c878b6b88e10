"""What is not known about a joint that nothing known is against: to be metered or looked up first."""

from collections.abc import Iterator, Sequence

from undertrim.derive.wiring.functions import functions, may_behave
from undertrim.derive.wiring.leads import is_sound, named
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.signals import behaviour, meeting, voltages
from undertrim.record.gear import Lead
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Message, message

METER = message("joint/meter-first")


def open_points(lead: Lead, points: Sequence[Point], output: str) -> tuple[Message, ...]:
    """What is unknown about joining a lead straight to these points of the car."""
    return tuple(dict.fromkeys((*_each(lead, points), *_level(lead, output), *_load(lead, points))))


def _each(lead: Lead, points: Sequence[Point]) -> Iterator[Message]:
    for point in points:
        if functions().functions[point.function].group == "data" or meeting(lead, point) == "open":
            yield _unknown(lead, point)
        if point.behaves and not may_behave(point.function, point.behaves):
            yield message(
                "joint/no-such-behaviour",
                behaves=message(f"behaviours-short/{point.behaves}"),
                function=named(point.function),
            )
        if voltages(lead, point) == "open":
            yield message("joint/voltage-unknown", function=named(point.function))


def _unknown(lead: Lead, point: Point) -> Message:
    if functions().functions[point.function].group == "data" or point.behaves == lead.behaves == "message":
        return message("joint/both-data")
    return behaviour(lead, point)


def _level(lead: Lead, output: str) -> Iterator[Message]:
    if is_sound(lead.function) and output == "unknown":
        yield message("joint/level-unknown")


def _load(lead: Lead, points: Sequence[Point]) -> Iterator[Message]:
    """Whether the load on a lead is known: of every output, and of any other lead that says what it may deliver."""
    if not points or (lead.function not in table("joining")["group"]["output"] and lead.limit is None):
        return
    if not all(isinstance(point.draws, Quantity) for point in points):
        yield message("joint/load-unknown", function=named(lead.function))
    if not isinstance(lead.limit, Quantity):
        yield message("joint/limit-unknown", lead=lead.id)
