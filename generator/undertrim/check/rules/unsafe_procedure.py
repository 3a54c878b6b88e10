"""Every procedure that follows from the record can be carried out without a wrong instant.

## What it finds

Every job by itself (an opening, or what is reached for), every two together and all at once are planned for every car and then replayed step by step
over the state of the car: battery, ignition, lids, what is off, what is undone, what has been counted. Two together are left out where
both by themselves and all at once are safe and nothing can be different for two; and what is the same in several cars is replayed once. The first
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

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from undertrim.check.affected import which
from undertrim.check.collisions import lacking
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.mixing import apart
from undertrim.derive.procedure.node import home
from undertrim.derive.procedure.states import USUAL
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import Fault, Replays
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
    replays = Replays(subject.record)
    for car in subject.cars:
        for job, fault in _faults(subject, car, replays):
            if fault.kind in _ELSEWHERE or (fault.kind == "state" and any(lacking(subject.planner.layout(car)))):
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


def _faults(subject: Subject, car: Assignment, replays: Replays) -> Iterator[tuple[Job, Fault]]:
    """What goes wrong in one car; a procedure that several jobs share counts once."""
    names = tuple(subject.record.jobs)
    outcomes = {job: _outcome(subject, job, car, replays) for job in (*combinations(names, 1), names)}
    known: set[tuple[int, ...]] = set()
    sure = _sure(subject, car, outcomes, names)
    for job in dict.fromkeys((*combinations(names, 1), *combinations(names, 2), names)):
        if job not in outcomes and sure.issuperset(job):
            continue
        outcome = outcomes.get(job) or _outcome(subject, job, car, replays)
        key = tuple(map(id, outcome.steps))
        if not outcome.planned or key not in known:
            known.add(key)
            yield from ((job, fault) for fault in outcome.faults)


@dataclass(frozen=True, slots=True)
class _Outcome:
    """What a job comes to in one car; it has no steps where it cannot be planned."""

    planned: bool
    steps: tuple[Step, ...] = ()
    faults: Sequence[Fault] = ()


def _outcome(subject: Subject, job: Job, car: Assignment, replays: Replays) -> _Outcome:
    """A job at all its sides, planned and replayed."""
    try:
        steps = subject.planner.plan([target for target in subject.targets if target.job in job], car).steps
    except Unreachable:
        return _Outcome(planned=False)
    except TooTangled as error:
        said = message("replay/tangled", why=error.said(str))
        return _Outcome(planned=False, faults=[Fault("tangled", said, None, None, home(subject.record.jobs[job[0]]))])
    return _Outcome(planned=True, steps=steps, faults=replays.of(car, steps))


def _sure(subject: Subject, car: Assignment, outcomes: Mapping[Job, _Outcome], names: Job) -> set[str]:
    """The jobs of which any two together are safe, since each of them is by itself and all are at once.

    What two of them do together lies between: each step is among those of one of them, in the order that it has among those of all, and
    `apart` tells that no state differs. What must have been done before a step was done in the job by itself, then here too; and what
    must not have been done was not done in all of them, then not here either.
    """
    if any(not outcome.planned or outcome.faults for outcome in outcomes.values()):
        return set()
    place = {step.id: number for number, step in enumerate(outcomes[names].steps)}
    free = apart(subject.planner, car)
    layout = subject.planner.layout(car)
    mixed = {target.job for target in subject.targets if target.node in layout.nodes and target.node not in free}
    ranks = {name: [place.get(step.id, -1) for step in outcomes[name,].steps] for name in names}
    return {
        name for name in names if name not in mixed and -1 not in ranks[name] and ranks[name] == sorted(ranks[name])
    }


def _place(subject: Subject, job: Job, fault: Fault) -> Pointer:
    """The place of a fault in the record; what a usual preparation did is laid to the job."""
    steps = [step for step in (fault.other, fault.step) if step and step.node]
    pointers = [fault.pointer, *(home(step.node.thing) for step in steps if step.node)]
    own = (pointer for pointer in pointers if pointer and not any(str(key).startswith(USUAL) for key in pointer))
    return next(own, home(subject.record.jobs[job[0]]))
