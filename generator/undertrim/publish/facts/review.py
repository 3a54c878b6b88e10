"""What the changes of a collection do for whoever works on the cars, as it is said: the riskiest first."""

from collections import Counter
from collections.abc import Iterator, Sequence

from undertrim.derive.fit.margins import amount
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.review import joints
from undertrim.derive.review.change import (
    Detail,
    FactChange,
    GearChange,
    Review,
    Short,
    Sort,
    StepChange,
    VehicleChange,
    VerdictChange,
    VisitChange,
    Weight,
)
from undertrim.derive.review.vehicle import seen
from undertrim.publish.facts import names
from undertrim.publish.facts.fit import verdict_words
from undertrim.publish.facts.shown_review import (
    FORMAT,
    Line,
    ShownGear,
    ShownProblem,
    ShownReview,
    ShownShort,
    ShownStamp,
    ShownVehicle,
    ShownVisit,
)
from undertrim.publish.facts.steps import VERBS
from undertrim.publish.facts.words import listed
from undertrim.record.model import Evidence, VehicleRecord
from undertrim.record.problem import Problem
from undertrim.words import ENGLISH, Items, Value, WayOut, message, say


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
    )


def vehicle(one: VehicleChange) -> ShownVehicle:
    """One vehicle."""
    # Long because it is one table: what is said of a vehicle, a line each.
    assert one.sides
    record = one.sides[1].record
    facts = [_fact(change) for change in one.facts]
    visits = [_visit(change, record) for change in one.visits]
    verdicts = [_verdict(change, record) for change in one.verdicts]
    heavy = [*facts, *verdicts, *(line for visit in visits for line in visit.steps)]
    look = [line for weight in (Weight.WEAKER, Weight.CARE) for line in heavy if line.weight == weight]
    return ShownVehicle(
        vehicle=one.address,
        title=one.title,
        was=one.was,
        weight=one.weight,
        look=_once(look),
        facts=facts,
        visits=visits,
        refused=one.refused,
        verdicts=verdicts,
        margins=[_margin(change.opening, change.count, change.least, change.most, record) for change in one.margins],
        joints=[
            Line(
                Weight.PLAIN,
                Sort.CHANGED,
                f"{change.opening}/{change.function}",
                joints.called(change),
                change.before,
                change.after,
                said=_with_cars(
                    message("review/joint", function=joints.called(change), change=_ends(change.before, change.after)),
                    names.kinds_of_car(record, change.cars),
                    change.leads,
                ),
            )
            for change in one.joints
        ],
        blockers=[
            Line(
                Weight.PLAIN,
                change.sort,
                change.weight,
                change.title,
                said=message(f"review/blocker-{change.sort}", title=change.title, text=change.text),
            )
            for change in one.blockers
        ],
        conflicts=[
            Line(
                change.weight,
                change.sort,
                "/".join(map(str, change.pointer)),
                change.name,
                change.before,
                change.after,
                said=message(f"review/conflict-{change.sort}", name=change.name, text=change.after or change.before),
            )
            for change in one.conflicts
        ],
        evidence=[
            Line(
                Weight.PLAIN,
                _sort(change),
                f"evidence/{change.what}",
                change.what,
                change.before,
                change.after,
                said=_ends(change.before, change.after),
            )
            for change in one.evidence
        ],
        stamp=ShownStamp(
            one.stamp.before, one.stamp.after, one.stamp.lost, _stamp(one.stamp.before, one.stamp.after, one.stamp.lost)
        )
        if one.stamp
        else None,
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


def _fact(change: FactChange) -> Line:
    about = "/".join(map(str, change.pointer))
    source = _source(change.said_before, change.said_after, same=change.same_source)
    if change.taken:
        source = message("review/source-taken", record=change.taken)
    said = _fact_words(change)
    if change.sort is not Sort.RENAMED:
        said = message("review/with-source", what=said, source=source)
    said = message("review/with-why", what=said, why=change.why) if change.why else said
    return Line(change.weight, change.sort, about, change.name, change.before, change.after, change.why, source, said)


def _fact_words(change: FactChange) -> Value:
    if change.thing:
        return message(f"review/thing-{change.sort}", name=change.name)
    if change.sort is Sort.CHANGED:
        return message("review/fact-changed", name=change.name, change=_ends(change.before, change.after))
    return message(
        f"review/fact-{change.sort}",
        name=change.name,
        before=change.before or message("facts/not-recorded"),
        after=change.after,
    )


def _source(before: Sequence[Evidence], after: Sequence[Evidence], *, same: bool) -> Value:
    """Who says so, and whether that is who said the other thing."""
    was, now = (
        Items(tuple(map(seen, some)), "comma") if some else message("review/nobody") for some in (before, after)
    )
    if not after:
        return message("review/source-none") if not before else message("review/source-was", before=was)
    return message("review/source-same", after=now) if same else message("review/source-new", before=was, after=now)


def _ends(before: Value, after: Value) -> Value:
    """`62 mm → 58 mm`; with one of them empty, what is new or gone."""
    if before == "":
        return message("review/new", after=after)
    return (
        message("review/gone", before=before) if after == "" else message("review/change", before=before, after=after)
    )


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
        steps=list(_steps(change.steps, head)),
        totals=[_detail(one) for one in change.totals],
    )


def _steps(changes: Sequence[StepChange], visit: Value) -> Iterator[Line]:
    """A line each; of many that are only done in another state of the car one for all."""
    states = Counter(ends for one in changes if (ends := _only_state(one)))
    told: set[object] = set()
    for change in changes:
        ends = _only_state(change)
        if not ends or states[ends] < _MANY:
            yield _step(change, visit)
        elif ends not in told:
            told.add(ends)
            detail = change.details[0]
            said = message("review/steps-state", count=states[ends], change=_ends(detail.before, detail.after))
            yield Line(
                change.weight, change.sort, change.id, _called(change), detail.before, detail.after, visit, said=said
            )


_MANY = 3


def _only_state(change: StepChange) -> tuple[str, str] | None:
    """The state of the car before and now, where a step differs in nothing else."""
    if [one.what for one in change.details] != ["state"]:
        return None
    return say(change.details[0].before, ENGLISH), say(change.details[0].after, ENGLISH)


def _step(change: StepChange, visit: Value) -> Line:
    title = _called(change)
    details = Items(tuple(_detail_words(one) for one in change.details), "semicolon") if change.details else ""
    after = (
        _called(StepChange("", Sort.CHANGED, None, change.follows)) if change.follows else message("review/the-start")
    )
    said = message(f"review/step-{change.sort}", step=title, follows=after, details=details)
    return Line(change.weight, change.sort, change.id, title, said=said, why=visit)


def _called(change: StepChange) -> Value:
    step = change.step
    verb = VERBS.get(step.kind, "")
    return message("review/step", verb=verb, title=step.title) if verb else step.title


def _detail(one: Detail) -> Line:
    label = message(f"review/what-{one.what}")
    return Line(one.weight, _sort(one), one.what, label, one.before, one.after, said=_detail_words(one))


def _detail_words(one: Detail) -> Value:
    return message("review/detail", what=message(f"review/what-{one.what}"), change=_ends(one.before, one.after))


def _sort(one: Detail) -> Sort:
    return Sort.ADDED if one.before == "" else Sort.GONE if one.after == "" else Sort.CHANGED


def _verdict(change: VerdictChange, record: VehicleRecord) -> Line:
    opening = record.openings[change.opening].name
    before, after = _fit(change.before), _fit(change.after)
    gear = message("review/gear-at", gear=change.name, opening=opening)
    said = message("review/verdict", gear=gear, change=_ends(before, after))
    cars = names.kinds_of_car(record, change.cars)
    sort = Sort.CHANGED if change.before and change.after else Sort.ADDED if change.after else Sort.GONE
    why = message("review/became-yes") if change.weight is Weight.CARE else ""
    said = message("review/with-why", what=said, why=why) if why else said
    return Line(
        change.weight, sort, f"{change.opening}/{change.gear}", gear, before, after, why, said=_with_cars(said, cars)
    )


def _fit(fit: Fit | None) -> Value:
    """A verdict with the check that decides it, and by how much."""
    if fit is None:
        return ""
    margin = next((check for check in fit.checks if check.margin is not None and check.unit == "mm"), None)
    decides = fit.checks[0] if fit.checks else None
    if decides and decides.verdict != "fits":
        return message("review/fit", verdict=verdict_words(fit), why=decides.words)
    if margin is None:
        return verdict_words(fit)
    room = message("fit/check", title=margin.title, found=amount(margin.margin or 0, margin.uncertainty or 0))
    return message("review/fit", verdict=verdict_words(fit), why=room)


def _margin(opening: str, count: int, least: float, most: float, record: VehicleRecord) -> Line:
    name = record.openings[opening].name
    room = [message("review/mm", number=round(one, 1)) for one in (least, most)]
    between = room[0] if room[0] == room[1] else message("review/between", least=room[0], most=room[1])
    return Line(
        Weight.PLAIN,
        Sort.CHANGED,
        opening,
        name,
        said=message("review/margin", count=count, opening=name, room=between),
    )


def _with_cars(said: Value, cars: Value, leads: Sequence[str] = ()) -> Value:
    more = listed(
        cars, message("review/with-leads", leads=Items(tuple(leads), "comma")) if leads else "", joined="semicolon"
    )
    return message("review/only-in", what=said, cars=more) if more else said


def _stamp(before: str, after: str, lost: Sequence[Value]) -> Value:
    said = message("review/stamp", before=message(f"review/{before}"), after=message(f"review/{after}"))
    return message("review/stamp-lost", stamp=said, facts=Items(tuple(lost), "semicolon")) if lost else said


def _problem(one: Problem) -> ShownProblem:
    return ShownProblem(one.rule, str(one.level), one.said, WayOut(one.said))


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
    facts = [_bare(change) for change in one.facts]
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


def _bare(change: FactChange) -> Line:
    """A fact of gear, whose records name no source."""
    return Line(
        Weight.PLAIN,
        change.sort,
        "/".join(map(str, change.pointer)),
        change.name,
        change.before,
        change.after,
        said=_fact_words(change),
    )
