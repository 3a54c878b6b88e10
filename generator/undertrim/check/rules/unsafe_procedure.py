"""Every procedure that follows from the record can be carried out without a wrong instant.

## What it finds

Every job by itself (an opening, or what is reached for), every two together and all at once are planned for every car and then replayed step by step
over the state of the car: battery, ignition, lids, what is off, what is undone, what has been counted. The first
wrong instant of each sort is reported, with a job and the cars it shows in. Where a job cannot be planned at all
`order-cycle`, `state-collision` or `unreachable-opening` says why.

## Why it matters

Each line of a record may be right and the work still end with the battery behind a lid that only electricity
opens. The dear mistakes are mistakes of order.

## Bad

    closures:
      boot: {latch: electric, key: no}
    preps:
      battery:    # here
        name: Battery off
        area: boot
        needs: {ignition: off}
        sets: {battery: off}
        how: Take the clamp off.
        restore: Put the clamp back.

error: 'Battery off' takes the battery off with the boot shut: its latch is electric and no key opens it, for dash (add 'needs: {boot: open}' to this preparation)

    preps:
      battery:    # here
        name: Battery off
        sets: {battery: off}
        how: Take the clamp off.
        restore: Put the clamp back.
    parts:
      lock-trim:
        name: Trim round the ignition lock
        release: pull
        needs: {ignition: on}
      radio:
        name: Factory radio
        release: slide
        after: [lock-trim]
        replaced: yes

error: 'Battery off' takes the battery off while the ignition is on, for dash (switch the ignition off first)

    preps:
      battery:
        name: Battery off
        needs: {ignition: off}
        sets: {battery: off}
        after: [battery-cover]
        how: Take the clamp off.
        restore: Put the clamp back.
    parts:
      battery-cover:
        name: Battery cover
        release: lift
        replaced: yes
        tethers:
          vent: {name: Vent hose, kind: hose}    # here

error: 'Plugs of Battery cover: Radio opening' deals with 'Vent hose', but 'Battery cover' makes no room there, for dash (leave 'replaced' out)

## Good

    closures:
      boot: {latch: electric, key: no}
    restraint: {wait: 2 min}
    preps:
      battery:
        name: Battery off
        area: boot
        needs: {ignition: off, boot: open}
        sets: {battery: off}
        how: Take the clamp off.
        restore: Put the clamp back.
    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}
      door-panel:
        name: Door panel
        each: [left, right]
        needs: {glass: up}
        release: lift
        tethers:
          handle: {name: Handle cable, kind: cable}
      radio:
        name: Factory radio
        release: slide
        after: [vent-trim]
        replaced: yes
    openings:
      door:
        name: Door speakers
        kind: speaker
        each: [left, right]
        behind: [door-panel]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}

A boot that a key opens:

    closures:
      boot: {latch: electric, key: yes}
    preps:
      battery:
        name: Battery off
        area: boot
        needs: {ignition: off}
        sets: {battery: off}
        how: Take the clamp off.
        restore: Put the clamp back.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from undertrim.check import needs
from undertrim.check.affected import which
from undertrim.check.collisions import lacking
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Target, targets
from undertrim.derive.procedure.states import USUAL
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import Fault, Ways, replay_in
from undertrim.record.model import Assignment
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Items, WayOut, message

LEVEL = Level.ERROR

_ELSEWHERE = ("unsealed", "wait-missing")
"""Faults that `peel-without-seal` and `wait-shorter-than-maker` find in the record itself."""

Job = tuple[str, ...]


@dataclass(slots=True)
class _Seen:
    """The first fault of its sort: the job it came up in first, and every car it comes up in."""

    fault: Fault
    job: Job
    cars: list[Assignment] = field(default_factory=list)


def check(subject: Subject) -> Iterator[Finding]:
    """The first fault of every sort at every place."""
    if not read_in_full(subject):
        return
    seen: dict[tuple[str, Pointer], _Seen] = {}
    for car in subject.cars:
        stateless = any(lacking(subject.planner.layout(car)))
        for job, fault in _faults(subject, car):
            if fault.kind in _ELSEWHERE or (stateless and fault.kind == "state"):
                continue
            place = _place(subject, job, fault)
            kept = seen.setdefault((fault.kind, place), _Seen(fault, job))
            if car not in kept.cars:
                kept.cars.append(car)
    for (_, place), item in seen.items():
        said = message(
            "rules/unsafe-procedure/in-a-job",
            fault=item.fault.said,
            way_out=WayOut(item.fault.said),
            job=Items(item.job, "plus"),
            where=which(item.cars, subject.cars),
        )
        yield Finding(place, said, key=isinstance(place[-1], str))


def _faults(subject: Subject, car: Assignment) -> Iterator[tuple[Job, Fault]]:
    """What goes wrong in one car; a procedure that several jobs share is replayed once."""
    known: set[tuple[int, ...]] = set()
    ways = Ways(subject.record, car)
    for job in _jobs(tuple(subject.record.jobs)):
        try:
            steps = _steps(subject, job, car)
        except TooTangled as error:
            said = message("replay/tangled", why=error.said(str))
            yield job, Fault("tangled", said, None, None, needs.home(subject.record.jobs[job[0]]))
            continue
        key = tuple(map(id, steps))
        if key not in known:
            known.add(key)
            yield from ((job, fault) for fault in replay_in(ways, steps))


def _jobs(names: Job) -> list[Job]:
    """Every opening and what is reached for by itself, every two of them, and all."""
    jobs = [*combinations(names, 1), *combinations(names, 2), names]
    return list(dict.fromkeys(jobs))


def _steps(subject: Subject, job: Job, car: Assignment) -> Sequence[Step]:
    """The procedure of a job at all its sides; none where it cannot be planned."""
    wanted: list[Target] = [target for target in targets(subject.record) if target.job in job]
    try:
        return subject.planner.plan(wanted, car).steps
    except Unreachable:
        return ()


def _place(subject: Subject, job: Job, fault: Fault) -> Pointer:
    """The place of a fault in the record; what a usual preparation did is laid to the job."""
    steps = [step for step in (fault.other, fault.step) if step and step.node]
    pointers = [fault.pointer, *(needs.home(step.node.thing) for step in steps if step.node)]
    own = (pointer for pointer in pointers if pointer and not any(str(key).startswith(USUAL) for key in pointer))
    return next(own, needs.home(subject.record.jobs[job[0]]))
