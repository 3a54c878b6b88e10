"""What is on one side says whether it changes sides with the steering wheel.

## What it finds

A preparation, part or opening with `on_side` and without `mirrors`, in a record that covers both drive sides. A tether or fastener
there with one `side` for both.
One that its `when` keeps to cars of a single drive side is left alone, and so is a record of one drive side:
read for the other, what is not said there becomes a question.

## Why it matters

The side was seen in one car. A blank would be read as "the same in the other", and somebody lights up the
wrong footwell, or takes the wrong panel off.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    preps:
      battery:
        name: Battery off
        sets: {battery: off}
        how: Take the clamp off the negative terminal and cover it.
        restore: Put the clamp back and tighten it.
        on_side: right    # here
    parts:
      fuse-cover:
        name: Fuse box cover
        release: pull
        on_side: left    # here
      door-panel:
        name: Front door panel
        area: front-door
        each: [left, right]
        release: pull
        tethers: {mirrors: {name: Mirror switch plug, kind: plug, serves: [mirrors], side: left}}    # here
    openings:
      shelf:
        name: Shelf opening
        kind: receiver
        behind: [radio]
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 170 mm}
        on_side: left    # here

error: 'battery' is on the right, and nothing says whether it changes sides with the steering wheel (add 'mirrors: yes', 'no' or 'unknown')
error: 'fuse-cover' is on the left, and nothing says whether it changes sides with the steering wheel (add 'mirrors: yes', 'no' or 'unknown')
error: 'mirrors' is on the left, and nothing says whether it changes sides with the steering wheel (write one for each: 'side: [{when: {drive-side: left}, is: left}, {when: {drive-side: right}, is: right}]')
error: 'shelf' is on the left, and nothing says whether it changes sides with the steering wheel (add 'mirrors: yes', 'no' or 'unknown')

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    parts:
      fuse-cover:
        name: Fuse box cover
        release: pull
        on_side: left
        mirrors: no
      battery-cover:
        name: Battery cover
        release: pull
        on_side: left
        mirrors: unknown
      brace:
        name: Brace below the dash
        release: pull
        when: {drive-side: right}
        on_side: left
      tray:
        name: Tray
        release: pull

A record of one drive side:

    parts:
      fuse-cover:
        name: Fuse box cover
        release: pull
        on_side: left
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.one_sided import OneSided, one_sided
from undertrim.derive import mirroring
from undertrim.record.model import Side, Tether
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every thing whose side in the cars of the other drive side is left open."""
    for place, thing in mirroring.things(subject.record):
        drive_sides = [side for side in subject.record.vehicle.drive_side if mirroring.exists(thing, side)]
        if thing.on_side and not thing.mirrors and len(drive_sides) > 1:
            section, _, name = place.partition("/")
            side = message(f"sides/{thing.on_side}")
            found = message("rules/on-side-without-mirrors/unsaid", name=name, side=side)
            yield Finding((section, name, "on_side"), found)
    for item in one_sided(subject.record):
        both = [side for side in subject.record.vehicle.drive_side if _there(item, side)]
        if len(both) > 1:
            name = item.item.id if isinstance(item.item, Tether) else item.item.what
            side = message(f"sides/{item.side}")
            found = message("rules/on-side-without-mirrors/one-for-both", name=name, side=side)
            yield Finding((*item.pointer, "side"), found)


def _there(item: OneSided, drive_side: Side) -> bool:
    """Whether there is one in cars of a drive side."""
    return mirroring.exists(item.thing, drive_side) and item.item.when.holds({"drive-side": drive_side})
