"""The dimensions of a speaker or tweeter can all be true at once.

## What it finds

A basket that is not smaller than the flange, across or up, and bolts whose middles lie inside the basket. A
circle of bolts whose `angle` is not recorded is only found where no angle would bring them out of it. Of a tweeter, a rim that is
not larger than the body, and one way to mount it that stands there twice.

## Why it matters

Whether a speaker fits is reckoned from these numbers. A flange that is smaller than what must pass through
the hole falls through with it.

## Bad

    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      basket: {shape: round, diameter: 169 mm}    # here
      flange: {shape: round, diameter: 130 mm}
      bolts: {pattern: circle, count: 4, diameter: 160 mm}    # here
      depth: 68 mm
      impedance: 4 ohm

error: the basket's diameter '169 mm' is not smaller than the flange's diameter '130 mm' (the basket goes through the hole, the flange covers it: are the two exchanged?)
error: the bolts '160 mm' lie inside the basket '169 mm', where there is nothing to screw into (measure both again: bolts are measured middle to middle)

    gear:
      kind: speaker
      maker: Skerrowe
      model: Longshore 69
      basket: {shape: oval, width: 150 mm, height: 220 mm}    # here
      flange: {shape: oval, width: 237 mm, height: 166 mm}
      bolts: {pattern: rectangle, count: 4, width: 100 mm, height: 160 mm}    # here
      depth: 82 mm
      impedance: 4 ohm

error: the basket's height '220 mm' is not smaller than the flange's height '166 mm' (the basket goes through the hole, the flange covers it: are the two exchanged?)
error: the bolts '100 mm' by '160 mm' lie inside the basket '150 mm' by '220 mm', where there is nothing to screw into (measure both again: bolts are measured middle to middle)

    gear:
      kind: tweeter
      maker: Skerrowe
      model: Spindrift 28
      mounts:
        - {mount: flush, diameter: 51 mm, depth: 14 mm, over: 3 mm, rim: 43 mm}    # here
        - {mount: surface, diameter: 50 mm, depth: none, over: 19 mm}
        - {mount: surface, diameter: 54 mm, depth: none, over: 17 mm}    # here
      impedance: 4 ohm
      high_pass: {frequency: 4 kHz, filter_order: first, power: 60 W}

error: the rim '43 mm' is not larger than the body '51 mm' (the body goes through the cut-out, the rim covers it: are the two exchanged?)
error: a second mount is 'surface' (give each way to mount it once, with its own sizes)

## Good

    gear:
      kind: tweeter
      maker: Skerrowe
      model: Spindrift 28
      mounts:
        - {mount: flush, diameter: 43 mm, depth: 14 mm, over: 3 mm, rim: 51 mm}
        - {mount: surface, diameter: 50 mm, depth: none, over: 19 mm}
      impedance: 4 ohm
      high_pass: {frequency: 4 kHz, filter_order: first, power: 60 W}

An oval speaker:

    gear:
      kind: speaker
      maker: Skerrowe
      model: Longshore 69
      basket: {shape: oval, width: 150 mm, height: 220 mm}
      flange: {shape: oval, width: 166 mm, height: 237 mm}
      bolts: {pattern: rectangle, count: 4, width: 110 mm, height: 165 mm}
      depth: 82 mm
      impedance: 4 ohm

A circle of bolts that may lie in the long ends of an oval basket or beside it:

    gear:
      kind: speaker
      maker: Skerrowe
      model: Longshore 68
      basket: {shape: oval, width: 130 mm, height: 180 mm}
      flange: {shape: oval, width: 160 mm, height: 200 mm}
      bolts: {pattern: circle, count: 2, diameter: 145 mm}
      depth: 62 mm
      impedance: 4 ohm
"""

from collections.abc import Iterator

from undertrim.check import outlines
from undertrim.check.findings import Finding, GearSubject
from undertrim.record.model.kinds.speaker import SpeakerGear
from undertrim.record.model.kinds.tweeter import TweeterGear
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import Value, message

LEVEL = Level.ERROR


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """What cannot be true of a speaker's outlines together, or of a tweeter's mounts."""
    facts = subject.record.gear
    if isinstance(facts, SpeakerGear):
        yield from _speaker(facts)
    if isinstance(facts, TweeterGear):
        yield from _tweeter(facts)


def _tweeter(facts: TweeterGear) -> Iterator[Finding]:
    seen: set[str] = set()
    for place, mount in enumerate(facts.mounts):
        body, rim = mount.diameter, mount.rim
        if isinstance(body, Quantity) and isinstance(rim, Quantity) and rim.value <= body.value:
            sizes = {"rim": rim.text, "body": body.text}
            found = message("rules/gear-contradicts-itself/rim-inside-body", **sizes)
            yield Finding(("gear", "mounts", place, "rim"), found)
        if mount.mount in seen:
            twice = message("rules/gear-contradicts-itself/mount-twice", mount=mount.mount)
            yield Finding(("gear", "mounts", place, "mount"), twice)
        seen.add(mount.mount)


def _speaker(facts: SpeakerGear) -> Iterator[Finding]:
    basket, flange = outlines.of_hole(facts.basket), outlines.of_hole(facts.flange)
    bolts = outlines.of_bolts(facts.bolts)
    if basket and flange and (sides := outlines.too_wide(basket, flange)):
        inner, outer = sides
        sizes: dict[str, Value] = {"basket": inner.text, "flange": outer.text}
        names: dict[str, Value] = {"inner": inner.called, "outer": outer.called}
        yield Finding(("gear", "basket"), message("rules/gear-contradicts-itself/basket-too-wide", **names, **sizes))
    if basket and bolts and outlines.inside(bolts, basket):
        both = {"bolts": bolts.said, "basket": basket.said}
        yield Finding(("gear", "bolts"), message("rules/gear-contradicts-itself/bolts-inside-basket", **both))
