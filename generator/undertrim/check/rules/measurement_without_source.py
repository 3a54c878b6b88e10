"""A measurement or a safety fact names the evidence it rests on.

## What it finds

The dimensions of an opening, a crash pressure sensor that is or is not there, a restraint wait, any other wait and
a torque, with no `source` beside them or on a block around them. `unknown` needs none.

## Why it matters

A number that nobody owns cannot be asked about. When a second one turns up, nobody can tell which is right.

## Bad

    openings:
      front-door:    # here
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel, source: e1}
        room_to_grille: unknown
        factory_spacer: none
        crash_sensor: no
    parts:
      seat:
        name: Seat
        release: lift
        held_by:
          - {bolt: T50, count: 4, torque: 40 N.m}    # here
    restraint: {wait: 3 min}    # here

warning: 'torque' in 'seat' rests on no evidence (name in 'source' who found it out)
warning: 'hole', 'factory_spacer' and 'crash_sensor' in 'front-door' rest on no evidence (name in 'source' who found it out)
warning: 'wait' in 'restraint' rests on no evidence (name in 'source' who found it out)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}
        crash_sensor: no
        source: e1
    parts:
      seat:
        name: Seat
        release: lift
        takes: 5 min
        held_by:
          - {bolt: T50, count: 4, torque: 40 N.m, source: e1}
          - {bolt: T50, count: 2, torque: unknown}
          - {screw: T20, count: 2, length: 16 mm}
    restraint: {wait: unknown}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.fields import Field
from undertrim.record.problem import Level
from undertrim.record.source import Data, Pointer
from undertrim.words import all_of, message, quoted

LEVEL = Level.WARNING

_TIMES = ("takes", "refit_takes")
_UNKNOWN = "unknown"


def check(subject: Subject) -> Iterator[Finding]:
    """One finding for each block with measurements that nothing backs."""
    found: dict[Pointer, list[str]] = {}
    for item in subject.fields:
        if _is_measured(item) and not _is_backed(subject, item.pointer):
            block = _block(item.pointer)
            found.setdefault(block, []).append(str(item.pointer[len(block)]))
    for block, names in found.items():
        if subject.intact(block):
            fields = all_of(*map(quoted, dict.fromkeys(names)))
            owner = next(step for step in reversed(block[:2]) if isinstance(step, str))
            count = len(fields.values)
            said = message("rules/measurement-without-source/no-source", count=count, fields=fields, owner=owner)
            yield Finding(block, said, key=isinstance(block[-1], str))


def _is_measured(item: Field) -> bool:
    """Whether it is a known dimension of an opening, a sensor, a wait or a torque."""
    if item.value == _UNKNOWN or not isinstance(item.value, str):
        return False
    if item.pointer[0] == "openings" and item.pointer[-1] == "crash_sensor":
        return True
    kind = item.node.schema.get("quantity", {}).get("kind")
    if kind == "time":
        return item.pointer[-1] not in _TIMES
    return kind == "torque" or (kind is not None and item.pointer[0] == "openings")


def _is_backed(subject: Subject, pointer: Pointer) -> bool:
    """Whether the block it stands in, or one around that, names a source; that of what is taken is over there."""
    if subject.source.origin and subject.source.origin.is_taken(pointer):
        return True
    around: Data = subject.source.data
    for step in pointer[:-1]:
        around = around[step]
        if isinstance(around, dict) and "source" in around:
            return True
    return False


def _block(pointer: Pointer) -> Pointer:
    """The smallest block around a value that may name a source: a fastener, a wait, a part, an opening, the restraint system."""
    if "held_by" in pointer:
        return pointer[: pointer.index("held_by") + 2]
    return pointer[:-1] if pointer[-2] in ("restraint", "wait") else pointer[:2]
