"""A preparation that changes how the car stands says how to change it back.

## What it finds

A preparation without `restore` that leaves the battery, the ignition, the gear lever, the seats, a lid or the steering wheel
otherwise than the car came in. Windows and parking brake come in either way, and need none.

## Why it matters

The plan undoes at the end what it did at the start, in the words of the record. Without them the seat stays where it was in the
way, and the next driver finds the lever in neutral.

## Bad

    preps:
      lever-neutral:    # here
        name: Lever in neutral
        sets: {gear: neutral}
        how: Move the lever to neutral.
      seats:    # here
        name: Seats back and wheel down
        sets: {seat: rearward, steering-wheel: lowered, glass: up}
        how: Move both.

warning: 'lever-neutral' sets gear to 'neutral' and does not say how to undo it (say in 'restore' how it goes back)
warning: 'seats' sets seat to 'rearward' and steering-wheel to 'lowered' and does not say how to undo it (say in 'restore' how it goes back)

## Good

    preps:
      lever-neutral:
        name: Lever in neutral
        sets: {gear: neutral}
        how: Move the lever to neutral.
        restore: Put the lever into park.
      windows:
        name: Windows closed, ignition off
        sets: {glass: up, ignition: off}
        how: Close the windows.
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.procedure import states
from undertrim.record.problem import Level
from undertrim.words import all_of, message

LEVEL = Level.WARNING

_ANY = "unknown"


def check(subject: Subject) -> Iterator[Finding]:
    """Every preparation that leaves the car otherwise and has no way back."""
    for prep in subject.record.preps.values():
        left = {name: value for name, value in prep.sets.items() if states.initial()[name] not in (value, _ANY)}
        if left and not prep.restore and subject.intact(("preps", prep.id)):
            said = (message("rules/way-back-missing/state", state=name, value=value) for name, value in left.items())
            found = message("rules/way-back-missing/no-restore", prep=prep.id, states=all_of(*said))
            yield Finding(("preps", prep.id), found, key=True)
