"""What gear names in a vehicle must be there.

## What it finds

A vehicle, opening, variant or choice in `suits`, or a vehicle or opening in `tried`, that is nowhere. A part in the assembly of a kit, and a plug of
a harness or interface, that none of the vehicles it suits has. A lead set that a receiver comes with (`lead_set`)
and that is no record of kind `leads`.

## Why it matters

A kit whose vehicle is misspelt is offered to nobody, and nobody sees that it is missing. A plug that the car
does not have is joined to nothing on the page, and the tech finds a connector over.

## Bad

    # file: kelbrook/finch-2014-2018.yaml
    connectors:
      radio-main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: battery-feed}
    # file: kits/sandmartin-dk-f14.yaml
    gear:
      kind: kit
      maker: Sandmartin
      model: DK-F14
      opening: {width: 182 mm, height: 104 mm}
      suits:
        - {vehicle: kelbrook/finch-2014-2018, opening: dash, when: {radios: map}}    # here
        - {vehicle: kelbrok/finch-2014-2018, opening: dash}    # here
        - {vehicle: kelbrook/finch-2014-2018, opening: dashboard}    # here
    # file: kits/sandmartin-dk-f15.yaml
    gear:
      kind: kit
      maker: Sandmartin
      model: DK-F15
      opening: {width: 182 mm, height: 104 mm}
      suits: [{vehicle: kelbrook/finch-2014-2018, opening: dash}]
      assembly:
        - {do: Screw the radio to the frame., part: radio}
        - {do: Clip the panel into the frame., part: climate-panel}    # here
    # file: harnesses/skerrowe-h-f14.yaml
    gear:
      kind: harness
      maker: Skerrowe
      model: H-F14
      suits: [{vehicle: kelbrook/finch-2014-2018, opening: dash}]
      plugs:
        radio-mian: {4: {function: battery-feed, colour: yellow}}    # here
    # file: receivers/skerrowe-cairn-1.yaml
    gear:
      kind: receiver
      maker: Skerrowe
      model: Cairn 1
      body: {width: 180 mm, height: 50 mm}
      chassis_depth: 100 mm
      lead_set: skerrowe-ls    # here
      outputs: [speaker]
      needs: [ground]

error: no plug 'radio-mian' in 'kelbrook/finch-2014-2018' (did you mean 'radio-main'?)
error: no variant 'radios' in 'kelbrook/finch-2014-2018' (it has no variants)
error: no vehicle record 'kelbrok/finch-2014-2018' (did you mean 'kelbrook/finch-2014-2018'?)
error: no opening 'dashboard' in 'kelbrook/finch-2014-2018' (write 'dash')
error: no part 'climate-panel' in 'kelbrook/finch-2014-2018' (its parts: radio)
error: no lead set 'skerrowe-ls' (no gear is of kind 'leads')

## Good

    # file: kelbrook/finch-2014-2018.yaml
    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    parts:
      climate-panel:
        name: Climate panel
        release: pull
        when: {radio: map}
    # file: kelbrook/wren-2014-2018.yaml
    connectors:
      radio-main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: battery-feed}
    # file: kits/sandmartin-dk-f14.yaml
    gear:
      kind: kit
      maker: Sandmartin
      model: DK-F14
      opening: {width: 182 mm, height: 104 mm}
      suits:
        - {vehicle: kelbrook/finch-2014-2018, opening: dash, when: {radio: map}}
        - {vehicle: kelbrook/wren-2014-2018, opening: dash}
      assembly:
        - {do: Clip the panel into the frame., part: climate-panel, when: {radio: map}}
    # file: harnesses/skerrowe-h-f14.yaml
    gear:
      kind: harness
      maker: Skerrowe
      model: H-F14
      suits:
        - {vehicle: kelbrook/finch-2014-2018, opening: dash}
        - {vehicle: kelbrook/wren-2014-2018, opening: dash}
      plugs:
        radio-main:
          4: {function: battery-feed, colour: yellow}
"""

# Long because half of it is its page, whose examples are its test.

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from undertrim.check.findings import Card, Finding, Meeting
from undertrim.check.joints import shelf, vehicles
from undertrim.derive import cars
from undertrim.derive.fit.stock import Gear, of_kind
from undertrim.record.digests import joined
from undertrim.record.gear import GearFacts, Place
from undertrim.record.model import VehicleRecord, all_names
from undertrim.record.model.kinds.receiver import KitGear, LeadsGear, ReceiverGear
from undertrim.record.nearness import near, suggestion
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, message, one_of, quoted

LEVEL = Level.ERROR


@dataclass(frozen=True, slots=True)
class What:
    """What is said where a kind of thing is absent: the message, what its names are called, and that there are none."""

    absent: Message
    names: Message
    none: Message


_OPENING = What(
    message("rules/gear-names-absent/no-opening"),
    message("rules/gear-names-absent/its-openings"),
    message("rules/gear-names-absent/has-no-openings"),
)
_VARIANT = What(
    message("rules/gear-names-absent/no-variant"),
    message("rules/gear-names-absent/its-variants"),
    message("rules/gear-names-absent/has-no-variants"),
)
_CHOICE = What(
    message("rules/gear-names-absent/no-choice"),
    message("nearness/choices"),
    message("rules/gear-names-absent/has-no-choices"),
)
_PART = What(
    message("rules/gear-names-absent/no-part"),
    message("rules/gear-names-absent/its-parts"),
    message("rules/gear-names-absent/has-no-parts"),
)
_PLUG = What(
    message("rules/gear-names-absent/no-plug"),
    message("rules/gear-names-absent/its-plugs"),
    message("rules/gear-names-absent/has-no-plugs"),
)


def meetings(cards: Sequence[Card]) -> Iterator[Meeting]:
    """Every piece of gear: with the names of all others, with each vehicle that it suits, and with all of these together."""
    known = vehicles(cards)
    stock = list(shelf(cards))
    sets = [gear.id for _, gear in stock if isinstance(gear.facts, LeadsGear)]
    names = joined(*known), joined(*sets)
    for card, gear in stock:
        mark = card.marks["facts"]
        yield Meeting(card, (mark, *names), partial(_nowhere, gear, known, sets))
        suited = dict.fromkeys(place.vehicle for place in gear.facts.suits)
        found = {address: known[address] for address in suited if address in known}
        met = dict.fromkeys((*suited, *(one.vehicle for one in gear.facts.tried.values())))
        for address, vehicle in ((address, known[address]) for address in met if address in known):
            yield Meeting(card, (mark, address, vehicle.marks["joints"]), partial(_places, gear, vehicle))
        if len(found) == len(suited):
            marks = [f"{address} {vehicle.marks['joints']}" for address, vehicle in found.items()]
            yield Meeting(card, (mark, "", *marks), partial(_together, gear, found))


def _nowhere(gear: Gear, known: Mapping[str, Card], sets: Sequence[str]) -> Iterator[Finding]:
    """The vehicles and lead sets that are no records."""
    for receiver in of_kind([gear], ReceiverGear):
        yield from _lead_set(receiver.facts.lead_set, sets)
    for pointer, place in _named(gear):
        if place.vehicle not in known:
            about = tuple(place.vehicle.split("/"))
            said = _no_vehicle(place.vehicle, near(place.vehicle, known))
            yield Finding((*pointer, "vehicle"), said, about=about)


def _places(gear: Gear, vehicle: Card) -> Iterator[Finding]:
    """The openings, variants and choices that one vehicle does not have."""
    for pointer, place in _named(gear):
        if place.vehicle == vehicle.address and vehicle.details.record:
            yield from _place(pointer, place, vehicle.details.record)


def _named(gear: Gear) -> Iterator[tuple[Pointer, Place]]:
    """Every opening that gear names: those that it is made for, and those in which it was tried."""
    for index, place in enumerate(gear.facts.suits):
        yield ("gear", "suits", index), place
    for one in gear.facts.tried.values():
        yield ("gear", "tried", one.id), Place(one.vehicle, one.opening)


def _together(gear: Gear, suited: Mapping[str, Card]) -> Iterator[Finding]:
    """The parts and plugs that none of the vehicles has."""
    named = gear.facts.plugs or any(step.part for kit in of_kind([gear], KitGear) for step in kit.facts.assembly)
    records = {address: card.details.record for address, card in suited.items()} if named else {}
    whole = {address: record for address, record in records.items() if record}
    if named and len(whole) == len(suited):
        for kit in of_kind([gear], KitGear):
            yield from _parts(kit.facts, whole)
        yield from _plugs(gear.facts, whole)


def _lead_set(name: str, sets: Sequence[str]) -> Iterator[Finding]:
    if name and name not in sets:
        names, none = message("rules/gear-names-absent/the-lead-sets"), message("rules/gear-names-absent/no-leads")
        hint = suggestion(name, sets, names) if sets else none
        found = message("rules/gear-names-absent/no-lead-set", name=name, hint=hint)
        yield Finding(("gear", "lead_set"), found, about=(name,))


def _place(pointer: Pointer, place: Place, record: VehicleRecord) -> Iterator[Finding]:
    openings = list(dict.fromkeys(one.written for one in record.openings.values()))
    yield from _absent((*pointer, "opening"), _OPENING, place.opening, openings, [place.vehicle])
    yield from _conditions((*pointer, "when"), place, record)


def _no_vehicle(name: str, close: str) -> Message:
    if close:
        return message("rules/gear-names-absent/another-vehicle", name=name, near=close)
    return message("rules/gear-names-absent/no-vehicle", name=name)


def _conditions(pointer: Pointer, place: Place, record: VehicleRecord) -> Iterator[Finding]:
    variants, suited = cars.variants(record), [place.vehicle]
    for name, choices in place.when.clauses:
        if name not in variants:
            yield from _absent((*pointer, name), _VARIANT, name, list(variants), suited)
            continue
        for choice in choices:
            yield from _absent((*pointer, name), _CHOICE, choice, list(variants[name].choices), suited, name)


def _parts(facts: KitGear, suited: Mapping[str, VehicleRecord]) -> Iterator[Finding]:
    """A kit for several vehicles may have steps for one of them: a part is absent where none has it."""
    parts = all_names(part for record in suited.values() for part in record.parts.values())
    for index, step in enumerate(facts.assembly):
        if step.part:
            yield from _absent(("gear", "assembly", index, "part"), _PART, step.part, sorted(parts), suited)


def _plugs(facts: GearFacts, suited: Mapping[str, VehicleRecord]) -> Iterator[Finding]:
    plugs = all_names(plug for record in suited.values() for plug in record.connectors.values())
    for name in facts.plugs:
        yield from _absent(("gear", "plugs", name), _PLUG, name, sorted(plugs), suited)


def _absent(
    pointer: Pointer, what: What, name: str, known: Sequence[str], suited: Collection[str], variant: str = ""
) -> Iterator[Finding]:
    """Says of a name that none of the suited vehicles, or the variant there, has it."""
    if name not in known:
        places = [f"{address}/{variant}" if variant else address for address in suited]
        where = one_of(*map(quoted, places))
        hint = suggestion(name, known, what.names) if known else what.none
        about = (name, *(step for place in places for step in place.split("/")))
        found = message(what.absent.code, name=name, where=where, hint=hint)
        yield Finding(pointer, found, about=about, beside=tuple(suited))
