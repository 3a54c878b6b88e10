"""A contact of a harness leads to what the car has on that pin.

## What it finds

A contact of a harness or interface with another function than the pin it meets, in a car that the gear is said
to suit. Contacts that the car does not have, and pins that the gear leaves out, are shown on the page and are
no findings.

## Why it matters

The harness is trusted: what it joins is joined without a meter. A feed lands on a speaker output, and ground
on the wire that tells the receiver about the parking brake.

## Bad

    # file: harrowby/sedge-2016-2021.yaml
    variants:
      plug:
        ask: When was it built?
        choices:
          early: {label: Early, tell: 2018-09 or earlier on the plate}
          late: {label: Late, tell: 2018-10 or later on the plate}
    connectors:
      radio-main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: battery-feed}
          3: {function: illumination, when: {plug: early}}
          4: {function: parking-brake}
    # file: harnesses/skerrowe-h-s16.yaml
    gear:
      kind: harness
      maker: Skerrowe
      model: H-S16
      suits: [{vehicle: harrowby/sedge-2016-2021, opening: dash}]
      plugs:
        radio-main:
          1: {function: battery-feed, colour: yellow}
          2: {function: speed, colour: pink}
          3: {function: antenna-feed, colour: blue}    # here
          4: {function: ground, colour: black}    # here

error: this leads to 'antenna-feed', and pin 3 of 'radio-main' in 'harrowby/sedge-2016-2021' is 'illumination' where plug=early (mend the record that is wrong, or say with 'when' in 'suits' which cars it is for)
error: this leads to 'ground', and pin 4 of 'radio-main' in 'harrowby/sedge-2016-2021' is 'parking-brake' (meter the pin and mend the record that is wrong: these two are never joined)

## Good

    # file: harrowby/sedge-2016-2021.yaml
    variants:
      plug:
        ask: When was it built?
        choices:
          early: {label: Early, tell: 2018-09 or earlier on the plate}
          late: {label: Late, tell: 2018-10 or later on the plate}
    connectors:
      radio-main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: battery-feed}
          2: {function: spare}
          3: {function: illumination, when: {plug: early}}
          4: {function: antenna-feed, when: {plug: early}}
    # file: harnesses/skerrowe-h-s16.yaml
    gear:
      kind: harness
      maker: Skerrowe
      model: H-S16
      suits: [{vehicle: harrowby/sedge-2016-2021, opening: dash, when: {plug: late}}]
      plugs:
        radio-main:
          1: {function: battery-feed, colour: yellow}
          2: {function: speed, colour: pink}
          3: {function: antenna-feed, colour: blue}
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import partial

from undertrim.check.affected import which
from undertrim.check.findings import Card, Finding, Meeting
from undertrim.check.joints import kinds, shelf, vehicles
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.contacts import Contact, compare, contacts
from undertrim.derive.wiring.needs import Point, points
from undertrim.record.model import Assignment, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import Value, message

LEVEL = Level.ERROR

Pair = tuple[str, str, str, str]
"""The plug that the gear names, the pin, the plug that this car has there, and the function there."""


def meetings(cards: Sequence[Card]) -> Iterator[Meeting]:
    """Every piece of gear with contacts, and each vehicle that it suits."""
    known = vehicles(cards)
    for card, gear in shelf(cards):
        suited = dict.fromkeys(place.vehicle for place in gear.facts.suits) if gear.facts.plugs else ()
        for address in suited:
            if address in known:
                vehicle = known[address]
                rests_on = card.marks["facts"], address, vehicle.marks["joints"]
                yield Meeting(card, rests_on, partial(_vehicle, gear, vehicle))


def _vehicle(gear: Gear, vehicle: Card) -> Iterator[Finding]:
    """Every contact that meets another function, with the cars in which it does."""
    address, record = vehicle.address, vehicle.details.record
    if record is None:
        return
    every = kinds(record, [place.when for place in gear.facts.suits if place.vehicle == address])
    suited = [car for car in every if _suits(gear, address, car)]
    for (made_for, pin, plug, there), hit in _differing(gear, record, suited).items():
        lead = gear.facts.plugs[made_for][pin].function
        facts: dict[str, Value] = {"pin": pin, "plug": plug, "vehicle": address, "where": which(hit, every)}
        if {lead, there} == {"ground", "parking-brake"}:
            found = message("rules/harness-mismatch/never-joined", lead=lead, there=there, **facts)
        else:
            found = message("rules/harness-mismatch/another-function", lead=lead, there=there, **facts)
        yield Finding(("gear", "plugs", made_for, pin, "function"), found, beside=(address,))


def _suits(gear: Gear, address: str, car: Assignment) -> bool:
    return any(place.vehicle == address and place.when.holds(car) for place in gear.facts.suits)


def _differing(
    gear: Gear, record: VehicleRecord, suited: Sequence[Mapping[str, str]]
) -> Mapping[Pair, list[Mapping[str, str]]]:
    """The cars of each pair that differs."""
    found: dict[Pair, list[Mapping[str, str]]] = defaultdict(list)
    for car in suited:
        met = compare(record, car, contacts(record, car, [gear]), points(record, car))
        for contact, point in met.differing:
            found[_pair(contact, point)].append(car)
    return found


def _pair(contact: Contact, point: Point) -> Pair:
    return contact.made_for, contact.pin, contact.plug, point.function
