"""What other gear in stock turns for vehicles whose records are what they were."""

from collections.abc import Collection
from dataclasses import dataclass

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.derive.review import joints, verdicts
from undertrim.derive.review.change import Side
from undertrim.derive.review.outcome import VehicleChange
from undertrim.derive.review.vehicle import blockers
from undertrim.record.model import OPENINGS
from undertrim.record.model.gear import AnyGear


@dataclass(frozen=True)  # without slots: what a stock has for which opening is looked up once, for all vehicles
class Turned:
    """Gear that is other gear now: the stocks of before and now, cut down to what can turn a verdict, and the kinds of it.

    Gear that only goes in, such as a speaker, is `alone`: it turns no verdict but its own, and joins nothing.
    """

    stocks: tuple[Stock, Stock]
    kinds: frozenset[type[AnyGear]]
    alone: bool

    def reaches(self, text: bytes) -> bool:
        """Whether a vehicle can have an opening for it, by its text: the kind of each opening is always typed, but for what is taken from another record."""
        words = [name.encode() for name, opening in OPENINGS.items() if opening.takes in self.kinds]
        return not self.alone or b"shares" in text or any(word in text for word in words)

    def vehicle(self, side: Side) -> VehicleChange:
        """What changed for one vehicle."""
        asked = (one for one in side.record.openings.values() if not self.alone or one.takes in self.kinds)
        openings = {opening.id: opening.id for opening in asked}
        was, now = (Vehicle(side.record, side.address, stock, clearances()) for stock in self.stocks)
        turned, _ = verdicts.verdicts(was, now, openings)  # more room for other gear is no other verdict
        return VehicleChange(
            address=side.address,
            title=f"{side.record.vehicle.make} {side.record.vehicle.model}",
            verdicts=turned,
            joints=() if self.alone else tuple(joints.differing(was, now, openings)),
            blockers=() if self.alone else tuple(blockers(was, now)),
            sides=(side, side),
        )


def turned(stocks: tuple[Stock, Stock], gear: Collection[str]) -> Turned:
    """For the gear that differs between two stocks, by its ids."""
    kinds = frozenset(type(item.facts) for stock in stocks for item in stock.items if item.id in gear)
    alone = all(
        any(opening.takes is kind and not opening.takes_over for opening in OPENINGS.values()) for kind in kinds
    )
    before, now = (_only(stock, kinds, gear) for stock in stocks) if alone else stocks
    return Turned((before, now), kinds, alone)


def _only(stock: Stock, kinds: Collection[type[AnyGear]], gear: Collection[str]) -> Stock:
    """The stock with no more of some kinds than the gear asked for."""
    for kind in kinds:
        stock = stock.keeping(kind, gear)
    return stock
