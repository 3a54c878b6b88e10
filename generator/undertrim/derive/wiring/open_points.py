"""What is not known about a joint that nothing known is against: to be metered or looked up first."""

from collections.abc import Iterator, Sequence

from undertrim.derive.wiring.functions import functions, may_behave
from undertrim.derive.wiring.leads import is_sound, named
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.signals import behaviour, meeting, voltages
from undertrim.record.gear import Lead
from undertrim.record.units import Quantity
from undertrim.resources import table

METER = "unknown: meter it first"


def open_points(lead: Lead, points: Sequence[Point], output: str) -> tuple[str, ...]:
    """What is unknown about joining a lead straight to these points of the car, in words."""
    return tuple(dict.fromkeys((*_each(lead, points), *_level(lead, output), *_load(lead, points))))


def _each(lead: Lead, points: Sequence[Point]) -> Iterator[str]:
    for point in points:
        if functions().functions[point.function].group == "data" or meeting(lead, point) == "open":
            yield _unknown(lead, point)
        if point.behaves and not may_behave(point.function, point.behaves):
            yield f"'{point.behaves}' is no way in which {named(point.function)} behaves: one of the two is wrong"
        if voltages(lead, point) == "open":
            yield f"the voltage of the {named(point.function)} is unknown"


def _unknown(lead: Lead, point: Point) -> str:
    if functions().functions[point.function].group == "data" or point.behaves == lead.behaves == "message":
        return "both ends speak data: they understand each other only where the makers say so"
    return behaviour(lead, point)


def _level(lead: Lead, output: str) -> Iterator[str]:
    if is_sound(lead.function) and output == "unknown":
        yield "what the car wants on its sound wires is unknown: look for a factory amplifier"


def _load(lead: Lead, points: Sequence[Point]) -> Iterator[str]:
    """Whether the load on a lead is known: of every output, and of any other lead that says what it may deliver."""
    if not points or (lead.function not in table("joining")["group"]["output"] and lead.limit is None):
        return
    if not all(isinstance(point.draws, Quantity) for point in points):
        yield f"what hangs on the {named(lead.function)} draws an unknown current"
    if not isinstance(lead.limit, Quantity):
        yield f"what the lead '{lead.id}' may deliver is unknown"
