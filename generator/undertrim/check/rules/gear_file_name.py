"""A gear record stands where its kind, maker and model say.

## What it finds

A file below `records/gear` whose folder or name is not the one that follows from `kind`, `maker` and `model`.

## Why it matters

The name is the record's id. Two names for one thing end as two records, and each knows half of it.

## Bad

    # file: speakers/sandmartin-bank65.yaml
    gear:    # here
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 68 mm
      impedance: 4 ohm
    # file: spacers/pellworth-knot-p.yaml
    gear:    # here
      kind: harness
      maker: Pellworth
      model: Knot P
      suits: [{vehicle: kelbrook/finch-2014-2018, opening: dash}]
      plugs: {power: {8: {function: ground}}}

error: this record belongs in 'harnesses/pellworth-knot-p.yaml' (rename the file, or mend 'kind', 'maker' or 'model')
error: this record belongs in 'speakers/sandmartin-bank-65.yaml' (rename the file, or mend 'kind', 'maker' or 'model')

## Good

    # file: speakers/sandmartin-bank-65.yaml
    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 68 mm
      impedance: 4 ohm
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, GearSubject
from undertrim.record import identity
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The file's path, if it is not the one that follows from the record."""
    facts = subject.record.gear
    wanted = identity.gear_path(facts)
    if subject.entry.path.parts[-3:] != ("gear", *wanted.parts):
        yield Finding(("gear",), message("rules/gear-file-name/belongs-in", wanted=str(wanted)), key=True)
