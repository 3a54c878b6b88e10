"""A condition must name a variant of this record, and one of its choices.

## What it finds

A `when` that names a variant which is neither under `variants` nor known by itself (`drive-side` where both
are covered, `body` where several are), or a choice that the variant does not have.

## Why it matters

What stands under such a condition belongs to every car or to none: a part is missing from the page of the
very car that has it.

## Bad

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    parts:
      brace:
        name: Brace
        release: unscrew
        when:
          radios: map    # here
      radio:
        name: Factory radio
        release: slide
        after:
          - {part: brace, when: {radio: mapp}}    # here
        held_by:
          - {screw: T20, count: 2, when: {radio: [plain, mapp]}}    # here
        replaced: yes

error: no variant 'radios' (did you mean 'radio'?)
error: 'radio' has no choice 'mapp' (did you mean 'map'?)
error: 'radio' has no choice 'mapp' (did you mean 'map'?)

    parts:
      radio:
        name: Factory radio
        release: slide
        when: {drive-side: left}    # here
        replaced: yes
      lid:
        name: Lid
        release: lift
        when: {body: van}    # here
      flap:
        name: Flap
        release: lift
        when: {sound: plain}    # here

error: no variant 'drive-side': this record covers one steering side (remove the condition, or add the other side to 'drive_side')
error: no variant 'body': this record covers one body (remove the condition, or add the other bodies to 'bodies')
error: no variant 'sound' (declare it under 'variants')

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      bodies: [van, minibus]
      high_voltage: no
    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    parts:
      brace:
        name: Brace
        release: unscrew
        when: {radio: [plain, map], body: van}
      radio:
        name: Factory radio
        release: slide
        after: [{part: brace, when: {radio: map, drive-side: right}}]
        replaced: yes
"""

from collections.abc import Iterator, Mapping

from undertrim.check.conditions import Undeclared, undeclared
from undertrim.check.findings import Finding, Subject
from undertrim.derive import cars
from undertrim.record.implied import LISTS
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, message, quoted

LEVEL = Level.ERROR

_IMPLIED = {
    "drive-side": message("rules/undeclared-variant/one-steering-side", name="drive-side"),
    "body": message("rules/undeclared-variant/one-body", name="body"),
    **{
        name: message("rules/undeclared-variant/one-of-its-kind", name=name, field=quoted(listed))
        for name, listed in LISTS.items()
        if name not in ("drive-side", "body")
    },
}
"""Variants that every record of more than one side, body, gearbox, engine or trim level has by itself."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every variant and choice that is named in a condition and declared nowhere."""
    known = cars.variants(subject.record)
    if not all(subject.intact(place) for place in (("variants",), *(("vehicle", listed) for listed in LISTS.values()))):
        return
    for item in undeclared(subject.record):
        pointer = (*item.pointer, item.variant)
        if item.choice is None:
            yield Finding(pointer, _no_variant(item.variant, known), key=True, about=(item.variant,))
        else:
            yield _no_choice(subject, pointer, item, known[item.variant])


def _no_variant(name: str, known: Mapping[str, cars.AnyVariant]) -> Message:
    if name in _IMPLIED:
        return _IMPLIED[name]
    if not known:
        return message("rules/undeclared-variant/no-variants", name=name)
    near = suggestion(name, list(known), message("nearness/variants"))
    return message("rules/undeclared-variant/no-variant", name=name, near=near)


def _no_choice(subject: Subject, pointer: Pointer, item: Undeclared, variant: cars.AnyVariant) -> Finding:
    listed = (*pointer, item.index)
    place = listed if listed in subject.source.values else pointer
    choice = item.choice or ""
    choices = message("rules/undeclared-variant/choices", variant=variant.id)
    near = suggestion(choice, list(variant.choices), choices)
    found = message("rules/undeclared-variant/no-choice", variant=variant.id, choice=choice, near=near)
    return Finding(place, found, about=(variant.id, choice))
