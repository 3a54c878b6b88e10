"""What somebody saw of gear in an opening agrees with what is reckoned.

## What it finds

Gear that went into an opening by somebody's look (`tried`) and by the sizes does not fit there, or that did not go in and by the sizes
fits. A verdict that leaves it open contradicts nothing. Only cars like the one that was looked at count.

## Why it matters

One of the two is wrong: a size of the gear, a depth of the car, or the look was at another car. Until somebody finds out which, the
next tech is told two things.

## Bad

    # file: kelbrook/finch-2014-2018.yaml
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        bolts: {pattern: circle, count: 4, diameter: 156 mm}
        panel: {width: 190 mm, height: 184 mm}
        depth: {clear: 40 mm, datum: skin, over: whole-travel, obstruction: metal}
        room_to_grille: 4 mm
        factory_spacer: none
        crash_sensor: no
    # file: speakers/sandmartin-s65.yaml
    gear:
      kind: speaker
      maker: Sandmartin
      model: S65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 165 mm}
      bolts: {pattern: circle, count: 4, diameter: 156 mm}
      depth: 50 mm
      magnet: 90 mm
      protrusion: 6 mm
      gasket: none
      impedance: 4 ohm
      tried:
        first: {vehicle: kelbrook/finch-2014-2018, opening: front-door, went_in: yes, source: e1}    # here
    evidence:
      e1: {how: seen, on: 2026-03-02, by: rk, car: "2016, left-hand drive"}

warning: in 'front-door' of 'kelbrook/finch-2014-2018' it went in, and it is reckoned that it does not fit (measure again: its own sizes, and those of the opening; a claim takes what you find into the record)

## Good

    # file: kelbrook/finch-2014-2018.yaml
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        bolts: {pattern: circle, count: 4, diameter: 156 mm}
        panel: {width: 190 mm, height: 184 mm}
        depth: {clear: 40 mm, datum: skin, over: whole-travel, obstruction: metal}
        room_to_grille: 4 mm
        factory_spacer: none
        crash_sensor: no
    # file: speakers/sandmartin-s65.yaml
    gear:
      kind: speaker
      maker: Sandmartin
      model: S65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 165 mm}
      bolts: {pattern: circle, count: 4, diameter: 156 mm}
      depth: 50 mm
      magnet: 90 mm
      protrusion: 6 mm
      gasket: none
      impedance: 4 ohm
      tried:
        first: {vehicle: kelbrook/finch-2014-2018, opening: front-door, went_in: no, hit: Window regulator, source: e1}
    evidence:
      e1: {how: seen, on: 2026-03-02, by: rk, car: "2016, left-hand drive"}
"""

from collections.abc import Iterator, Mapping, Sequence
from functools import partial

from undertrim.check.findings import Card, Finding, Meeting
from undertrim.check.joints import shelf, vehicles
from undertrim.derive.evidence.seen import answers, seen
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.everywhere import Found, openings
from undertrim.derive.fit.stock import Gear, Stock, stocked
from undertrim.derive.fit.tried import SeenFit
from undertrim.record.digests import joined
from undertrim.record.gear import GearRecord
from undertrim.record.model import CarSeen, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def meetings(cards: Sequence[Card]) -> Iterator[Meeting]:
    """Every piece of gear that was tried, with each vehicle that it was tried in; the verdict also rests on what may go between."""
    held = list(shelf(cards))
    tried = [(card, gear) for card, gear in held if gear.facts.tried and card.whole]
    known = vehicles(cards) if tried else {}
    shelved = joined(*(card.marks["facts"] for card, _ in held)) if tried else ""
    for card, gear in tried:
        for address in dict.fromkeys(one.vehicle for one in gear.facts.tried.values()):
            vehicle = known.get(address)
            if vehicle and vehicle.whole:
                rests_on = card.marks["whole"], address, vehicle.marks["whole"], shelved
                yield Meeting(card, rests_on, partial(_contradicted, card, vehicle, [one for _, one in held]))


def _contradicted(card: Card, other: Card, shelf: Sequence[Gear]) -> Iterator[Finding]:
    own, record = card.whole() if card.whole else None, other.whole() if other.whole else None
    if not isinstance(own, GearRecord) or not isinstance(record, VehicleRecord):
        return
    gear = stocked(card.path.stem, own)
    stock = Stock(tuple(gear if item.id == gear.id else item for item in shelf))
    verdicts = openings(Vehicle(record, other.address, stock, clearances()), gear)
    for one in gear.tried:
        alike = [found for found in verdicts if found.opening.written == one.opening and _may_be(record, one, found)]
        if one.vehicle == other.address and alike and all(one.against(found.fit.kind) for found in alike):
            facts = {"opening": one.opening, "vehicle": other.address}
            if one.went_in == "yes":
                said = message("rules/tried-against-reckoned/yes", **facts)
            else:
                said = message("rules/tried-against-reckoned/no", **facts)
            yield Finding(("gear", "tried", one.id, "went_in"), said, beside=(other.address,))


def _may_be(record: VehicleRecord, one: SeenFit, found: Found) -> bool:
    """Whether a verdict is for cars such as those that were looked at."""
    return not found.cars or not one.cars or any(_is_one(record, car, kind) for car in one.cars for kind in found.cars)


def _is_one(record: VehicleRecord, car: CarSeen | None, kind: Mapping[str, str]) -> bool:
    known = answers(record, seen(record, car))
    return all(known.get(name, choice) == choice for name, choice in kind.items())
