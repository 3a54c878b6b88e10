"""A spacer has a wall, and its bolts are in it.

## What it finds

A spacer or plate whose hole is not smaller than its rim (`flange`), across or up, and bolts towards the speaker
or towards the car whose middles lie inside the hole. A circle of bolts whose `angle` is not recorded is only found where no angle would bring
them out of it.

## Why it matters

Between hole and rim is all the material there is. A ring with a wall of nothing is proposed for a car, ordered,
and turns out to be another ring.

## Bad

    gear:
      kind: spacer
      maker: Pellworth
      model: Ring 12
      thickness: 12 mm
      hole: {shape: round, diameter: 176 mm}    # here
      bolts: {pattern: circle, count: 4, diameter: 156 mm}    # here
      car_bolts: {pattern: rectangle, count: 4, width: 110 mm, height: 110 mm}    # here
      flange: {shape: round, diameter: 128 mm}

error: the hole's diameter '176 mm' is not smaller than the rim's diameter '128 mm' (the hole takes the speaker, the rim is the outside: are the two exchanged?)
error: the bolts '156 mm' lie inside the hole '176 mm' (measure both again: bolts are measured middle to middle)
error: the bolts towards the car '110 mm' by '110 mm' lie inside the hole '176 mm' (measure both again: bolts are measured middle to middle)

## Good

    gear:
      kind: spacer
      maker: Sandmartin
      model: Plank 69
      thickness: 6 mm
      hole: {shape: round, diameter: 132 mm}
      bolts: {pattern: circle, count: 4, diameter: 160 mm}
      car_bolts: {pattern: rectangle, count: 4, width: 110 mm, height: 165 mm}
      flange: {shape: oval, width: 174 mm, height: 240 mm}
"""

from collections.abc import Iterator

from undertrim.check import outlines
from undertrim.check.findings import Finding, GearSubject
from undertrim.record.model.kinds.speaker import SpacerGear
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """What cannot be true of a spacer's outlines together."""
    facts = subject.record.gear
    if isinstance(facts, SpacerGear):
        yield from _spacer(facts)


def _spacer(facts: SpacerGear) -> Iterator[Finding]:
    hole, rim = outlines.of_hole(facts.hole), outlines.of_hole(facts.flange)
    if hole and rim and (sides := outlines.too_wide(hole, rim)):
        inner, outer = sides
        names = {"inner": inner.called, "outer": outer.called}
        found = message("rules/spacer-cannot-exist/wider-than-rim", hole=inner.text, rim=outer.text, **names)
        yield Finding(("gear", "hole"), found)
    for field, typed in (("bolts", facts.bolts), ("car_bolts", facts.car_bolts)):
        bolts = outlines.of_bolts(typed)
        if hole and bolts and outlines.inside(bolts, hole):
            name = message(f"outlines/{field}")
            found = message("rules/spacer-cannot-exist/inside-hole", bolts=name, size=bolts.said, hole=hole.said)
            yield Finding(("gear", field), found)
