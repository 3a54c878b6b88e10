"""What a car sends as data comes through an interface that is in the stock.

## What it finds

A function that a receiver of the stock needs and that a car has as data, and a duty of the factory unit that is
kept by an interface, where no interface in the gear that suits the opening brings or keeps it. Nothing is said
where the stock is empty.

## Why it matters

The tech finds out with the dash open that there is no wire to join, and the interface takes a week to come.

## Bad

    # file: orlock/bramble-2019-2023.yaml
    variants:
      camera:
        ask: Is there a reversing camera?
        choices:
          fitted: {label: Camera, tell: A lens above the plate}
          none: {label: No camera, tell: No lens}
    functions:
      switched-feed: {by: data}    # here
      illumination: {by: data}
      reverse: {by: data, when: {camera: fitted}}    # here
    duties:
      chime: {kept_by: interface}    # here
      rear-camera: {when: {camera: fitted}, kept_by: interface}
    # file: receivers/skerrowe-broadside.yaml
    gear:
      kind: receiver
      maker: Skerrowe
      model: Broadside
      body: {width: 178 mm, height: 100 mm}
      chassis_depth: 76 mm
      outputs: [speaker]
      needs: [battery-feed, switched-feed, illumination, reverse]
    # file: interfaces/tidewrack-di-b19.yaml
    gear:
      kind: interface
      maker: Tidewrack
      model: DI-B19
      suits: [{vehicle: orlock/bramble-2019-2023, opening: dash, when: {camera: none}}]
      provides: [illumination, reverse]
      keeps: [rear-camera]
    # file: interfaces/tidewrack-di-b20.yaml
    gear:
      kind: interface
      maker: Tidewrack
      model: DI-B20
      suits: [{vehicle: orlock/bramble-2019-2023, opening: dash, when: {camera: fitted}}]
      provides: [illumination]
      keeps: [rear-camera]

warning: 'switched-feed' comes as data, and no interface in the gear brings it to 'dash' (record the interface that does, or mend 'suits' and 'provides' of the one that is there)
warning: 'reverse' comes as data, and no interface in the gear brings it to 'dash' where camera=fitted (record the interface that does, or mend 'suits' and 'provides' of the one that is there)
warning: 'chime' is kept by an interface, and none in the gear that suits 'dash' keeps it (record the interface that does, or mend 'suits' and 'keeps' of the one that is there)

## Good

    # file: orlock/bramble-2019-2023.yaml
    functions:
      switched-feed: {by: data}
      speed: {by: data}
    duties:
      chime: {kept_by: interface}
      clock: {kept_by: stays}
    # file: receivers/skerrowe-broadside.yaml
    gear:
      kind: receiver
      maker: Skerrowe
      model: Broadside
      body: {width: 178 mm, height: 100 mm}
      chassis_depth: 76 mm
      outputs: [speaker]
      needs: [battery-feed, switched-feed]
    # file: interfaces/tidewrack-di-b19.yaml
    gear:
      kind: interface
      maker: Tidewrack
      model: DI-B19
      suits: [{vehicle: orlock/bramble-2019-2023, opening: dash}]
      provides: [switched-feed]
      keeps: [chime]

A shop that records no gear:

    # file: orlock/bramble-2019-2023.yaml
    duties:
      chime: {kept_by: interface}
"""

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from undertrim.check.affected import which
from undertrim.check.findings import Card, Finding, Meeting
from undertrim.check.joints import kinds, shelf, states, vehicles
from undertrim.derive.fit.duties import KEEPERS
from undertrim.derive.fit.duty_kinds import kind_of
from undertrim.derive.fit.stock import Gear, of_kind
from undertrim.derive.wiring.needs import sources
from undertrim.record.model import Assignment, FunctionFact, VehicleRecord
from undertrim.record.model.kinds.receiver import InterfaceGear, ReceiverGear
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def meetings(cards: Sequence[Card]) -> Iterator[Meeting]:
    """Every vehicle, and what of the stock may bring it something."""
    held = list(shelf(cards))
    stock, beside = [gear for _, gear in held], tuple(card.address for card, _ in held)
    needed = {function for gear in of_kind(stock, ReceiverGear) for function in gear.facts.needs}
    keepers: dict[str, dict[str, Gear]] = defaultdict(dict)
    for card, gear in held:
        if isinstance(gear.facts, KEEPERS):
            for place in gear.facts.suits:
                keepers[place.vehicle][card.marks["facts"]] = gear
    for address, vehicle in vehicles(cards).items() if stock else ():
        suiting = keepers.get(address, {})
        rests_on = vehicle.marks["joints"], *sorted(needed), "", *suiting
        yield Meeting(vehicle, rests_on, partial(_vehicle, vehicle, [*suiting.values()], needed), beside)


@dataclass(frozen=True, slots=True)
class _Place:
    """An opening for a receiver, the cars that have it, and what of the stock brings a function or keeps a duty."""

    address: str
    opening: str
    cars: Sequence[Assignment]
    interfaces: Sequence[Gear]
    keepers: Sequence[Gear]

    def lacking(self, wanting: Sequence[Assignment], fitting: Sequence[Gear]) -> list[Assignment]:
        """Those of some cars that none of the `fitting` interfaces suits."""
        return [car for car in wanting if not any(gear.place(self.address, self.opening, car) for gear in fitting)]


def _vehicle(vehicle: Card, keepers: Sequence[Gear], needed: Collection[str]) -> Iterator[Finding]:
    """Every function and duty for which the stock has no interface, with the cars."""
    asked = states(vehicle, "by", "data") or states(vehicle, "kept_by", "interface")
    address, record = vehicle.address, vehicle.details.record if asked else None
    if record is None:
        return
    interfaces = [gear for gear in keepers if isinstance(gear.facts, InterfaceGear)]
    for opening in record.openings.values():
        if opening.takes_over:
            conditions = [when for gear in keepers for when in gear.conditions(address, opening.id)]
            having = [car for car in kinds(record, conditions) if opening.when.holds(car)]
            place = _Place(address, opening.id, having, interfaces, keepers)
            yield from _functions(place, record, [fact for fact in record.functions.values() if fact.of in needed])
            yield from _duties(place, record)


def _functions(place: _Place, record: VehicleRecord, needed: Sequence[FunctionFact]) -> Iterator[Finding]:
    for fact in needed:
        name = fact.of
        wanting = [car for car in place.cars if fact.when.holds(car) and sources(name, record, car)[0].by == "data"]
        if lost := place.lacking(wanting, [gear for gear in place.interfaces if name in gear.facts.brings]):
            where = which(lost, place.cars)
            found = message("rules/interface-missing/not-brought", function=name, opening=place.opening, where=where)
            yield Finding(("functions", fact.id), found)


def _duties(place: _Place, record: VehicleRecord) -> Iterator[Finding]:
    for duty in record.duties.values():
        wanting = [car for car in place.cars if duty.kept_by == "interface" and duty.when.holds(car)]
        if lost := place.lacking(
            wanting, [gear for gear in place.keepers if {duty.id, kind_of(duty).id} & set(gear.facts.keeps)]
        ):
            where = which(lost, place.cars)
            found = message("rules/interface-missing/not-kept", duty=duty.id, opening=place.opening, where=where)
            yield Finding(("duties", duty.id), found)
