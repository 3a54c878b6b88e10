"""Dimensions of gear that can hardly all be true are looked at again.

## What it finds

A magnet that is larger than the narrow side of the basket, bolts on the edge of the flange or rim or beyond
it, and a receiver whose trim is smaller than its body, across or up. All of it can exist: a speaker that goes
in from behind, bolts in ears outside the flange, a front without its trim ring. A circle of bolts is only
found where no angle would bring it onto the flange.

## Why it matters

Far more often a digit was mistaken or two lines exchanged, and the fit is reckoned from them.

## Bad

    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 156 mm}
      bolts: {pattern: circle, count: 4, diameter: 160 mm}    # here
      depth: 68 mm
      magnet: 136 mm    # here
      impedance: 4 ohm

warning: the bolts '160 mm' lie on the edge of the flange '156 mm' or beyond (measure both again; if they are in ears outside the flange, allow it with that reason)
warning: the magnet '136 mm' is larger than the basket '130 mm', which is to be all that passes through the hole (measure both again; if the speaker goes in from behind, allow it with that reason)

    gear:
      kind: spacer
      maker: Sandmartin
      model: Plank 69
      thickness: 6 mm
      hole: {shape: round, diameter: 132 mm}
      bolts: {pattern: circle, count: 4, diameter: 180 mm}    # here
      car_bolts: {pattern: rectangle, count: 4, width: 150 mm, height: 150 mm}    # here
      flange: {shape: round, diameter: 176 mm}

warning: the bolts '180 mm' lie on the edge of the rim '176 mm' or beyond (measure both again; if they are in ears outside the rim, allow it with that reason)
warning: the bolts towards the car '150 mm' by '150 mm' lie on the edge of the rim '176 mm' or beyond (measure both again; if they are in ears outside the rim, allow it with that reason)

    gear:
      kind: receiver
      maker: Skerrowe
      model: Broadside
      body: {width: 178 mm, height: 100 mm}
      trim: {width: 231 mm, height: 98 mm}    # here
      chassis_depth: 76 mm
      outputs: [speaker]
      needs: [ground]

warning: the trim's height '98 mm' is less than the body's height '100 mm' (measure the front with its trim ring or screen, or leave 'trim' out if it has none)

## Good

    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 69
      basket: {shape: oval, width: 150 mm, height: 220 mm}
      flange: {shape: oval, width: 166 mm, height: 237 mm}
      bolts: {pattern: circle, count: 4, diameter: 180 mm}
      depth: 68 mm
      magnet: 150 mm
      impedance: 4 ohm

A screen that is no higher than the chassis behind it:

    gear:
      kind: receiver
      maker: Skerrowe
      model: Broadside
      body: {width: 178 mm, height: 100 mm}
      trim: {width: 231 mm, height: 100 mm}
      chassis_depth: 76 mm
      outputs: [speaker]
      needs: [ground]
"""

from collections.abc import Iterator

from undertrim.check import outlines
from undertrim.check.findings import Finding, GearSubject
from undertrim.record.model import Bolts, Hole
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.WARNING


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """Every dimension that hardly goes with another."""
    facts = subject.record.gear
    if isinstance(facts, SpeakerGear):
        yield from _bolts("bolts", facts.bolts, "flange", facts.flange)
        yield from _magnet(facts)
    if isinstance(facts, SpacerGear):
        yield from _bolts("bolts", facts.bolts, "rim", facts.flange)
        yield from _bolts("car_bolts", facts.car_bolts, "rim", facts.flange)
    if isinstance(facts, ReceiverGear):
        yield from _trim(facts)


def _bolts(field: str, typed: Bolts | None, rim: str, outline: Hole | None) -> Iterator[Finding]:
    edge, bolts = outlines.of_hole(outline), outlines.of_bolts(typed)
    if edge and bolts and outlines.outside(bolts, edge):
        found = {"bolts": message(f"outlines/{field}"), "size": bolts.said, "edge": edge.said}
        beyond = {
            "rim": message("rules/unlikely-gear/bolts-beyond-rim", **found),
            "flange": message("rules/unlikely-gear/bolts-beyond-flange", **found),
        }
        yield Finding(("gear", field), beyond[rim])


def _magnet(facts: SpeakerGear) -> Iterator[Finding]:
    basket, magnet = outlines.of_hole(facts.basket), facts.magnet
    if basket and isinstance(magnet, Quantity) and magnet.value > min(basket.across.value, basket.up.value):
        found = message("rules/unlikely-gear/magnet", magnet=magnet.text, basket=basket.said)
        yield Finding(("gear", "magnet"), found)


def _trim(facts: ReceiverGear) -> Iterator[Finding]:
    trim, body = outlines.of_face(facts.trim), outlines.of_face(facts.body)
    pairs = ((trim.across, body.across), (trim.up, body.up)) if trim and body else ()
    for front, behind in pairs:
        if front.value < behind.value:
            names = {"front": front.called, "behind": behind.called}
            found = message("rules/unlikely-gear/trim", trim=front.text, body=behind.text, **names)
            yield Finding(("gear", "trim"), found)
            return
