"""What an amplifier drives is there.

## What it finds

A sound system that says which channels its amplifier `powers` and names no `amplifier`, and an amplifier place that powers a channel
on which the record has no opening. The bass is left out: its speaker may stand in a box of its own, for which no car has an opening.

## Why it matters

The load of each channel is held against what drives it. A channel given to nothing, or nothing given to a channel, sends the tech to
the wrong limit.

## Bad

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        powers: [bass, centre]    # here
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}
    sound:
      plain: {output: speaker, powers: [front]}    # here

warning: 'bay' powers the channel centre, and no opening is on it (record the opening with its 'channel', or take it out of 'powers')
warning: 'plain' says what its amplifier drives, and has none (say under 'amplifier' where it is, or leave 'powers' out)

## Good

    sound:
      amplified: {output: line, amplifier: Under the left front seat, powers: [bass]}
    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        powers: [front, bass]
      door: {name: Door speakers, kind: speaker, channel: front, behind: [radio], hole: {shape: round, diameter: 146 mm}, depth: {clear: 62 mm, datum: skin}}
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_BOXED = "bass"


def check(subject: Subject) -> Iterator[Finding]:
    """Factory amplifiers, then the places for others."""
    for system in subject.record.sound.values():
        if system.powers and not system.amplifier:
            none = message("rules/powers-nothing/no-amplifier", sound=system.id)
            yield Finding(("sound", system.id, "powers"), none, key=True)
    there = {opening.channel for opening in subject.record.openings.values()}
    for bay in subject.record.openings_of(AmplifierOpening):
        for channel in (one for one in bay.powers if one != _BOXED and one not in there):
            said = message("rules/powers-nothing/no-opening", opening=bay.id, channel=message(f"channels/{channel}"))
            yield Finding(("openings", bay.id, "powers"), said, key=True)
