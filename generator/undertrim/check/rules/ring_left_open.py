"""An optical ring that is opened is closed again.

## What it finds

A `fibre` tether that is parked, or that leaves with a replaced part to be joined to the new gear; and `bridge` on
a tether that is no fibre.

## Why it matters

All units of an optical ring pass its light on. Where one end stays open, amplifier, telephone and sometimes the
instruments go silent with the radio.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        tethers:
          ring: {name: Optical ring plug, kind: fibre}    # here
          second-ring: {name: Second ring plug, kind: fibre, then: park}    # here
          main: {name: Main plug, kind: plug, then: bridge}    # here
      changer:
        name: Disc changer
        release: slide
        tethers:
          ring: {name: Ring plug of the changer, kind: fibre, then: park}    # here

error: the optical ring stays open at 'ring' of 'radio' (write 'then: bridge')
error: the optical ring stays open at 'second-ring' of 'radio' (write 'then: bridge')
error: only a fibre is bridged, and 'main' is a plug (write 'to-gear', 'rejoin' or 'park')
error: the optical ring stays open at 'ring' of 'changer' (write 'then: rejoin', or 'then: bridge')

## Good

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        tethers:
          ring: {name: Optical ring plug, kind: fibre, then: bridge}
          main: {name: Main plug, kind: plug, then: park}
      changer:
        name: Disc changer
        release: slide
        tethers:
          ring: {name: Ring plug of the changer, kind: fibre}
          other: {name: Other plug, kind: fibre, then: leave}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.procedure.fates import fate_of_tether
from undertrim.record.model import Part, Tether
from undertrim.record.problem import Level
from undertrim.words import Message, message, word

LEVEL = Level.ERROR

_OPEN = ("park", "to-gear")


def check(subject: Subject) -> Iterator[Finding]:
    """Every ring that stays open, and every bridge on what is no ring."""
    for part in subject.record.parts.values():
        for tether in part.tethers.values():
            home = ("parts", part.id, "tethers", tether.id)
            fate = fate_of_tether(part, tether)
            if not subject.intact(("parts", part.id)):
                continue
            if tether.kind == "fibre" and fate in _OPEN:
                place = (*home, "then") if tether.then else home
                yield Finding(place, _open_ring(part, tether), key=not tether.then)
            elif tether.kind != "fibre" and fate == "bridge":
                kind = word("tethers", "kind", tether.kind, "noun")
                yield Finding((*home, "then"), message("rules/ring-left-open/no-fibre", tether=tether.id, kind=kind))


def _open_ring(part: Part, tether: Tether) -> Message:
    if part.replaced == "yes":
        return message("rules/ring-left-open/at-replaced", tether=tether.id, part=part.id)
    return message("rules/ring-left-open/at-kept", tether=tether.id, part=part.id)
