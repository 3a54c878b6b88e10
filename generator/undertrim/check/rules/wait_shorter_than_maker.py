"""The wait for the restraint system is the maker's, and it is said.

## What it finds

A preparation that takes the battery off and waits shorter than `restraint.wait`; `wait: none` in a car that may have a
restraint system; restraint plugs or airbags in a record that says none is fitted; and such plugs or airbags in a
record without a `restraint` block.

## Why it matters

The restraint unit keeps enough charge to fire a bag after the battery is off. Makers' times differ from seconds to
many minutes, so there is no usual one.

## Bad

    restraint: {wait: 2 min}
    preps:
      battery:
        name: Battery off
        needs: {ignition: off}
        sets: {battery: off}
        wait: {time: 60 s, why: Restraint reserve power}    # here
        how: Take the clamp off.
        restore: Put the clamp back.

error: the wait of '60 s' is shorter than the maker's '2 min' (leave the preparation's 'wait' out: the maker's is used by itself)

    restraint: {wait: none}    # here

error: 'none' is a wait only for a car without a restraint system (write the maker's wait or 'unknown', or 'fitted: no')

    restraint: {fitted: no, wait: none}    # here
    areas:
      dash: {restraints: [Driver airbag in the steering wheel]}

error: no restraint system is fitted, but 'dash' has some under 'restraints' (mend one of the two)

    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}    # here

error: there is restraint wiring, and nothing says how long to wait (add 'restraint: {wait: ...}' with the maker's wait, or 'unknown')

## Good

    restraint: {wait: 2 min}
    preps:
      battery:
        name: Battery off
        needs: {ignition: off}
        sets: {battery: off}
        wait: {time: 120 s, why: Restraint reserve power}
        how: Take the clamp off.
        restore: Put the clamp back.
      seat:
        name: Seat forward
        sets: {seat: forward}
        wait: {time: 5 s, why: The motor cools}
        how: Press the switch.
    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}

Without a restraint system, or not known:

    # file: brindleway/early-2014-2018.yaml
    restraint: {fitted: no, wait: none}

    # file: brindleway/late-2018-2020.yaml
    restraint: {wait: unknown}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Blank, Part, Restraint, Tether, VehicleRecord
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity
from undertrim.words import Message, message, word

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every wait that is shorter than the maker's, missing, or said not to be needed."""
    record = subject.record
    facts = record.restraint
    if facts is None:
        yield from _unsaid(subject)
        return
    if not subject.intact(("restraint",)):
        return
    yield from _shorter(record, facts)
    if facts.fitted != "no" and facts.wait is Blank.NONE:
        yield Finding(("restraint", "wait"), message("rules/wait-shorter-than-maker/none"))
    if facts.fitted == "no":
        for place, contradicting in _met(record):
            yield Finding(("restraint", "fitted"), contradicting, about=tuple(map(str, place)))


def _shorter(record: VehicleRecord, facts: Restraint) -> Iterator[Finding]:
    for prep in record.preps.values():
        own = prep.wait.time if prep.wait and prep.sets.get("battery") == "off" else None
        if isinstance(own, Quantity) and isinstance(facts.wait, Quantity) and own.value < facts.wait.value:
            shorter = message("rules/wait-shorter-than-maker/shorter", own=own.text, maker=facts.wait.text)
            yield Finding(("preps", prep.id, "wait", "time"), shorter)


def _unsaid(subject: Subject) -> Iterator[Finding]:
    for pointer, _ in _met(subject.record):
        if subject.intact(("restraint",)):
            yield Finding(pointer, message("rules/wait-shorter-than-maker/unsaid"), key=True)
        return


def _met(record: VehicleRecord) -> Iterator[tuple[Pointer, Message]]:
    """Where a record says that there is a restraint system, and what is said where none is fitted."""
    for part in record.parts.values():
        for tether in part.tethers.values():
            if tether.circuit == "restraint":
                yield ("parts", part.id, "tethers", tether.id), _met_tether(part, tether)
    for area in record.areas.values():
        if area.restraint_parts:
            area_met = message("rules/wait-shorter-than-maker/area-without-system", area=area.id)
            yield ("areas", area.id, "restraints"), area_met


def _met_tether(part: Part, tether: Tether) -> Message:
    kind = word("tethers", "kind", tether.kind, "noun")
    return message("rules/wait-shorter-than-maker/tether-without-system", tether=tether.id, part=part.id, kind=kind)
