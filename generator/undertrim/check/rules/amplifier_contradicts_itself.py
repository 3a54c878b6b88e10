"""What an amplifier gives, takes and bears can all be true at once.

## What it finds

A least load bridged below twice the least load of one output; more power than its own current could carry; and waking by the
signal without an input at speaker level.

## Why it matters

Of a bridged load each output sees half (derived: the two outputs are in opposite phase, so that the middle of the load stays at
rest). Cable and fuse are reckoned from the current, and a current that is too small makes both too thin.

## Bad

    gear:
      kind: amplifier
      maker: Skerrowe
      model: Quay-4
      size: {width: 240 mm, height: 48 mm, depth: 165 mm}
      channels: 4
      least_load: 4 ohm
      bridged_load: 4 ohm    # here
      rated: {power: 600 W, current: 27 A}    # here
      inputs: [line]
      wakes_by: [signal]    # here

warning: the least load bridged '4 ohm' is less than twice the '4 ohm' of one output (look both up: of a bridged load each output sees half)
warning: '600 W' cannot come of '27 A' at 14.4 V (look up power and current: one of them is for something else)
warning: it wakes by a signal at speaker level, and no input takes one (add 'speaker' to 'inputs', or mend 'wakes_by')

## Good

    gear:
      kind: amplifier
      maker: Skerrowe
      model: Quay-4
      size: {width: 240 mm, height: 48 mm, depth: 165 mm}
      channels: 4
      least_load: 2 ohm
      bridged_load: 4 ohm
      rated: {power: 300 W, current: 27 A}
      inputs: [line, speaker]
      wakes_by: [signal]
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, GearSubject
from undertrim.record.model.kinds.amplifier import AmplifierGear
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import Value, message

LEVEL = Level.WARNING

_CHARGING = 14.4
"""V of a car that charges well, at which makers state their power: common practice, no source."""


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """What cannot be true of an amplifier together."""
    facts = subject.record.gear
    if isinstance(facts, AmplifierGear):
        yield from _bridged(facts)
        yield from _power(facts)
        if "signal" in facts.wakes_by and facts.inputs and "speaker" not in facts.inputs:
            yield Finding(("gear", "wakes_by"), message("rules/amplifier-contradicts-itself/deaf"))


def _bridged(facts: AmplifierGear) -> Iterator[Finding]:
    alone, bridged = facts.least_load, facts.bridged_load
    if isinstance(alone, Quantity) and isinstance(bridged, Quantity) and bridged.value < 2 * alone.value * (1 - 1e-9):
        found = message("rules/amplifier-contradicts-itself/bridged", bridged=bridged.text, alone=alone.text)
        yield Finding(("gear", "bridged_load"), found)


def _power(facts: AmplifierGear) -> Iterator[Finding]:
    power, current = (facts.rated.power, facts.rated.current) if facts.rated else (None, None)
    if isinstance(power, Quantity) and isinstance(current, Quantity) and power.value > current.value * _CHARGING:
        both: dict[str, Value] = {"power": power.text, "current": current.text, "volts": _CHARGING}
        yield Finding(("gear", "rated"), message("rules/amplifier-contradicts-itself/power", **both), key=True)
