"""A piece of gear has one record.

## What it finds

Two records of one kind of gear with the same maker and model, compared without capitals, accents, spaces and
hyphens. Also two receivers, speakers, kits or spacers of one maker that agree in every dimension both state,
and in whatever else decides where they fit, unless both have a `note` and the notes differ.

## Why it matters

A shop that looks for a speaker finds it twice, once without its protrusion. Whoever mends the one never hears of
the other.

## Bad

    # file: speakers/sandmartin-bank-65.yaml
    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65    # here
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 68 mm
      impedance: 4 ohm
    # file: speakers/sandmartin-bank65.yaml
    gear:
      kind: speaker
      maker: SANDMARTIN
      model: bank65    # here
      basket: {shape: round, diameter: 131 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 66 mm
      impedance: 4 ohm
    # file: speakers/sandmartin-bank-165.yaml
    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 165    # here
      basket: {shape: round, diameter: 13.0 cm}
      flange: {shape: round, diameter: 169 mm}
      depth: 68 mm
      protrusion: 9 mm
      impedance: 4 ohm

warning: this measures the same in everything as 'records/gear/speakers/sandmartin-bank-65.yaml' (keep one, or say in a 'note' of each what sets them apart)
warning: this is also in 'records/gear/speakers/sandmartin-bank65.yaml' (keep one record with what both know)
warning: this measures the same in everything as 'records/gear/speakers/sandmartin-bank-165.yaml' (keep one, or say in a 'note' of each what sets them apart)
warning: this is also in 'records/gear/speakers/sandmartin-bank-65.yaml' (keep one record with what both know)

## Good

    # file: kits/pellworth-dale-d2.yaml
    gear:
      kind: kit
      maker: Pellworth
      model: Dale D2
      opening: {width: 182 mm, height: 103 mm}
      suits: [{vehicle: ashgrove/drover-2015-2020, opening: dash}]
    # file: kits/pellworth-dale-d3.yaml
    gear:
      kind: kit
      maker: Pellworth
      model: Dale D3
      opening: {width: 182 mm, height: 103 mm}
      suits: [{vehicle: kelbrook/finch-2014-2018, opening: dash}]
    # file: harnesses/pellworth-dale-d2.yaml
    gear:
      kind: harness
      maker: Pellworth
      model: Dale D2
      suits: [{vehicle: ashgrove/drover-2015-2020, opening: dash}]
      plugs: {power: {8: {function: ground}}}
    # file: spacers/pellworth-ring-12.yaml
    gear:
      kind: spacer
      maker: Pellworth
      model: Ring 12
      thickness: 12 mm
      hole: {shape: round, diameter: 128 mm}
      note: Solid plastic.
    # file: spacers/pellworth-ring-12-w.yaml
    gear:
      kind: spacer
      maker: Pellworth
      model: Ring 12 W
      thickness: 12 mm
      hole: {shape: round, diameter: 128 mm}
      note: Birch plywood.
    # file: spacers/tidewrack-ring-12.yaml
    gear:
      kind: spacer
      maker: Tidewrack
      model: Ring 12
      thickness: 12 mm
      hole: {shape: round, diameter: 128 mm}
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import permutations

from undertrim.check.findings import Card, Finding
from undertrim.check.gear import GearCard, gear, same_measures
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.record.model.kinds.tweeter import CrossoverGear, TweeterGear
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.WARNING

_MEASURED = (ReceiverGear, SpeakerGear, KitGear, SpacerGear, TweeterGear, CrossoverGear)
"""Kinds whose dimensions set them apart; one harness or lead set may be sold in several housings."""


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Both files of every pair that is one thing."""
    shelves: dict[tuple[str, str], list[GearCard]] = defaultdict(list)
    for item in gear(cards):
        shelves[item.facts.kind, item.maker].append(item)
    for shelf in shelves.values():
        for one, other in permutations(shelf, 2):
            if found := _same(one, other):
                yield one.card, Finding(("gear", "model"), found, beside=(other.card.address,))


def _same(one: GearCard, other: GearCard) -> Message | None:
    """What is wrong with the first of two pieces of one kind and maker."""
    if one.model == other.model:
        return message("rules/gear-twice/same-model", other=other.file)
    told_apart = one.facts.note and other.facts.note and one.facts.note != other.facts.note
    if isinstance(one.facts, _MEASURED) and not told_apart and same_measures(one.facts, other.facts):
        return message("rules/gear-twice/same-measures", other=other.file)
    return None
