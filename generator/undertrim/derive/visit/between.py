"""What may stand between gear and car at an opening, by kind, and the stock that is left where somebody chose it."""

from collections.abc import Mapping, Sequence

from undertrim.derive.cutting import may_go
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.record.model import Opening
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.kinds.receiver import ConverterGear, HarnessGear, InterfaceGear, LeadsGear

Chosen = Mapping[str, tuple[Gear, ...]]
"""What stands between by the kind of gear; no gear: nothing of that kind."""


def kinds(opening: Opening) -> dict[str, type[AnyGear]]:
    """The kinds of gear that may stand between at an opening, by name."""
    own: tuple[type[AnyGear], ...] = (opening.between,) if opening.between else ()
    joining = (HarnessGear, InterfaceGear, ConverterGear, LeadsGear) if opening.takes_over else ()
    turning = (ConverterGear,) if opening.drives else ()
    return {kind.kind: kind for kind in (*own, *joining, *turning)}


def suiting(vehicle: Vehicle, opening: Opening, kind: type[AnyGear], among: Sequence[Mapping[str, str]]) -> list[Gear]:
    """The pieces of a kind in stock that may stand between there, in any of some cars: those of them that have the opening.

    The leads of a receiver are its own: beside one that names its lead set no other suits.
    """
    found: dict[str, Gear] = {}
    for car in [car for car in among if opening.when.holds(car)] or among:
        for item in vehicle.stock.suiting(vehicle.address, opening.written, car):
            if isinstance(item.facts, kind) and may_go(vehicle.record, opening, item.facts.alters):
                found[item.id] = item
    own = _own_leads(vehicle, opening) if kind is LeadsGear else ""
    return [item for item in found.values() if own in ("", item.id)]


def _own_leads(vehicle: Vehicle, opening: Opening) -> str:
    gear = vehicle.visit.get(opening.id)
    return (gear.facts.lead_set or "") if gear else ""


def left(stock: Stock, opening: Opening, chosen: Chosen) -> Stock:
    """The stock that is left for an opening when what stands between is chosen."""
    known = kinds(opening)
    for name, held in chosen.items():
        stock = stock.keeping(known[name], {item.id for item in held})
    return stock
