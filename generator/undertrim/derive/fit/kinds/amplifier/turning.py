"""A box in a box: an amplifier in each of its six turned positions, through the way in, with room for air."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import permutations

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.margins import NOT_RECORDED, Check, Number, amount, capped, compare, found, typed, untold
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import KINDS, Fit, Way, decide
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening, Box
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message

_AXES = ("width", "height", "depth")
_SPACE = tuple(message(f"fit-amplifier/space-{axis}") for axis in _AXES)
_SIDE = tuple(message(f"fit-amplifier/{axis}") for axis in _AXES)
_AXIS = tuple(message(f"fit-amplifier/check-{axis}") for axis in _AXES)


@dataclass(frozen=True, slots=True)
class Pose:
    """Which side of the amplifier lies along width, height and depth of the place: `order` holds their places in (width, height, depth)."""

    order: tuple[int, int, int]

    @property
    def flat(self) -> bool:
        """Whether it lies on its feet."""
        return self.order[1] == 1

    @property
    def note(self) -> Message | None:
        """How it is turned; None as its maker drew it."""
        if self.order == (0, 1, 2):
            return None
        return message("fit-amplifier/turned" if self.flat else "fit-amplifier/on-its-side")


POSES = tuple(Pose((a, b, c)) for a, b, c in permutations(range(3)))
"""All six, as it was drawn first."""


def sides(box: Box | None) -> tuple[Number, ...]:
    """Width, height and depth of an amplifier or a place; missing where they are not recorded."""
    return _sides(box, _SIDE)


def _sides(box: Box | None, labels: Sequence[Message]) -> tuple[Number, ...]:
    values = (box.width, box.height, box.depth) if box else (None, None, None)
    return tuple(typed(label, value) for label, value in zip(labels, values, strict=True))


def passage(opening: AmplifierOpening) -> tuple[Number, Number]:
    """Width and height of the way in."""
    way = opening.way_in
    width, height = message("fit-amplifier/way-width"), message("fit-amplifier/way-height")
    return typed(width, way.width if way else None), typed(height, way.height if way else None)


def fit(gear: Stocked[AmplifierGear], opening: AmplifierOpening, usual: Clearances) -> Fit:
    """The answer for the best of all poses: what fits before what does not, lying flat before standing, then the larger margin."""
    return min((_posed(gear, opening, usual, pose) for pose in POSES), key=_preferred)[1]


def pose(fit: Fit) -> Pose:
    """The pose of an answer."""
    return POSES[fit.way.pose]


def _preferred(item: tuple[Pose, Fit]) -> tuple[int, bool, float]:
    at, found = item
    return KINDS.index(found.kind) if found.kind in KINDS else len(KINDS), not at.flat, -found.margin


def _posed(gear: Stocked[AmplifierGear], opening: AmplifierOpening, usual: Clearances, at: Pose) -> tuple[Pose, Fit]:
    space, box = _sides(opening.space, _SPACE), sides(gear.facts.size)
    turned = [box[place] for place in at.order]
    within = [
        compare(f"space-{axis}", title, [have], [need])
        for axis, title, have, need in zip(_AXES, _AXIS, space, turned, strict=True)
    ]
    checks = [*within, *_way_in(box, opening), *_air(gear.facts, opening, usual, space, turned)]
    notes = (at.note,) if at.note else ()
    way = Way(pose=POSES.index(at), turned=at.note is not None)
    return at, decide(gear.id, gear.name, checks, notes=notes, way=way)


def _way_in(box: Sequence[Number], opening: AmplifierOpening) -> Iterator[Check]:
    """Whether it passes with its longest side ahead: the two others, the smaller one across the smaller side of the passage."""
    way, title = passage(opening), message("fit-amplifier/way-in")
    if opening.way_in is None:
        yield untold("way-in", title, [message("fit/missing", what=title, how=NOT_RECORDED)])
    elif any(side.value is None for side in (*way, *box)):
        yield compare("way-in", title, way, box)
    else:
        leading = sorted(box, key=_value)[:2]
        checks = _across(sorted(way, key=_value), leading)
        failed = any(check.verdict == "fails" for check in checks)
        yield from _across(sorted(way, key=_most), leading) if failed else checks


def _across(way: Sequence[Number], leading: Sequence[Number]) -> list[Check]:
    return [
        compare(f"way-in-{name}", message(f"fit-amplifier/way-in-{name}"), [have], [need])
        for name, have, need in zip(("narrow", "wide"), way, leading, strict=True)
    ]


def _most(number: Number) -> float:
    """A side of which only a lower bound is known may be the wider one, however small the bound."""
    return _value(number) + number.more


def _value(number: Number) -> float:
    return number.value or 0


def _air(
    facts: AmplifierGear, opening: AmplifierOpening, usual: Clearances, space: Sequence[Number], box: Sequence[Number]
) -> Iterator[Check]:
    """Room for air above and along one side, as a caution: it never says that the amplifier does not go in."""
    wanted = (
        typed(message("fit-amplifier/cooling"), facts.cooling)
        if isinstance(facts.cooling, Quantity)
        else usual["cooling"]
    )
    above = compare("air-above", message("fit-amplifier/air-above"), [space[1]], [box[1], wanted])
    beside = [
        compare("air-beside", message("fit-amplifier/air-beside"), [space[place]], [box[place], wanted])
        for place in (0, 2)
    ]
    best = max(beside, key=lambda check: -1e9 if check.margin is None else check.margin)
    still: Value = "" if opening.air == "open" else message(f"fit-amplifier/air-{opening.air or 'unknown'}")
    yield from (
        _caution(capped(check, still) if check is above else check)
        for check in (above, best)
        if check.margin is not None or check.numbers[0].lacking
    )


def _caution(check: Check) -> Check:
    """What is short for air alone, or may be behind a lower bound, as marginal."""
    if check.verdict == "unknown":
        return replace(check, verdict="marginal")
    if check.verdict != "fails":
        return check
    return replace(
        check,
        verdict="marginal",
        said=found(check.title, message("fit-amplifier/warm", short=amount(check.margin or 0, check.uncertainty or 0))),
    )
