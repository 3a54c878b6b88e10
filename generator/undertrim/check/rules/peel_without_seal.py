"""A covering that is peeled off says what seals it again.

## What it finds

A part with `release: peel`, and a part in a door that butyl or tape holds, without `seal`; and a `seal` on a part
that is replaced and never goes back.

## Why it matters

A liner that is not stuck down again lets water into the carpet, and air out of a door whose pressure fires the
airbags.

## Bad

    parts:
      door-liner:    # here
        name: Door liner
        area: front-door
        release: peel
        held_by: [{bond: butyl, count: 1}]
      foam-cover:    # here
        name: Cover over the hole
        area: rear-door
        release: unclip
        held_by: [{clip: push, count: 2}, {bond: tape}]
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        seal: Butyl cord    # here

error: 'door-liner' is peeled off and nothing seals it again (add 'seal' with what it is sealed with)
error: 'foam-cover' is stuck to a door with tape and nothing seals it again (add 'seal' with what it is sealed with)
error: 'radio' is replaced, so its seal is never made (say it in the opening's 'install_how')

## Good

    parts:
      door-liner:
        name: Door liner
        area: front-door
        release: peel
        seal: Butyl cord
        held_by: [{bond: butyl, count: 1}]
      pad:
        name: Felt pad
        area: front-door
        release: lift
        held_by: [{bond: foam}, {bond: tape, leave: yes}]
      badge:
        name: Badge
        area: boot
        release: lift
        held_by: [{bond: tape}]
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import DOORS, Part
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR

_STICKY = {"butyl": message("sorts/butyl"), "tape": message("sorts/tape")}


def check(subject: Subject) -> Iterator[Finding]:
    """Every covering without a seal, and every seal that is never made."""
    for part in subject.record.parts.values():
        home = ("parts", part.id)
        if part.replaced == "yes":
            if part.seal:
                yield Finding((*home, "seal"), message("rules/peel-without-seal/never-made", part=part.id))
        elif not part.seal and (opened := _opened(part)) and subject.intact(home):
            yield Finding(home, opened, key=True)


def _opened(part: Part) -> Message | None:
    """How a seal is broken that nothing makes again; None where none is."""
    if part.release == "peel":
        return message("rules/peel-without-seal/peeled", part=part.id)
    bonds = [
        fastener.what
        for fastener in part.held_by
        if fastener.kind == "bond" and fastener.what in _STICKY and fastener.leave == "no"
    ]
    if bonds and part.area in DOORS:
        return message("rules/peel-without-seal/stuck-to-door", part=part.id, bond=_STICKY[bonds[0]])
    return None
