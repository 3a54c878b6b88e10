"""From what a person asks for, jobs and variants by name, to targets and a car; what is misspelt gets its nearest name."""

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from undertrim.derive import cars
from undertrim.derive.procedure.planning import Target, targets
from undertrim.record.model import Job, Opening, VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.words import SaidError, message


class BadRequest(SaidError):  # noqa: N818 - it names what was asked
    """A job or variant that the record does not have; `said` names those it has."""


def wanted(
    record: VehicleRecord, jobs: Iterable[str], chosen_car: Mapping[str, str] = MappingProxyType({})
) -> tuple[Target, ...]:
    """The targets of jobs such as `dash`, `front-door` (every side) or `front-door@left`, in the record's order. Raises BadRequest.

    What is written once for several kinds of car goes by the id it is written under, for those of them that can be meant.
    """
    known, named = targets(record), record.jobs
    chosen: set[Target] = set()
    for job in jobs:
        found = [target for target in known if job in _names(named[target.job], target)]
        if not found:
            sides = [Target(named[one.job].written, one.side) for one in known if one.side]
            hint = suggestion(
                job,
                list(dict.fromkeys((*(one.written for one in named.values()), *map(str, sides)))),
                message("jobs/openings"),
            )
            raise BadRequest(message("jobs/no-opening", job=job, hint=hint))
        there = [target for target in found if named[target.job].when.holds(chosen_car)]
        chosen.update(there if any(job not in (str(target), target.job) for target in found) and there else found)
    return tuple(target for target in known if target in chosen)


def _names(job: Job, target: Target) -> tuple[str, ...]:
    written = Target(job.written, target.side)
    return str(target), target.job, str(written), written.job


def ids(record: VehicleRecord) -> list[str]:
    """The ids that the openings of a record are written under, which is how they are typed."""
    return list(dict.fromkeys(one.written for one in record.openings.values()))


def openings(record: VehicleRecord, name: str, chosen_car: Mapping[str, str] = MappingProxyType({})) -> list[Opening]:
    """The openings of an id: one, or one for each kind of car meant where it is written under that id; none where there is none."""
    found = record.openings.get(name)
    named = [one for one in record.openings.values() if one.is_named(name)]
    return [found] if found else [one for one in named if one.when.holds(chosen_car)] or named


def car(record: VehicleRecord, choices: Mapping[str, str]) -> dict[str, str]:
    """A car from `variant=choice` pairs; variants that nothing depends on may be named too. Raises BadRequest."""
    known = cars.variants(record)
    for name, choice in choices.items():
        if name not in known:
            hint = suggestion(name, list(known), message("jobs/variants"))
            raise BadRequest(message("jobs/no-variant", variant=name, hint=hint))
        if choice not in known[name].choices:
            hint = suggestion(choice, list(known[name].choices), message("jobs/choices"))
            raise BadRequest(message("jobs/no-choice", variant=name, choice=choice, hint=hint))
    asked = cars.asked(record)
    return {name: choice for name, choice in choices.items() if name in asked}


def open_cars(record: VehicleRecord, fixed: Mapping[str, str]) -> Sequence[dict[str, str]]:
    """Every car that the request covers: one if all variants that matter are chosen."""
    return cars.assignments(record, fixed)
