"""A record that takes the battery off says what to do before and after.

## What it finds

A preparation of the record that sets the battery off, where the list of things to do before, or after, is empty
and neither `checked_none` says that somebody looked nor `not_listed: unknown` that nobody did. Also a list that has entries and is said to have none.

## Why it matters

A radio code, a lost window end stop, a lamp in the instruments: the customer comes back with it. An empty list is
not the same as none.

## Bad

    after_battery:    # here
      after:
        clock: {do: Set the clock.}

error: nothing is said of what to do before the battery goes off (list it under 'before', write 'checked_none: [before]' if somebody looked, or 'not_listed: unknown' if nobody did)

    after_battery:
      after:
        clock: {do: Set the clock.}
      checked_none: [before, after]    # here

error: 'checked_none' names 'after', which has entries (take out one of the two)

## Good

    after_battery:
      before:
        code: {do: Ask for the radio code.}
      after:
        clock: {do: Set the clock.}

Or, where somebody looked:

    after_battery:
      after:
        clock: {do: Set the clock.}
      checked_none: [before]

Or, where nobody has looked: the plan says so, and the record cannot be called verified. In format 2 `after_battery: unknown` says it of both.

    after_battery:
      after:
        clock: {do: Set the clock.}
      not_listed: unknown
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import AfterBattery
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR

_LISTS = {
    "before": message("rules/battery-lists/before-not-said"),
    "after": message("rules/battery-lists/after-not-said"),
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every list that is neither filled nor said to be empty, and every one that is both."""
    known = subject.record.after_battery or AfterBattery()
    off = [prep for prep in subject.record.preps.values() if prep.sets.get("battery") == "off"]
    whole = subject.intact(("after_battery",))
    for name, not_said in _LISTS.items():
        entries = known.before if name == "before" else known.after
        if off and whole and not entries and name not in known.checked_none and not known.not_listed:
            place: Pointer = ("after_battery",) if subject.record.after_battery else ("preps", off[0].id)
            yield Finding(place, not_said, key=True)
        elif entries and name in known.checked_none:
            index = known.checked_none.index(name)
            found = message("rules/battery-lists/said-to-be-none", name=name)
            yield Finding(("after_battery", "checked_none", index), found)
