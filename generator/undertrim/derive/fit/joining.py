"""What of the stock the pages of a vehicle speak of before gear is chosen: what stands between a receiver and its car, and what receivers keep or come with.

All else of the stock, and every size, is on the shelf alone, so that a changed record of it changes no vehicle's page.
"""

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from undertrim.derive.fit.stock import Gear, Stock
from undertrim.record.model.kinds.receiver import (
    ConverterGear,
    HarnessGear,
    InterfaceGear,
    KitGear,
    LeadsGear,
    ReceiverGear,
)

_BETWEEN = (KitGear, HarnessGear, InterfaceGear, ConverterGear, LeadsGear)


@dataclass(frozen=True)  # without slots: what belongs to which vehicle is looked up once
class Joining:
    """That part of a stock, for each vehicle (`make/id`). Nothing is said there of what was left out."""

    stock: Stock

    def of(self, vehicle: str) -> Stock:
        """What of it the pages of a vehicle speak of."""
        return Stock(tuple(self._told[number] for number in self._numbers(vehicle)))

    def key(self, vehicle: str) -> str:
        """Changes with anything of that."""
        told = " ".join(self._digests[number] for number in self._numbers(vehicle))
        return hashlib.sha256(told.encode()).hexdigest()

    def _numbers(self, vehicle: str) -> Sequence[int]:
        return sorted((*self._for_any, *self._made_for.get(vehicle, ())))

    @cached_property
    def _told(self) -> Sequence[Gear]:
        return list(_told(self.stock))

    @cached_property
    def _digests(self) -> Sequence[str]:
        """The whole of each as text: all of the model is frozen, and says itself alike in every process."""
        return [hashlib.sha256(repr(item).encode()).hexdigest() for item in self._told]

    @cached_property
    def _for_any(self) -> Sequence[int]:
        return [number for number, item in enumerate(self._told) if not item.facts.suits]

    @cached_property
    def _made_for(self) -> Mapping[str, Sequence[int]]:
        found: dict[str, list[int]] = {}
        for number, item in enumerate(self._told):
            for vehicle in dict.fromkeys(place.vehicle for place in item.facts.suits):
                found.setdefault(vehicle, []).append(number)
        return found


def _told(stock: Stock) -> Iterator[Gear]:
    """What stands between as it is; receivers with their name, their lead set, and the duties that they keep with what these need."""
    for item in stock.items:
        facts = item.facts
        if isinstance(facts, _BETWEEN):
            yield replace(item, record=None)
        elif isinstance(facts, ReceiverGear) and (facts.keeps or facts.lead_set):
            needs = facts.needs if facts.keeps else ()
            told = ReceiverGear(facts.maker, facts.model, lead_set=facts.lead_set, needs=needs, keeps=facts.keeps)
            yield replace(item, facts=told, record=None)
