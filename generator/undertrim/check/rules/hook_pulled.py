"""A part on hooks is not pulled off.

## What it finds

`release: pull` on a part that hooks, tabs or sill hooks hold in the same car.

## Why it matters

A hook lets go by lifting, sliding, tilting or swinging. Pulled straight out it breaks, and the part rattles
ever after.

## Bad

    parts:
      door-panel:
        name: Door panel
        release: pull    # here
        held_by:
          - {clip: push, count: 8}
          - {hook: sill, count: 3}
      tray:
        name: Phone tray
        release: pull    # here
        held_by:
          - {hook: tab, count: 2}
          - {hook: slot, count: 1}

error: 'pull' does not free 'hook: sill' (hooks want 'lift', 'slide', 'swing' or 'tilt')
error: 'pull' does not free 'hook: tab' and 'hook: slot' (hooks want 'lift', 'slide', 'swing' or 'tilt')

## Good

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio}
          map: {label: Map radio}
    parts:
      door-panel:
        name: Door panel
        release: lift
        held_by:
          - {clip: push, count: 8}
          - {hook: sill, count: 3}
      bezel:
        name: Radio bezel
        when: {radio: map}
        release: pull
        held_by:
          - {clip: push, count: 4}
          - {hook: tab, count: 2, when: {radio: plain}}
      shelf:
        name: Shelf
        release: pull
        held_by:
          - {clip: push, count: 4}
          - {hook: tab, count: 1, leave: yes}
"""

from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.derive.cars import together
from undertrim.record.model import Part
from undertrim.record.problem import Level
from undertrim.words import all_of, message, quoted

LEVEL = Level.ERROR

_HOOK = "hook"


def check(subject: Subject) -> Iterator[Finding]:
    """Every part that is pulled off its hooks."""
    hooks: dict[str, list[str]] = {}
    for item in held(subject):
        thing, fastener = item.thing, item.fastener
        if not isinstance(thing, Part) or thing.release != "pull" or not together(thing.when, fastener.when):
            continue
        if fastener.kind == _HOOK and fastener.leave == "no":
            hooks.setdefault(thing.id, []).append(item.typed)
    for part, typed in hooks.items():
        kinds = all_of(*map(quoted, dict.fromkeys(typed)))
        yield Finding(("parts", part, "release"), message("rules/hook-pulled/pulled", hooks=kinds))
