"""The changed steps of a visit as lines, and what is another one about a step or a visit."""

from collections.abc import Iterator, Sequence

from undertrim.derive.review.change import Detail, Sort, StepChange
from undertrim.publish.facts.shown_review import Line
from undertrim.publish.facts.steps import VERBS
from undertrim.words import ENGLISH, Items, Value, message, say

_MANY = 3
"""So many steps that differ alike in what holds around them are told in one line."""


def ends(before: Value, after: Value) -> Value:
    """`62 mm → 58 mm`; with one of them empty, what is new or gone."""
    if before == "":
        return message("review/new", after=after)
    return (
        message("review/gone", before=before) if after == "" else message("review/change", before=before, after=after)
    )


def steps(changes: Sequence[StepChange], visit: Value) -> Iterator[Line]:
    """A line each; of many of which the same state of the car or the same cautions are others one for all."""
    alike: dict[object, list[StepChange]] = {}
    for change in changes:
        alike.setdefault(_only_around(change), []).append(change)
    told: set[object] = set()
    for change in changes:
        key = _only_around(change)
        same = alike[key]
        if key is None or len(same) < _MANY:
            yield _step(change, visit)
        elif key not in told:
            told.add(key)
            yield _together(same, visit)


def _together(same: Sequence[StepChange], visit: Value) -> Line:
    """One line for steps that differ alike."""
    change, last = same[0], same[-1]
    details = list(map(detail, change.details))
    around = {"count": len(same), "first": _called(change), "last": _called(last)}
    if [one.what for one in change.details] == ["state"]:
        said = message("review/steps-state", count=len(same), change=ends(details[0].before, details[0].after))
    else:
        words = Items(tuple(_detail_words(one) for one in change.details), "semicolon")
        said = message("review/steps-alike", details=words, **around)
    name = message("review/steps-named", **around)
    return Line(change.weight, change.sort, change.id, name, where=visit, said=said, details=details)


def _only_around(change: StepChange) -> object:
    """The state of the car and the cautions before and now, where a step differs in nothing else; None where it does."""
    if not change.details or not {one.what for one in change.details} <= {"state", "caution"}:
        return None
    return change.weight, tuple((one.what, say(one.before, ENGLISH), say(one.after, ENGLISH)) for one in change.details)


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
