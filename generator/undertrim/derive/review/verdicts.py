"""Which gear goes in now that did not, or no longer does, and by how much; in each opening, for each group of cars."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from undertrim.derive import cars
from undertrim.derive.fit.answers import Answer, Vehicle, answer
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.review.change import MarginChange, VerdictChange, Weight
from undertrim.derive.review.visits import agrees
from undertrim.record.combinations import TooMany
from undertrim.record.model import Assignment

YES = ("fits", "fits-with")
_SLIGHT = 0.05
"""mm: what would be printed alike."""


def verdicts(
    before: Vehicle, after: Vehicle, openings: Mapping[str, str]
) -> tuple[tuple[VerdictChange, ...], tuple[MarginChange, ...]]:
    """The verdicts that turned, and the room that became more or less; `openings` are the ids of before by those of now."""
    turned: list[VerdictChange] = []
    margins: list[MarginChange] = []
    for now, was in openings.items():
        try:
            old, new = (
                answer(before, before.record.openings[was], None, {}),
                answer(after, after.record.openings[now], None, {}),
            )
        except TooMany:
            continue  # told where the steps are
        pairs = list(_pairs(old, new, cars.variants(after.record)))
        turned += _turned(now, pairs)
        margins += _margins(now, pairs)
    return tuple(turned), tuple(margins)


_Pair = tuple[tuple[Assignment, ...], Fit | None, Fit | None]


def _pairs(before: Sequence[Answer], after: Sequence[Answer], known: Mapping[str, cars.AnyVariant]) -> Iterator[_Pair]:
    """Each piece of gear in each group of cars with its verdicts before and now; `known` are the variants of now."""
    for was in before:
        for now in after:
            kinds = tuple(car for car in now.cars if not was.cars or any(agrees(one, car) for one in was.cars))
            kinds = kinds or (tuple(_still(was.cars, known)) if not now.cars else ())
            if (was.cars and now.cars and not kinds) or was.there != now.there:
                continue  # no car is in both; and one that has no such opening any more is told as a fact
            old, new = ({fit.gear: fit for fit in one.fits} for one in (was, now))
            yield from ((kinds, old.get(name), new.get(name)) for name in dict.fromkeys((*new, *old)))


def _still(kinds: Sequence[Assignment], known: Mapping[str, cars.AnyVariant]) -> Iterator[Assignment]:
    """Kinds of car of before by what of them can still be told apart; a choice that is gone leaves its cars out."""
    for kind in kinds:
        told = {name: choice for name, choice in kind.items() if name in known}
        if told and all(choice in known[name].choices for name, choice in told.items()):
            yield told


def _turned(opening: str, pairs: Sequence[_Pair]) -> Iterator[VerdictChange]:
    """Those of another kind, cars with the same two verdicts together."""
    found: dict[tuple[str, str, str], VerdictChange] = {}
    for kinds, was, now in pairs:
        fit = now or was
        if fit is None or (was and now and was.kind == now.kind):
            continue
        key = (fit.gear, was.kind if was else "", now.kind if now else "")
        weight = Weight.CARE if became_yes(was, now) else Weight.PLAIN
        change = VerdictChange(opening, fit.gear, fit.name, kinds, was, now, weight)
        found[key] = replace(found[key], cars=(*found[key].cars, *kinds)) if key in found else change
    yield from found.values()


def became_yes(was: Fit | None, now: Fit | None) -> bool:
    """Whether somebody will now be told to go ahead who was not, or no longer to stop."""
    if was is None or now is None:
        return False
    return (now.kind in YES and was.kind not in YES) or (was.kind == "stop" != now.kind)


def _margins(opening: str, pairs: Sequence[_Pair]) -> Iterator[MarginChange]:
    """By how much the room of those differs that keep their verdict."""
    shifts: dict[str, float] = {}
    for _, was, now in pairs:
        if was and now and was.kind == now.kind and math.isfinite(was.margin) and math.isfinite(now.margin):
            shift = now.margin - was.margin
            if abs(shift) >= _SLIGHT:
                shifts[now.gear] = shift
    if shifts:
        yield MarginChange(opening, len(shifts), min(shifts.values()), max(shifts.values()))
