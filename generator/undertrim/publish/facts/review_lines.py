"""One change as a line: with what was, what is, who says so, and all of it as a sentence."""

from collections.abc import Sequence
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
    VerdictChange,
    Weight,
)
from undertrim.derive.review.vehicle import seen
from undertrim.publish.facts import names
from undertrim.publish.facts.fit import verdict_words
from undertrim.publish.facts.review_steps import ends, sort_of
from undertrim.publish.facts.shown_review import Line
from undertrim.publish.facts.words import listed
from undertrim.record.model import VehicleRecord
from undertrim.words import Items, Value, message


def fact(change: FactChange) -> Line:
    """A fact with who says so."""
    about = "/".join(map(str, change.pointer))
    source = _source(change)
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
        gist = change.after or change.before
        code = f"review/thing-{change.sort}-gist" if gist else f"review/thing-{change.sort}"
        return message(code, name=change.name, **({"gist": gist} if gist else {}))
    if change.sort is Sort.CHANGED:
        return message("review/fact-changed", name=change.name, change=ends(change.before, change.after))
    return message(
        f"review/fact-{change.sort}",
        name=change.name,
        before=change.before or message("facts/not-recorded"),
        after=change.after,
    )


def _source(change: FactChange) -> Value:
    """Who says so, and whether that is who said the other thing."""
    before, after = change.said_before, change.said_after
    was, now = (
        Items(tuple(map(seen, some)), "comma") if some else message("review/nobody") for some in (before, after)
    )
    if not before and not after:
        return message("review/source-none")
    if not after:
        return message("review/source-gone" if change.sort is Sort.GONE else "review/source-was", before=was)
    if not before and change.sort is Sort.ADDED:
        return now
    return (
        message("review/source-same", after=now)
        if change.same_source
        else message("review/source-new", before=was, after=now)
    )


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
