"""Random questions of fit, by seed: shapes, patterns, units, unknowns, things between, other clearances.

Dimensions lie near each other, so that verdicts of every kind come up; in some questions all of them lie on one grid, so that margins
come out at nothing, at just their uncertainty, and half-way between two figures that are shown.
"""

import random
from collections.abc import Sequence
from functools import partial
from typing import Any

from undertrim.derive.fit.clearances import Clearances, clearances
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole, Opening
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.record.model.kinds.usual import usual_for
from undertrim.record.units import Quantity, parse
from vectors.fit import USUAL, Case

_WIDE = Face(parse("300 mm", "length"), parse("300 mm", "length"))
_GRIDS = ("", "", "whole", "halves", "sixteenths", "eighths", "cents")


class _Chance(random.Random):
    """A random source that knows on which grid the lengths of the question at hand lie."""

    grid: str = ""


def randoms(seed: int, count: int) -> list[Case]:
    """So many questions; the same for the same seed."""
    chance = _Chance(seed)
    return [_question(chance) for _ in range(count)]


def _question(chance: _Chance) -> Case:
    chance.grid = chance.choice(_GRIDS)
    return _random_receiver(chance) if chance.random() < 0.25 else _random_speaker(chance)


def _length(chance: _Chance, around: float, spread: float) -> Quantity:
    value = max(1.0, chance.gauss(around, spread))
    return parse(_on_grid(chance.grid, value) or _written(chance, value), "length")


def _on_grid(grid: str, value: float) -> str:
    """The length in mm or sixteenths of an inch; sums of eighths and of 0.005 mm often lie half-way between two hundredths."""
    if grid == "sixteenths":
        whole, marks = divmod(round(value / 25.4 * 16), 16)
        return f"{whole or ''} {marks}/16 in".strip() if marks else f"{whole} in"
    steps = {"whole": 1, "halves": 0.5, "eighths": 0.125, "cents": 0.005}
    return f"{round(value / steps[grid]) * steps[grid]:.7g} mm" if grid else ""


def _written(chance: _Chance, value: float) -> str:
    return chance.choice([
        f"{value:.0f} mm", f"{value:.1f} mm", f"{value:.3f} mm", f"{value / 10:.2f} cm", f"{value / 25.4:.2f} in",
        f"{int(value // 25.4)} {chance.choice(['1/2', '3/16', '7/8', '5/32'])} in" if value > 25.4 else f"{value:.2f} mm",
    ])  # fmt: skip


def _maybe(chance: _Chance, value: Any, lost: float = 0.06, *words: Any) -> Any:
    return chance.choice(words or (None,)) if chance.random() < lost else value


def _room(chance: _Chance, value: Any) -> Any:
    """Now and then a lower bound."""
    return (
        parse(f"at least {value.text}", "length") if isinstance(value, Quantity) and chance.random() < 0.08 else value
    )


def _hole(chance: _Chance, around: float, spread: float) -> Hole:
    shape = chance.choices(["round", "oval", "rectangle"], [6, 3, 1])[0]
    size = partial(_length, chance)
    if shape == "round":
        return Hole(shape, diameter=size(around, spread))
    if chance.random() < 0.1:  # 3 : 4 : 5, whose diagonal is a whole number
        return Hole(shape, width=parse("90 mm", "length"), height=parse("120 mm", "length"))
    return Hole(shape, width=size(around, spread), height=size(around * chance.choice([1, 1.4]), spread))


def _bolts(chance: _Chance, around: float) -> Bolts:
    count = chance.choice([2, 3, 4, 4, 4, 6, 8])
    if chance.random() < 0.65:
        angle = chance.choice(
            [
                None,
                Blank.UNKNOWN,
                *(parse(f"{turn} deg", "angle") for turn in ("0", *["45"] * 12, "44", "90.0", "22.5")),
            ]
        )
        return Bolts("circle", count, diameter=_length(chance, around, 2), angle=angle)
    if chance.random() < 0.2:
        return Bolts("rectangle", 4, width=parse("90 mm", "length"), height=parse("120 mm", "length"))
    return Bolts(
        "rectangle",
        chance.choice([4, 4, count]),
        width=_length(chance, around * 0.7, 3),
        height=_length(chance, around * 0.7, 3),
    )


def _random_speaker(chance: _Chance) -> Case:
    size = chance.choice([76, 92, 120, 130, 145])
    facts = SpeakerGear("Skerrowe", "Shoal",
        basket=_maybe(chance, _hole(chance, size - 3, 2)),
        flange=_maybe(chance, _hole(chance, size + 30, 6)),
        bolts=_maybe(chance, _bolts(chance, size + 26)),
        depth=_maybe(chance, _length(chance, 55, 8), 0.05),
        magnet=_maybe(chance, _length(chance, 88, 10), 0.15),
        protrusion=_maybe(chance, _length(chance, 8, 3), 0.1),
        gasket=chance.choice([None, *[Blank.NONE] * 6, Blank.UNKNOWN, parse("1.5 mm", "length"), parse("2 mm", "length")]),
        impedance=parse(chance.choice(["4 ohm", "4 ohm", "2 ohm", "8 ohm", "3 ohm"]), "resistance"),
    )  # fmt: skip
    return Case(Stocked("shoal", facts), _random_door(chance, size), tuple(_random_ring(chance, size) for _ in range(chance.randrange(3))), usual=_usual(chance, SpeakerOpening))  # fmt: skip


def _random_door(chance: _Chance, size: int) -> Opening:
    depth = Depth(
        _room(chance, _maybe(chance, _length(chance, 60, 6), 0.05, Blank.UNKNOWN)),
        chance.choices(["skin", "bracket", "panel", ""], [8, 3, 1, 1])[0],
        chance.choice([*["whole-travel", "no-glass"] * 3, "glass-down", ""]),
        chance.choice(["Window glass", "Cross-bar", ""]),
        chance.choice(["glass", "metal", "soft", "unknown", ""]),
        chance.choice([*[Blank.NONE] * 10, None, Blank.UNKNOWN, parse("3 deg", "angle"), parse("0 deg", "angle"), parse("7.5 deg", "angle")]),
    )  # fmt: skip
    return SpeakerOpening(
        chance.choice(["front-door", "shelf"]), "Place", (), area=chance.choice(["", "front-door", "shelf"]),
        hole=_maybe(chance, _hole(chance, size, 3)),
        bolts=_maybe(chance, _bolts(chance, size + 26)),
        panel=chance.choice([None, *[_WIDE] * 9, Face(_length(chance, size + 40, 9), _maybe(chance, _length(chance, size + 40, 9), 0.2, Blank.UNKNOWN))]),
        depth=_maybe(chance, depth, 0.03),
        room_to_grille=_room(chance, _maybe(chance, _length(chance, 19, 5), 0.08, None, Blank.UNKNOWN)),
        factory_spacer=_maybe(chance, _length(chance, 14, 4), 0.5, None, *[Blank.NONE] * 6, Blank.UNKNOWN),
        impedance=_maybe(chance, parse("4 ohm", "resistance"), 0.2, Blank.UNKNOWN),
        crash_sensor=chance.choice(["yes", "no", "unknown", None]),
    )  # fmt: skip


def _random_ring(chance: _Chance, size: int) -> Gear:
    number = chance.randrange(100)
    facts = SpacerGear("Pellworth", f"Ring {number}",
        thickness=_length(chance, 9, 4),
        hole=_hole(chance, size, 2),
        bolts=_maybe(chance, _bolts(chance, size + 26), 0.1),
        car_bolts=_maybe(chance, _bolts(chance, size + 26), 0.6),
        flange=_maybe(chance, _hole(chance, size + 34, 4), 0.1),
    )  # fmt: skip
    return Stocked(f"ring-{number}", facts)


def _random_receiver(chance: _Chance) -> Case:
    high = chance.choice([50, 50, 100, 75])
    facts = ReceiverGear("Sandmartin", "Cleft",
        body=Face(_length(chance, 180, 1.5), _length(chance, high, 1)),
        trim=_maybe(chance, Face(_length(chance, 190, 15), _length(chance, high + 8, 8)), 0.1),
        chassis_depth=_maybe(chance, _length(chance, 130, 30), 0.05),
        plug_room=_maybe(chance, _length(chance, 32, 5), 0.3, None, Blank.UNKNOWN),
    )  # fmt: skip
    opening = ReceiverOpening(
        "dash", "Dash", (),
        face=Face(_maybe(chance, _length(chance, 183, 3), 0.05, Blank.UNKNOWN), _length(chance, chance.choice([53, 104, 112]), 2)),
        clear_front=_maybe(chance, Face(_length(chance, 225, 20), _length(chance, high + 35, 15)), 0.3),
        depth=_maybe(chance, Depth(_room(chance, _maybe(chance, _length(chance, 168, 15), 0.05, Blank.UNKNOWN)), chance.choice(["", *["face"] * 6, "bracket"])), 0.03),
        kit=chance.choice(["needed", *["not-needed"] * 3, "unknown"]),
    )  # fmt: skip
    return Case(Stocked("cleft", facts), opening, tuple(_random_kit(chance) for _ in range(chance.randrange(3))), usual=_usual(chance, ReceiverOpening))  # fmt: skip


def _random_kit(chance: _Chance) -> Gear:
    number = chance.randrange(100)
    inside: Sequence[str] = chance.choice([(), ("Frame", "Two brackets")])
    face = Face(_length(chance, 182, 1), _length(chance, chance.choice([53, 104]), 1.5))
    return Stocked(f"kit-{number}", KitGear("Pellworth", f"Dale {number}", opening=face, contains=tuple(inside)))


def _usual(chance: _Chance, kind: type[Opening]) -> Clearances:
    """The usual room, now and then with lengths that somebody typed in its place: of its own kind, so that another kind changes no question."""
    if chance.random() < 0.7:
        return USUAL
    names = list(usual_for(kind.kind).clearances)
    sizes = ("0 mm", "1 mm", "2.5 mm", "1/8 in", "0.25 in", "12 mm")
    return clearances(**{name: chance.choice(sizes) for name in chance.sample(names, 3)})
