"""Every choice of a variant must be told apart at the car.

## What it finds

A choice without `tell`, and two choices of one variant with the same `tell`.

## Why it matters

The tech must choose before the first screw. Without a mark to look for the choice is a guess, and half the
page is then for another car.

## Bad

    variants:
      sound:
        ask: Is there a factory amplifier?
        choices:
          plain: {label: No amplifier}    # here
          amplified: {label: Amplifier behind the seat, tell: A wave badge on the door grilles}
      radio:
        ask: Which radio is in the dash?
        choices:
          disc: {label: Disc radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
          tape: {label: Tape radio, tell: "six  number keys."}    # here
      trim:
        ask: Which trim is it?
        choices:
          low: {label: Low trim}    # here
          high: {label: High trim}    # here

error: choice 'plain' of 'sound' has no 'tell' (say by what it is known with nothing taken apart)
error: choices 'disc' and 'tape' of 'radio' have the same 'tell' (say for each what the other does not show)
error: choice 'low' of 'trim' has no 'tell' (say by what it is known with nothing taken apart)
error: choice 'high' of 'trim' has no 'tell' (say by what it is known with nothing taken apart)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      bodies: [van, minibus]
      high_voltage: no
    variants:
      sound:
        ask: Is there a factory amplifier?
        choices:
          plain: {label: No amplifier, tell: No badge on the door grilles}
          amplified: {label: Amplifier behind the seat, tell: A badge on the door grilles}
      radio:
        ask: Which radio is in the dash?
        choices:
          disc: {label: Disc radio, tell: Six number keys}
          map: {label: Map radio, tell: Eight number keys}
      trim:
        ask: Which trim is it?
        choices:
          low: {label: Low trim, tell: No badge on the door grilles}
          high: {label: High trim, tell: A badge on the door grilles}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Variant
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every choice that cannot be told from the others."""
    for variant in subject.record.variants.values():
        if subject.intact(("variants", variant.id)):
            yield from _unmarked(variant)
        yield from _alike(variant)


def _unmarked(variant: Variant) -> Iterator[Finding]:
    for choice in variant.choices.values():
        if not _plain(choice.tell):
            found = message("rules/choice-without-mark/no-tell", choice=choice.id, variant=variant.id)
            yield Finding(("variants", variant.id, "choices", choice.id), found, key=True)


def _alike(variant: Variant) -> Iterator[Finding]:
    first: dict[str, str] = {}
    for choice in variant.choices.values():
        mark = _plain(choice.tell)
        other = first.setdefault(mark, choice.id)
        if mark and other != choice.id:
            place = ("variants", variant.id, "choices", choice.id, "tell")
            found = message("rules/choice-without-mark/same-tell", one=other, other=choice.id, variant=variant.id)
            yield Finding(place, found, about=(other,))


def _plain(text: str) -> str:
    """A mark without what does not tell marks apart: case, spaces, the full stop."""
    return " ".join(text.casefold().split()).rstrip(" .")
