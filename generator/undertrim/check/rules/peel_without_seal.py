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

LEVEL = Level.ERROR

_STICKY = ("butyl", "tape")


def check(subject: Subject) -> Iterator[Finding]:
    """Every covering without a seal, and every seal that is never made."""
    for part in subject.record.parts.values():
        home = ("parts", part.id)
        if part.replaced == "yes":
            if part.seal:
                message = f"'{part.id}' is replaced, so its seal is never made"
                yield Finding((*home, "seal"), message, "say it in the opening's 'install_how'")
        elif not part.seal and (how := _opened(part)) and subject.intact(home):
            hint = "add 'seal' with what it is sealed with"
            yield Finding(home, f"'{part.id}' is {how} and nothing seals it again", hint, key=True)


def _opened(part: Part) -> str:
    """How a seal is broken, in words; empty where none is."""
    if part.release == "peel":
        return "peeled off"
    bonds = [fastener.bond for fastener in part.held_by if fastener.bond in _STICKY and fastener.leave == "no"]
    return f"stuck to a door with {bonds[0]}" if bonds and part.area in DOORS else ""
