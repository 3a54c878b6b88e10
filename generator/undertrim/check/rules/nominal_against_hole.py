"""A nominal size and the hole that is measured beside it belong together.

## What it finds

An opening for a speaker, or a speaker, whose `nominal` is a known size, and whose hole or basket is not what
usually goes by that name. The ranges are common practice without a source, and nothing is said within 5 mm
of them.

## Why it matters

People search by the name. A "6.5" that is said of a 6x8 hole sends the tech home for an adapter, or a digit of
the hole was mistaken, and everything is reckoned from the hole.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        nominal: 6.5 in    # here
        hole: {shape: oval, width: 132 mm, height: 184 mm}
        depth: {clear: 64 mm, datum: skin}
      rear-door:
        name: Rear door speakers
        kind: speaker
        behind: [radio]
        nominal: 5 1/4"    # here
        hole: {shape: round, diameter: 210 mm}
        depth: {clear: 64 mm, datum: skin}

warning: the hole measures '132 mm' by '184 mm'; what is called '6.5 in' usually measures 125 to 147 mm (measure again, or call it '5x7 in', as such a hole usually is)
warning: the hole measures '210 mm'; what is called '5 1/4"' usually measures 112 to 122 mm (measure again, or leave 'nominal' out: the hole is what counts)

    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      nominal: 165 mm    # here
      basket: {shape: round, diameter: 103 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 68 mm
      impedance: 4 ohm

warning: the basket measures '103 mm'; what is called '165 mm' usually measures 125 to 147 mm (measure again, or call it '4 in', as such a basket usually is)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        nominal: 6.5 in
        hole: {shape: round, diameter: 151 mm}
        depth: {clear: 64 mm, datum: skin}
      shelf:
        name: Shelf speakers
        kind: speaker
        behind: [radio]
        nominal: 6 x 9"
        hole: {shape: oval, width: 223 mm, height: 6 in}
        depth: {clear: 64 mm, datum: panel}
      pillar:
        name: Tweeters in the pillars
        kind: speaker
        behind: [radio]
        nominal: tweeter
        hole: {shape: round, diameter: 50 mm}
        depth: {clear: 24 mm, datum: skin}

A basket is a little smaller than its cut-out:

    gear:
      kind: speaker
      maker: Pellworth
      model: Cove 40
      nominal: 4 in
      basket: {shape: round, diameter: 91 mm}
      flange: {shape: round, diameter: 121 mm}
      depth: 40 mm
      impedance: 4 ohm
"""

from collections.abc import Iterator

from undertrim.check import nominal, outlines
from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.check.outlines import KnownOutline
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, Value, message

LEVEL = Level.WARNING

_HOLE, _BASKET = message("rules/nominal-against-hole/hole"), message("rules/nominal-against-hole/basket")


def check(subject: Subject) -> Iterator[Finding]:
    """Every opening whose hole is not what usually goes by its nominal size."""
    for opening in subject.record.openings_of(SpeakerOpening):
        place = ("openings", opening.id, "nominal")
        yield from _look(place, opening.nominal, _HOLE, outlines.of_hole(opening.hole))


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a speaker and its basket."""
    facts = subject.record.gear
    if isinstance(facts, SpeakerGear):
        yield from _look(("gear", "nominal"), facts.nominal, _BASKET, outlines.of_hole(facts.basket))


def _look(place: Pointer, said: str, what: Message, hole: KnownOutline | None) -> Iterator[Finding]:
    size = nominal.find(said)
    if size and hole and not size.allows(hole):
        facts: dict[str, Value] = {"what": what, "measured": hole.said, "said": said, "usual": size.said}
        name = next(nominal.going_by(hole), "")
        if name:
            yield Finding(place, message("rules/nominal-against-hole/another-name", name=name, **facts))
        else:
            yield Finding(place, message("rules/nominal-against-hole/no-name", **facts))
