"""A contact of a harness does what the pin does that it meets.

## What it finds

A contact of a harness whose function is another one than that of the pin it meets in a car that the harness suits. Contacts that
the car does not have, and pins that the harness lacks, are no mistake; the joint lists them.

## Why it matters

The harness is plugged in without a look. A ground on the wire of the parking brake stands in for the brake, a feed on a speaker
wire burns the amplifier.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: battery-feed}
          7: {function: parking-brake}
          8: {function: ground}
    # file: harnesses/pellworth-knot-o.yaml
    gear:
      kind: harness
      maker: Pellworth
      model: Knot O
      suits:
        - {vehicle: brindleway/otter-2014-2018, opening: dash}
      plugs:
        main:
          4: {function: switched-feed}    # here
          7: {function: ground}    # here
          8: {function: ground}

error: contact 'main/4' is 'switched-feed', and 'brindleway/otter-2014-2018' has 'battery-feed' there (compare the harness with the plug, and say with 'when' for which cars it is)
error: contact 'main/7' is 'ground', and 'brindleway/otter-2014-2018' has 'parking-brake' there (compare the harness with the plug, and say with 'when' for which cars it is)

## Good

    # file: brindleway/otter-2014-2018.yaml
    variants:
      trim:
        ask: Which trim is it?
        choices:
          low: {label: Low, tell: Steel wheels}
          high: {label: High, tell: Alloy wheels}
    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: battery-feed, when: {trim: low}}
          5: {function: speed}
          7: {function: battery-feed, when: {trim: high}}
    # file: harnesses/pellworth-knot-o.yaml
    gear:
      kind: harness
      maker: Pellworth
      model: Knot O
      suits:
        - {vehicle: brindleway/otter-2014-2018, opening: dash, when: {trim: high}}
      plugs:
        main:
          4: {function: switched-feed}
          7: {function: battery-feed}
          8: {function: ground}
"""

from collections.abc import Iterator, Sequence

from undertrim.check import bonds
from undertrim.check.findings import Card, Finding
from undertrim.check.gear import gear
from undertrim.record.problem import Level

LEVEL = Level.ERROR


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Every contact that does something else than its pin, once for each pin and vehicle."""
    known = bonds.vehicles(cards)
    hint = "compare the harness with the plug, and say with 'when' for which cars it is"
    for item in gear(cards):
        if item.facts.kind != "harness":
            continue
        for met in dict.fromkeys(bonds.disagreements(item, known)):
            message = (
                f"contact '{met.plug}/{met.pin}' is '{met.on_gear}', and '{met.place.vehicle}' has '{met.on_car}' there"
            )
            yield item.card, Finding(("gear", "plugs", met.plug, met.pin, "function"), message, hint)
