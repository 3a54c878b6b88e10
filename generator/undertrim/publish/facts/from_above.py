"""Where in the car things are, for a sketch of it from above: what is worked at, the battery, what may fire, what carries high voltage."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from undertrim.derive import mirroring
from undertrim.derive.procedure import planning
from undertrim.derive.procedure.planning import Target
from undertrim.publish.facts import words
from undertrim.record.model import Opening, Part, Reached, VehicleRecord, When


@dataclass(frozen=True, slots=True)
class DrawnChoice:
    """A body, or the side of the steering wheel, with the cars that have it."""

    name: str
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class Seated:
    """Where something is: an area and a side (empty where it has none, or nobody recorded it), with the cars in which it is there."""

    area: str
    side: str
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class SeatedJob:
    """Where a target is; nowhere if no area is recorded."""

    target: str
    seats: Sequence[Seated]


@dataclass(frozen=True, slots=True)
class FromAbove:
    """What a sketch of the car from above shows. `fires` are areas with airbags, belt parts or their sensors, `unlooked` those that are worked in of which nobody recorded whether they have any."""

    bodies: Sequence[DrawnChoice]
    doors: Literal["", "four"]
    wheels: Sequence[DrawnChoice]
    jobs: Sequence[SeatedJob]
    batteries: Sequence[Seated]
    battery_known: bool
    fires: Sequence[str]
    unlooked: Sequence[str]
    high_voltage: Sequence[str]


def from_above(record: VehicleRecord) -> FromAbove:
    """All that the sketch shows of a record."""
    batteries = [prep for prep in record.preps.values() if prep.sets.get("battery") == "off"]
    fires = [name for name, area in record.areas.items() if area.restraint_parts]
    looked = {name for name, area in record.areas.items() if area.restraints and area.restraints_blank != "unknown"}
    worked = dict.fromkeys(thing.area for thing in (*record.parts.values(), *record.openings.values()) if thing.area)
    return FromAbove(
        bodies=_choices("body", record.vehicle.bodies),
        doors="four" if "rear-door" in worked else "",
        wheels=_choices("drive-side", record.vehicle.drive_side),
        jobs=[SeatedJob(str(target), list(_seats(record, target))) for target in planning.targets(record)],
        batteries=[seat for prep in batteries for seat in seated(record, prep)],
        battery_known=bool(batteries) and all(prep.area for prep in batteries),
        fires=fires,
        unlooked=[name for name in worked if name not in looked],
        high_voltage=[name for name, area in record.areas.items() if area.high_voltage in ("near", "inside")],
    )


def _choices(variant: str, choices: Sequence[str]) -> list[DrawnChoice]:
    several = len(choices) > 1
    return [DrawnChoice(one, words.clauses(_only(variant, one) if several else When(()))) for one in choices]


def _only(variant: str, choice: str) -> When:
    return When(((variant, (choice,)),))


def _seats(record: VehicleRecord, target: Target) -> Iterator[Seated]:
    """Where a job is: what is reached for is where the first part is that must come off for it."""
    job = record.jobs[target.job]
    if isinstance(job, Reached):
        behind = (record.parts[ref.part] for ref in job.behind if ref.part in record.parts)
        yield from (seat for part in list(behind)[:1] for seat in seated(record, part, target.side))
    else:
        yield from seated(record, job, target.side)


def seated(record: VehicleRecord, thing: mirroring.Thing, side: str = "") -> Iterator[Seated]:
    """Where a thing is, `side` being the one of its sides that is meant. What changes sides with the wheel is there once for each drive side."""
    if not thing.area:
        return
    always, own = words.clauses(_when(thing)), mirroring.own_side(thing)
    if side or not own:
        yield Seated(thing.area, side, always)
        return
    there = {drive: mirroring.side_on(record, thing, drive) or "" for drive in record.vehicle.drive_side}
    if len(set(there.values())) == 1:
        yield Seated(thing.area, next(iter(there.values())), always)
        return
    for drive, found in there.items():
        yield Seated(thing.area, found, {**always, **words.clauses(_only("drive-side", drive))})


def _when(thing: mirroring.Thing) -> When:
    return thing.when if isinstance(thing, Opening | Part) else When(())
