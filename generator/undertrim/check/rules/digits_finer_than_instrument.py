"""A measurement has no more digits than its instrument.

## What it finds

A value whose evidence says what it was measured with (`with: Tape 1 cm`), where no scale of that kind is as fine as
the digits typed, and the value is no multiple of its step either. Only one of several sources needs a scale that fine.

## Why it matters

Digits are read as a promise of how finely somebody looked. The fit reckons with the coarser of the two all the
same, so that its margins are wider than whoever typed the digits believes.

## Bad

    evidence:
      e8: {how: measured, on: 2026-03-02, by: rk, car: "2016, left-hand drive", with: Tape 1 cm}
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}    # here
        depth: {clear: 64.5 mm, datum: skin}    # here
        room_to_grille: 20 mm
        source: e8

warning: '146 mm' has finer digits than the '1 cm' that e8 was measured with (measure with a finer instrument, or leave off the digits that it cannot tell)
warning: '64.5 mm' has finer digits than the '1 cm' that e8 was measured with (measure with a finer instrument, or leave off the digits that it cannot tell)

## Good

    evidence:
      e8: {how: measured, on: 2026-03-02, by: rk, car: "2016, left-hand drive", with: "Calliper 0.05 mm, tape 1 cm"}
      e9: {how: measured, on: 2026-03-03, by: rk, car: "2016, left-hand drive", with: Steel rule 0.5 mm}
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146.35 mm}
        depth: {clear: 64.5 mm, datum: skin, source: e9}
        source: e8
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.sources import nearest_source
from undertrim.record.fields import Field
from undertrim.record.instruments import scales, too_fine
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.problem import Level
from undertrim.record.units import Quantity, UnitError, parse
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every value that none of its sources can have been read so finely from."""
    for item in subject.fields:
        value = _quantity(item)
        if value and (found := _coarse(subject.record, nearest_source(subject.source.data, item.pointer), value)):
            name, scale = found
            texts = {"value": value.text, "scale": scale.text, "evidence": name}
            yield Finding(item.pointer, message("rules/digits-finer-than-instrument/too-fine", **texts))


def _quantity(item: Field) -> Quantity | None:
    kind = item.node.schema.get("quantity", {}).get("kind")
    if not kind or not isinstance(item.value, str) or item.value in tuple(Blank):
        return None
    try:
        return parse(item.value, kind)
    except UnitError:
        return None


def _coarse(record: VehicleRecord, sources: tuple[str, ...], value: Quantity) -> tuple[str, Quantity] | None:
    """A source with its finest scale, where every source that has a scale of the kind is too coarse."""
    pieces = [(name, scales(record.evidence[name].with_)) for name in sources if name in record.evidence]
    fitting = [(name, steps) for name, steps in pieces if any(step.kind == value.kind for step in steps)]
    found = [(name, too_fine(value, steps)) for name, steps in fitting]
    coarse = [(name, scale) for name, scale in found if scale]
    return coarse[0] if coarse and len(coarse) == len(fitting) else None
