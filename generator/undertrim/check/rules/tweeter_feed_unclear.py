"""What feeds a tweeter says from which channel, and what it says goes together.

## What it finds

A place for a tweeter that is fed `parallel` or through its `own-filter` and has no `channel`, or one with the `corner` of a crossover
that is not fed through one.

## Why it matters

The tech joins the new tweeter to the wires that are there. Without the channel nobody knows which pair that is, nor what it loads. A
corner without a crossover promises a filter that goes out with the old tweeter, and the new one burns out.

## Bad

    openings:
      pillar:
        name: Windscreen pillars
        kind: tweeter
        area: pillar
        behind: [radio]
        mount: surface
        flat: 50 mm
        feed: parallel    # here
      sail:
        name: Mirror corners
        kind: tweeter
        area: front-door
        behind: [radio]
        mount: flush
        place: sail
        cut_out: 44 mm
        depth: {clear: 24 mm, datum: panel}
        feed: own-filter
        channel: front
        corner: 4 kHz    # here

warning: the feed is 'parallel', and the channel is not said (write the 'channel' whose wires come here, or 'feed: unknown')
warning: the feed is 'own-filter', and a corner of '4 kHz' is that of a crossover which stays (write 'feed: crossover', or leave 'corner' out)

## Good

    openings:
      pillar:
        name: Windscreen pillars
        kind: tweeter
        area: pillar
        behind: [radio]
        mount: surface
        flat: 50 mm
        feed: parallel
        channel: front
      sail:
        name: Mirror corners
        kind: tweeter
        area: front-door
        behind: [radio]
        mount: flush
        place: sail
        cut_out: 44 mm
        depth: {clear: 24 mm, datum: panel}
        feed: crossover
        corner: 4 kHz
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every tweeter without the channel that its feed wants, and every corner without its crossover."""
    for opening in subject.record.openings_of(TweeterOpening):
        place = ("openings", opening.id)
        if opening.feed in ("parallel", "own-filter") and not opening.channel:
            yield Finding((*place, "feed"), message("rules/tweeter-feed-unclear/no-channel", feed=opening.feed))
        if opening.feed != "crossover" and isinstance(opening.corner, Quantity):
            facts = {"feed": opening.feed, "corner": opening.corner.text}
            yield Finding((*place, "corner"), message("rules/tweeter-feed-unclear/no-crossover", **facts))
