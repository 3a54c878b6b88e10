"""Nothing is cut or drilled where airbags or belt parts are.

## What it finds

`alters` on an opening in an area whose `restraints` name airbags, belt parts or their sensors; fasteners there that
have to be drilled out; and texts of parts, preparations and openings there that tell to drill, cut, enlarge, file, saw or
grind, or to use compressed air. What only goes through a cable tie, tape or cord is left alone, and so is a sentence
that forbids it.

## Why it matters

A drill that comes through a trim meets what is behind it: a curtain airbag, its gas generator, a tensioner, their wiring.
It can fire there and then, or fail in the crash.

## Bad

    areas:
      pillar: {restraints: [Curtain airbag along the roof edge, Belt reel]}
    parts:
      pillar-trim:
        name: Pillar trim
        area: pillar
        release: pull
        how: Pull it off, then cut the foam block away and drill the trim.    # here
        held_by:
          - {rivet: blind, count: 2}    # here
          - {rivet: blind, count: 1, leave: yes, note: Holds the bracket of the bag.}
    openings:
      pod:
        name: Pillar pod
        kind: speaker
        area: pillar
        behind: [radio]
        hole: {shape: round, diameter: 52 mm}
        depth: {clear: 30 mm, datum: skin, over: no-glass}
        alters: [drill]    # here

error: 'drill' beside 'Curtain airbag along the roof edge'; 'Belt reel' (use what is there, or leave this out)
error: 'pillar-trim' is altered by 'drill' to get 'rivet: blind' out, and beside it are 'Curtain airbag along the roof edge'; 'Belt reel' (use what is there, or leave this out)
error: 'pod' is altered by 'drill', and beside it are 'Curtain airbag along the roof edge'; 'Belt reel' (use what is there, or leave this out)

## Good

    areas:
      pillar: {restraints: [Curtain airbag along the roof edge]}
    parts:
      pillar-trim:
        name: Pillar trim
        area: pillar
        release: pull
        how: Do not drill or cut. Cut the cable tie.
      boot-trim:
        name: Boot trim
        area: boot
        release: lift
        how: Drill the rivets out.
        held_by: [{rivet: blind, count: 2, diameter: 4.8 mm}]
"""

from collections.abc import Iterator

from undertrim.check import cutting
from undertrim.check.cutting import Words
from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR

_WORDS = {
    "restraint": Words(
        message("rules/cutting-near-restraint/told"),
        message("rules/cutting-near-restraint/done"),
    ),
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every alteration in an area with airbags or belt parts."""
    yield from cutting.find(subject, _WORDS)
