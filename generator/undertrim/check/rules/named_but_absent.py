"""A part, preparation, opening, tether or piece of evidence that is named must exist.

## What it finds

An id in `after`, `after_any`, `refit_after`, `under`, `behind`, `trims`, `goes_to`, `at` or `source` that nothing in the record has,
the `run` of an amplifier place that no cable run has, and a pin of a button ladder that no plug has.

## Why it matters

A prerequisite that points nowhere is a prerequisite that is not there: the tech levers at a trim that is still held.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{clip: push, count: 4}]
        after: [vent-trimm]    # here
      vent-trim:
        name: Vent trim
        release: pull
        held_by: [{clip: push, count: 6}]

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          7: {function: wheel-buttons}
    ladders:
      wheel:
        pin: main/6    # here
        tolerance: 5 %
        buttons: {mute: 330 ohm}

    runs:
      to-boot:
        name: Battery to the boot
        from: Battery
        to: Boot floor
        length: 4.8 m
        trims: [sill-trim]    # here
    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [vent-trim]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boots    # here

error: no part or preparation 'vent-trimm' (did you mean 'vent-trim'?)
error: no cable run 'to-boots' (did you mean 'to-boot'?)
error: no pin 'main/6' (did you mean 'main/7'?)
error: no part 'sill-trim' (part ids here: radio, bezel, vent-trim)

## Good

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{clip: push, count: 4}]
        after: [vent-trim]
      vent-trim:
        name: Vent trim
        release: pull
        held_by: [{clip: push, count: 6}]
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from undertrim.check import sources
from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record.model import Ref, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, message

LEVEL = Level.ERROR


@dataclass(frozen=True, slots=True)
class What:
    """A kind of thing that is named by its id: what a message calls one, what its ids are called where they are listed, and the sections that hold it."""

    called: Message
    ids: Message
    sections: tuple[str, ...]


_REMOVABLE = What(
    message("rules/named-but-absent/part-or-preparation"),
    message("rules/named-but-absent/part-or-preparation-ids"),
    ("parts", "preps"),
)
_PART = What(message("rules/named-but-absent/part"), message("rules/named-but-absent/part-ids"), ("parts",))
_OPENING = What(message("rules/named-but-absent/opening"), message("rules/named-but-absent/opening-ids"), ("openings",))
_TETHER = What(message("rules/named-but-absent/tether"), message("rules/named-but-absent/tether-ids"), ("parts",))
_PIN = What(message("rules/named-but-absent/pin"), message("rules/named-but-absent/pin-ids"), ("connectors",))
_RUN = What(message("rules/named-but-absent/run"), message("rules/named-but-absent/run-ids"), ("runs",))
_EVIDENCE = What(message("rules/named-but-absent/evidence"), message("nearness/evidence"), ("evidence",))


def check(subject: Subject) -> Iterator[Finding]:
    """Every id that is named and is nowhere."""
    record = subject.record
    removable = [*record.parts, *record.preps]
    for pointer, name in _prerequisites(record):
        yield from _absent(pointer, name, removable, _REMOVABLE)
    for pointer, name in _parts_named(record):
        yield from _absent(pointer, name, list(record.parts), _PART)
    for part in record.parts.values():
        if part.goes_to:
            yield from _absent(("parts", part.id, "goes_to"), part.goes_to, list(record.openings), _OPENING)
    for connector in record.connectors.values():
        if connector.at:
            yield from _absent(("connectors", connector.id, "at"), connector.at, _tethers(record), _TETHER)
    for ladder in record.ladders.values():
        for field, name in (("pin", ladder.pin), ("return", ladder.return_)):
            if name != "ground":
                yield from _absent(("ladders", ladder.id, field), name, _pins(record), _PIN)
    for bay in record.openings_of(AmplifierOpening):
        if bay.run:
            yield from _absent(("openings", bay.id, "run"), bay.run, list(record.runs), _RUN)
    yield from _evidence(subject)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """Every piece of evidence that a gear record names and does not have."""
    yield from _evidence(subject)


def _evidence(subject: Subject | GearSubject) -> Iterator[Finding]:
    for pointer, name in sources.named(subject.fields):
        yield from _absent(pointer, name, list(subject.record.evidence), _EVIDENCE)


def _absent(pointer: Pointer, name: str, known: Collection[str], what: What) -> Iterator[Finding]:
    if name in known:
        return
    if known:
        near = suggestion(name, list(known), what.ids)
        found = message("rules/named-but-absent/none-near", what=what.called, name=name, near=near)
    else:
        found = message("rules/named-but-absent/none-yet", what=what.called, name=name)
    yield Finding(pointer, found, about=(*name.split("/"), *what.sections))


def _prerequisites(record: VehicleRecord) -> Iterator[tuple[Pointer, str]]:
    for section, things in (("parts", record.parts), ("preps", record.preps)):
        for thing in things.values():
            yield from _refs((section, thing.id, "after"), thing.after)
    for part in record.parts.values():
        for index, choice in enumerate(part.after_any):
            for route, refs in choice.items():
                yield from _refs(("parts", part.id, "after_any", index, route), refs)


def _refs(pointer: Pointer, refs: tuple[Ref, ...]) -> Iterator[tuple[Pointer, str]]:
    for index, ref in enumerate(refs):
        yield (*pointer, index), ref.part


def _parts_named(record: VehicleRecord) -> Iterator[tuple[Pointer, str]]:
    for part in record.parts.values():
        yield from _refs(("parts", part.id, "refit_after"), part.refit_after)
    for opening in record.openings.values():
        for index, name in enumerate(opening.behind):
            yield ("openings", opening.id, "behind", index), name
    for section, things in (("parts", record.parts), ("preps", record.preps)):
        for thing in things.values():
            for index, fastener in enumerate(thing.held_by):
                if fastener.under:
                    yield (section, thing.id, "held_by", index, "under"), fastener.under
    for run in record.runs.values():
        for index, name in enumerate(run.trims):
            yield ("runs", run.id, "trims", index), name


def _pins(record: VehicleRecord) -> list[str]:
    return [f"{plug.id}/{pin}" for plug in record.connectors.values() for pin in plug.pins]


def _tethers(record: VehicleRecord) -> list[str]:
    return [f"{part.id}/{tether}" for part in record.parts.values() for tether in part.tethers]
