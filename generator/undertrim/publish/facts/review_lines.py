"""One change as a line: with what was, what is, who says so, and all of it as a sentence."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from undertrim.derive.fact_names import FactName
from undertrim.derive.fit.margins import amount
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.review import joints
from undertrim.derive.review.change import (
    BlockerChange,
    Detail,
    FactChange,
    JointChange,
    MarginChange,
    Sort,
    StepChange,
    VerdictChange,
    Weight,
)
from undertrim.derive.review.vehicle import seen
from undertrim.publish.facts import names
from undertrim.publish.facts.fit import verdict_words
from undertrim.publish.facts.shown_review import Line
from undertrim.publish.facts.steps import VERBS
from undertrim.publish.facts.words import listed
from undertrim.record.model import Evidence, VehicleRecord
from undertrim.words import ENGLISH, Items, Value, message, say

_MANY = 3
"""So many steps that are only done in another state of the car are told in one line."""


def fact(change: FactChange) -> Line:
    """A fact with who says so."""
    about = "/".join(map(str, change.pointer))
    source = _source(change.said_before, change.said_after, same=change.same_source)
    if change.taken:
        source = message("review/source-taken", record=change.taken)
    said = _fact_words(change)
    if change.sort is not Sort.RENAMED:
        said = message("review/with-source", what=said, source=source)
    said = message("review/with-why", what=said, why=change.why) if change.why else said
    return Line(
        change.weight, change.sort, about, change.name, change.before, change.after, change.why, source, said=said
    )


def _fact_words(change: FactChange) -> Value:
    if change.thing:
        return message(f"review/thing-{change.sort}", name=change.name)
    if change.sort is Sort.CHANGED:
        return message("review/fact-changed", name=change.name, change=ends(change.before, change.after))
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


def ends(before: Value, after: Value) -> Value:
    """`62 mm → 58 mm`; with one of them empty, what is new or gone."""
    if before == "":
        return message("review/new", after=after)
    return (
        message("review/gone", before=before) if after == "" else message("review/change", before=before, after=after)
    )


def steps(changes: Sequence[StepChange], visit: Value) -> Iterator[Line]:
    """A line each; of many that are only done in another state of the car one for all."""
    states = Counter(state for one in changes if (state := _only_state(one)))
    told: set[object] = set()
    for change in changes:
        state = _only_state(change)
        if not state or states[state] < _MANY:
            yield _step(change, visit)
        elif state not in told:
            told.add(state)
            detail = change.details[0]
            said = message("review/steps-state", count=states[state], change=ends(detail.before, detail.after))
            yield Line(
                change.weight,
                change.sort,
                change.id,
                _called(change),
                detail.before,
                detail.after,
                where=visit,
                said=said,
            )


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
    told = list(map(detail, change.details))
    return Line(change.weight, change.sort, change.id, title, where=visit, said=said, details=told)


def _called(change: StepChange) -> Value:
    step = change.step
    verb = VERBS.get(step.kind, "")
    return message("review/step", verb=verb, title=step.title) if verb else step.title


def detail(one: Detail) -> Line:
    """One thing about a step or a visit."""
    label = message(f"review/what-{one.what}")
    return Line(one.weight, sort_of(one), one.what, label, one.before, one.after, said=_detail_words(one))


def _detail_words(one: Detail) -> Value:
    return message("review/detail", what=message(f"review/what-{one.what}"), change=ends(one.before, one.after))


def sort_of(one: Detail) -> Sort:
    """What became of it: new where nothing was, gone where nothing is."""
    return Sort.ADDED if one.before == "" else Sort.GONE if one.after == "" else Sort.CHANGED


def verdict(change: VerdictChange, record: VehicleRecord) -> Line:
    """Gear in an opening of which another verdict is true."""
    opening = record.openings[change.opening].name
    before, after = _fit(change.before), _fit(change.after)
    gear = message("review/gear-at", gear=change.name, opening=opening)
    said = message("review/verdict", gear=gear, change=ends(before, after))
    cars = names.kinds_of_car(record, change.cars)
    sort = Sort.CHANGED if change.before and change.after else Sort.ADDED if change.after else Sort.GONE
    why = message("review/became-yes") if change.weight is Weight.CARE else ""
    said = message("review/with-why", what=said, why=why) if why else said
    about = f"{change.opening}/{change.gear}"
    return Line(change.weight, sort, about, gear, before, after, why, where=cars, said=_only(said, cars))


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


def margin(change: MarginChange, record: VehicleRecord) -> Line:
    """By how much the room of gear differs that keeps its verdict."""
    name = record.openings[change.opening].name
    room = [message("review/mm", number=round(one, 1)) for one in (change.least, change.most)]
    between = room[0] if room[0] == room[1] else message("review/between", least=room[0], most=room[1])
    return Line(
        Weight.PLAIN,
        Sort.CHANGED,
        change.opening,
        name,
        said=message("review/margin", count=change.count, opening=name, room=between),
    )


def _where(cars: Value, leads: Sequence[str] = ()) -> Value:
    """For which cars and lead sets something is so; empty where for all."""
    joined = message("review/with-leads", leads=Items(tuple(leads), "comma")) if leads else ""
    return listed(cars, joined, joined="semicolon")


def _only(said: Value, where: Value) -> Value:
    return message("plugs/in-cars", what=said, cars=where) if where else said


def of_gear(change: FactChange, gear: str) -> Line:
    """A fact of gear, whose records name no source; it is named by the gear, and not by the section that all of it stands in."""
    if isinstance(change.name, FactName):
        change = replace(change, name=FactName((gear, *change.name.things[1:]), change.name.titles))
    return Line(
        Weight.PLAIN,
        change.sort,
        "/".join(map(str, change.pointer)),
        change.name,
        change.before,
        change.after,
        said=_fact_words(change),
    )


def joint(change: JointChange, record: VehicleRecord) -> Line:
    """A row of joints, with the lead sets for which it is so."""
    name = joints.called(change)
    told = message("review/joint", function=name, change=ends(change.before, change.after))
    where = _where(names.kinds_of_car(record, change.cars), change.leads)
    about, said = f"{change.opening}/{change.function}", _only(told, where)
    return Line(Weight.PLAIN, Sort.CHANGED, about, name, change.before, change.after, where=where, said=said)


def blocker(change: BlockerChange) -> Line:
    """What stands in the way now, or no longer."""
    said = message(f"review/blocker-{change.sort}", title=change.title, text=change.text)
    return Line(Weight.PLAIN, change.sort, change.weight, change.title, said=said)


def conflict(change: FactChange) -> Line:
    """A fact on which the evidence disagrees now, or no longer."""
    said = message(f"review/conflict-{change.sort}", name=change.name, text=change.after or change.before)
    about = "/".join(map(str, change.pointer))
    return Line(change.weight, change.sort, about, change.name, change.before, change.after, said=said)


def evidence(change: Detail) -> Line:
    """A piece of evidence that is new, gone or says something else."""
    said = ends(change.before, change.after)
    about = f"evidence/{change.what}"
    return Line(Weight.PLAIN, sort_of(change), about, change.what, change.before, change.after, said=said)
