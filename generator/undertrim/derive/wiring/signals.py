"""How the signal of a wire meets what a lead wants: the same side, opposite sides, data, other kinds, or not known."""

from typing import Literal

from undertrim.derive.wiring.leads import named
from undertrim.derive.wiring.needs import Point
from undertrim.record.gear import Lead
from undertrim.record.model import Blank, Voltage
from undertrim.record.units import Quantity, parse
from undertrim.resources import table
from undertrim.words import Message, message

Meeting = Literal["same", "opposite", "other", "message", "open"]
_MESSAGE = "message"


def meeting(lead: Lead, point: Point) -> Meeting:
    """How the two meet: `message` where one of them is data and the other is not, `open` where one of them is not known."""
    car, wanted = known(point.behaves), wanted_by(lead)
    if not car and (point.behaves or point.function in table("joining")["must_know"]):
        return "open"
    if not wanted and (lead.behaves or (car and lead.function in table("joining")["must_know"])):
        return "open"
    if not car or not wanted:
        return "same"
    return _between(side(wanted), side(car))


def by_data(lead: Lead, point: Point) -> bool:
    """Whether an interface must stand between: the function comes as data, or one of the two ends is data and the other is not."""
    return point.by == "data" or (point.by in ("pin", "wire") and meeting(lead, point) == _MESSAGE)


def wanted_by(lead: Lead) -> str:
    """How a lead wants its function: as it says, else as is usual (data/joining.toml), else empty."""
    usual: dict[str, str] = table("joining")["usual"]
    return known(lead.behaves or usual.get(lead.function, ""))


def known(behaves: str) -> str:
    """A behaviour, empty where it is not known."""
    return "" if behaves == Blank.UNKNOWN else behaves


def side(behaves: str) -> str:
    """The side of a lamp or contact that a behaviour is on: plus or ground; itself where it is neither."""
    sides: dict[str, list[str]] = table("joining")["side"]
    return next((name for name, members in sides.items() if behaves in members), behaves)


def voltages(lead: Lead, point: Point) -> Meeting:
    """How two voltages meet; one that is not stated is the battery's."""
    if Blank.UNKNOWN in (lead.supply, point.supply):
        return "open"
    if isinstance(lead.supply, Quantity) and isinstance(point.supply, Quantity) and _near(lead.supply, point.supply):
        return "same"
    return "same" if _is_battery(lead.supply) and _is_battery(point.supply) else "other"


def behaviour(lead: Lead, point: Point) -> Message:
    """What of the two is not known."""
    if not known(point.behaves) and (point.behaves or point.function in table("joining")["must_know"]):
        return message("joint/car-behaviour-unknown", function=named(point.function))
    return message("joint/lead-behaviour-unknown", lead=lead.id, function=named(lead.function))


def _between(wanted: str, car: str) -> Meeting:
    if wanted == car:
        return "open" if wanted == _MESSAGE else "same"
    if _MESSAGE in (wanted, car):
        return "message"
    return "opposite" if {wanted, car} == set(table("joining")["side"]) else "other"


def _near(one: Quantity, other: Quantity) -> bool:
    """Whether two voltages are the same within the share of data/joining.toml, however coarsely they were typed."""
    within = parse(table("joining")["supply"]["within"], "share").value / 100
    return abs(one.value - other.value) <= within * max(one.value, other.value) + 1e-9


def _is_battery(supply: Voltage | None) -> bool:
    """Whether a voltage is the battery's: what is not stated is."""
    if not isinstance(supply, Quantity):
        return True
    least, most = (parse(table("joining")["battery"][end], "voltage").value for end in ("least", "most"))
    return least <= supply.value <= most
