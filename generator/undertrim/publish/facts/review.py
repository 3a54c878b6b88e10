"""What the changes of a collection do for whoever works on the cars, as it is said: the riskiest first."""

from collections.abc import Sequence

from undertrim.derive.review.change import VisitChange, Weight
from undertrim.derive.review.outcome import GearChange, Review, Short, VehicleChange
from undertrim.publish.facts import names, review_lines, review_steps
from undertrim.publish.facts.shown_review import (
    FORMAT,
    Line,
    PlacedProblem,
    ReviewedVehicle,
    ShownGear,
    ShownProblem,
    ShownReview,
    ShownShort,
    ShownStamp,
    ShownVisit,
)
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Problem
from undertrim.words import Items, Value, WayOut, message


def review(found: Review) -> ShownReview:
    """The whole, with what to look at first in front of it."""
    vehicles = [vehicle(one) for one in found.vehicles]
    return ShownReview(
        format=FORMAT,
        base=found.base,
        weaker=found.weaker,
        care=sum(line.weight == Weight.CARE for one in vehicles for line in one.look),
        vehicles=vehicles,
        shorts=[_short(one) for one in found.shorts],
        gear=[_gear(one) for one in found.gear],
        found=list(map(_placed, found.found)),
        mended=list(map(_placed, found.mended)),
    )


def vehicle(one: VehicleChange) -> ReviewedVehicle:
    """One vehicle."""
    # Long because it is one table: what is said of a vehicle, a line each.
    assert one.sides
    record = one.sides[1].record
    facts = [review_lines.fact(change) for change in one.facts]
    visits = [_visit(change, record) for change in one.visits]
    verdicts = [review_lines.verdict(change, record) for change in one.verdicts]
    heavy = [*facts, *verdicts, *(line for visit in visits for line in visit.steps)]
    look = [line for weight in (Weight.WEAKER, Weight.CARE) for line in heavy if line.weight == weight]
    return ReviewedVehicle(
        vehicle=one.address,
        title=one.title,
        was=one.was,
        weight=one.weight,
        look=_once(look),
        facts=facts,
        visits=visits,
        refused=one.refused,
        verdicts=verdicts,
        margins=[review_lines.margin(change, record) for change in one.margins],
        joints=[review_lines.joint(change, record) for change in one.joints],
        blockers=list(map(review_lines.blocker, one.blockers)),
        conflicts=list(map(review_lines.conflict, one.conflicts)),
        evidence=list(map(review_lines.evidence, one.evidence)),
        stamp=ShownStamp(
            one.stamp.before, one.stamp.after, one.stamp.lost, _stamp(one.stamp.before, one.stamp.after, one.stamp.lost)
        )
        if one.stamp
        else None,
        photos=one.photos,
        found=list(map(_problem, one.found)),
        mended=list(map(_problem, one.mended)),
    )


def _once(lines: Sequence[Line]) -> list[Line]:
    """The same line of several visits once."""
    found: list[Line] = []
    for line in lines:
        if all((line.about, line.said) != (other.about, other.said) for other in found):
            found.append(line)
    return found


def _visit(change: VisitChange, record: VehicleRecord) -> ShownVisit:
    cars = names.kinds_of_car(record, change.cars)
    jobs = Items(tuple(dict.fromkeys(record.jobs[job].name for job in change.jobs)), "comma")
    head = message("review/visit-cars", jobs=jobs, cars=cars) if cars else jobs
    return ShownVisit(
        jobs=list(change.jobs),
        cars=[dict(car) for car in change.cars],
        title=head,
        more_steps=change.more,
        more_minutes=change.minutes,
        steps=list(review_steps.steps(change.steps, head)),
        totals=[review_steps.detail(one) for one in change.totals],
    )


def _stamp(before: str, after: str, lost: Sequence[Value]) -> Value:
    said = message("review/change", before=message(f"review/stands-{before}"), after=message(f"review/stands-{after}"))
    return message("review/stamp-lost", stamp=said, facts=Items(tuple(lost), "semicolon")) if lost else said


def _problem(one: Problem) -> ShownProblem:
    return ShownProblem(one.rule, str(one.level), one.said, WayOut(one.said))


def _placed(one: Problem) -> PlacedProblem:
    return PlacedProblem(one.file.as_posix(), one.rule, str(one.level), one.said, WayOut(one.said))


def _short(one: Short) -> ShownShort:
    called = message("review/called", title=one.title, address=one.address) if one.title else one.address
    said: Value = message("review/short-broken", vehicle=called, why=one.why)
    if not one.why:
        jobs = Items(one.jobs, "comma") if one.jobs else message("review/no-jobs")
        said = message(f"review/short-{one.sort}", vehicle=called, jobs=jobs)
    return ShownShort(one.address, one.title, one.sort, list(one.jobs), said, list(map(_problem, one.found)))


def _gear(one: GearChange) -> ShownGear:
    called = message("review/called", title=one.name, address=one.id)
    said = message(f"review/gear-{one.sort}", gear=called, kind=message(f"gear-kinds/{one.kind}"))
    facts = [review_lines.of_gear(change, one.name) for change in one.facts]
    return ShownGear(
        one.id,
        one.name,
        one.kind,
        one.sort,
        one.was,
        said,
        facts,
        list(map(_problem, one.found)),
        list(map(_problem, one.mended)),
    )
