"""A vehicle, opening, plug or part that gear names must exist.

## What it finds

An entry of `suits` that names no vehicle record, or an opening that its record does not have; a plug of a harness that none of the
vehicles it suits has; a part in a kit's `assembly` that none of them has. Where there are no vehicle records at all, nothing.

## Why it matters

A kit for an opening that does not exist fits nothing, and nobody is told.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: kits/pellworth-otter-14.yaml
    gear:
      kind: kit
      maker: Pellworth
      model: Otter 14
      opening: {width: 182 mm, height: 104 mm}
      suits:
        - {vehicle: brindleway/oter-2014-2018, opening: dash}    # here
        - {vehicle: brindleway/otter-2014-2018, opening: dahs}    # here
        - {vehicle: brindleway/otter-2014-2018, opening: dash}
      assembly:
        - {do: Move the panel over., part: climate-panel}    # here
    # file: harnesses/pellworth-knot-o.yaml
    gear:
      kind: harness
      maker: Pellworth
      model: Knot O
      suits:
        - {vehicle: brindleway/otter-2014-2018, opening: dash}
      plugs:
        second: {4: {function: ground}}    # here

error: no vehicle that it suits has a plug 'second' (plugs: none)
error: no record of a vehicle 'brindleway/oter-2014-2018' (did you mean 'brindleway/otter-2014-2018'?)
error: 'brindleway/otter-2014-2018' has no opening 'dahs' (did you mean 'dash'?)
error: no vehicle that it suits has a part 'climate-panel' (parts: radio)

## Good

    # file: brindleway/otter-2014-2018.yaml
    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          8: {function: ground}
    # file: harnesses/pellworth-knot-o.yaml
    gear:
      kind: harness
      maker: Pellworth
      model: Knot O
      suits:
        - {vehicle: brindleway/otter-2014-2018, opening: dash}
      plugs:
        main: {8: {function: ground}}
"""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.check import bonds
from undertrim.check.findings import Card, Finding
from undertrim.check.gear import GearCard, gear
from undertrim.record.nearness import nearest
from undertrim.record.problem import Level

LEVEL = Level.ERROR


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Everything that gear names and that is not there."""
    known = bonds.vehicles(cards)
    for item in gear(cards) if known else ():
        for finding in (*_places(item, known), *_inside(item, known)):
            yield item.card, finding


def _places(item: GearCard, known: Mapping[str, Card]) -> Iterator[Finding]:
    for number, place in enumerate(item.facts.suits):
        at = ("gear", "suits", number)
        if place.vehicle not in known:
            hint = nearest(place.vehicle, list(known), "vehicles")
            yield Finding((*at, "vehicle"), f"no record of a vehicle '{place.vehicle}'", hint)
        elif place.opening not in (openings := known[place.vehicle].bonds["openings"]):
            hint = nearest(place.opening, list(openings), "openings")
            yield Finding((*at, "opening"), f"'{place.vehicle}' has no opening '{place.opening}'", hint)


def _inside(item: GearCard, known: Mapping[str, Card]) -> Iterator[Finding]:
    """Plugs and parts that none of the vehicles has; nothing where no vehicle is known."""
    there = [card for place in item.facts.suits if (card := known.get(place.vehicle))]
    if not there:
        return
    plugs = list(dict.fromkeys(name for card in there for name in card.bonds["plugs"]))
    parts = list(dict.fromkeys(name for card in there for name in card.bonds["parts"]))
    for plug in item.facts.plugs:
        if plug not in plugs:
            hint = nearest(plug, plugs, "plugs") if plugs else "plugs: none"
            yield Finding(("gear", "plugs", plug), f"no vehicle that it suits has a plug '{plug}'", hint)
    for number, line in enumerate(item.facts.assembly):
        if line.part and line.part not in parts:
            hint = nearest(line.part, parts, "parts")
            place = ("gear", "assembly", number, "part")
            yield Finding(place, f"no vehicle that it suits has a part '{line.part}'", hint)
