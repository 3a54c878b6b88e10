"""A fact whose neighbours name their evidence names its own.

## What it finds

A part, preparation, opening, plug, function, duty or other block without `source`, where at least two blocks beside it have
one and they are more than those that have none. A block in which everything is `unknown` needs none, and none that is
taken whole from another record: nobody saw it on this car.

## Why it matters

Where most facts have a source, one without it has lost it in an edit or was guessed. A reader cannot tell which.

## Bad

    parts:
      vent-trim:
        name: Vent trim
        release: pull
        source: e1
      bezel:    # here
        name: Radio bezel
        release: pull
      radio:
        name: Factory radio
        release: slide
        source: e1

warning: 'bezel' rests on no evidence, and its neighbours do (name in 'source' who found it out)

## Good

    parts:
      vent-trim:
        name: Vent trim
        release: pull
        source: e1
      bezel:
        name: Radio bezel
        release: pull
        source: e1
      radio:
        name: Factory radio
        release: slide
        source: e1
    functions:
      parking-brake: {by: wire, behaves: closes-to-ground, source: e1}
      speed: {by: absent, source: e1}
      mute: {by: unknown, note: Not looked for.}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence.fingerprint import BY_ID
from undertrim.record.fields import Field
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_LEAST = 2
"""So many neighbours must have a source before its lack says anything."""

_UNKNOWN = "unknown"


def check(subject: Subject) -> Iterator[Finding]:
    """Every block that lacks what most of its section has."""
    known: dict[str | int, list[Field]] = {section: [] for section in BY_ID}
    for item in subject.fields:
        if len(item.pointer) == 2 and item.pointer[0] in known:
            known[item.pointer[0]].append(item)
    for blocks in known.values():
        bare = [
            item for item in blocks if _may_have(item) and not _open(subject, item) and not _is_taken(subject, item)
        ]
        backed = sum(isinstance(item.value, dict) and "source" in item.value for item in blocks)
        if backed >= _LEAST and backed > len(bare):
            for item in bare:
                found = message("rules/source-left-out/no-evidence", block=str(item.pointer[1]))
                yield Finding(item.pointer, found, key=True)


def _is_taken(subject: Subject, item: Field) -> bool:
    """Whether it is taken whole from another record: what nobody saw on this car has no source here to lose."""
    origin = subject.source.origin
    return bool(origin and origin.is_taken(item.pointer))


def _may_have(item: Field) -> bool:
    return (
        "source" in item.node.schema.get("properties", ())
        and isinstance(item.value, dict)
        and "source" not in item.value
    )


def _open(subject: Subject, item: Field) -> bool:
    """Whether it is refused in part, or says nothing but that everything is unknown."""
    inside = [field for field in subject.fields if field.pointer[:2] == item.pointer and isinstance(field.value, str)]
    words = [field.value for field in inside if "maxLength" not in field.node.schema and "when" not in field.pointer]
    return not subject.intact(item.pointer) or (bool(words) and set(words) == {_UNKNOWN})
