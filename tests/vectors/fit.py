"""Questions of fit with the answers of Python: the worked examples and random ones by seed. A browser must give the same."""

import random
from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from undertrim.derive.fit import receiver, speaker
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.speaker import Spacer
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts.fit_page import gear_data, opening_data, usual_data
from undertrim.record.gear import GearFacts
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole, Opening
from undertrim.record.units import Quantity, parse

USUAL = clearances()


@dataclass(frozen=True)
class Case:
    """A piece of gear before an opening, with what is in stock to go between."""

    gear: Gear
    opening: Opening
    between: tuple[Spacer, ...] = ()
    name: str = ""

    def answer(self) -> Fit:
        """What Python says."""
        if self.opening.kind == "speaker":
            return speaker.fit(self.gear, self.opening, self.between, USUAL)
        return receiver.fit(self.gear, self.opening, [item.gear for item in self.between], USUAL)

    def asked(self) -> dict[str, Any]:
        """The same question for the browser."""
        return {
            "kind": self.opening.kind,
            "gear": gear_data(self.gear.facts),
            "opening": opening_data(self.opening),
            "between": [
                {"name": item.gear.name, "gear": gear_data(item.gear.facts), "made_for_it": item.made_for_it}
                for item in self.between
            ],
        }


def said(fit: Fit) -> dict[str, Any]:
    """An answer as the browser gives it."""
    return {
        "kind": fit.kind,
        "headline": fit.headline,
        "parts": list(fit.parts),
        "to_get": list(fit.to_get),
        "notes": list(fit.notes),
        "checks": [
            {
                "name": check.name,
                "title": check.title,
                "verdict": check.verdict,
                "words": check.words,
                "need": check.need,
                "have": check.have,
                "margin": check.margin,
                "uncertainty": check.uncertainty,
                "missing": list(check.missing),
                "mend": check.mend,
                "unit": check.unit,
                "numbers": [
                    {
                        "label": number.label,
                        "value": number.value,
                        "step": number.step,
                        "text": number.text,
                        "default": number.default,
                    }
                    for number in check.numbers
                ],
            }
            for check in fit.checks
        ],
    }


def usual() -> dict[str, Any]:
    """The usual clearances for the browser."""
    return usual_data(USUAL)


def mm(text: str) -> Quantity:
    """A length typed with its unit, or in mm."""
    return parse(text if text[-1] in 'mn"' else f"{text} mm", "length")


def _speaker(depth: str, protrusion: str = "10", **other: Any) -> Gear:
    facts = {"basket": Hole("round", diameter=mm("127")), "flange": Hole("round", diameter=mm("165"))}
    bolts = Bolts("circle", 4, diameter=mm("156"))
    return Gear("shoal", GearFacts("speaker", "Skerrowe", "Shoal", bolts=bolts, depth=mm(depth), protrusion=mm(protrusion), **{**facts, **other}))  # fmt: skip


def _door(clear: str, grille: str = "20", across: str = "130", **other: Any) -> Opening:
    facts: dict[str, Any] = {
        "hole": Hole("round", diameter=mm(across)),
        "bolts": Bolts("circle", 4, diameter=mm("156")),
        "depth": Depth(mm(clear), "skin", "no-glass"),
        "room_to_grille": mm(grille),
        "factory_spacer": Blank.NONE,
    }
    return Opening("side", "Side", "speaker", (), **{**facts, **other})


def _ring(thickness: str) -> Spacer:
    facts = GearFacts("spacer", "Pellworth", f"Ring {thickness}", thickness=mm(thickness), hole=Hole("round", diameter=mm("128")), flange=Hole("round", diameter=mm("176")), bolts=Bolts("circle", 4, diameter=mm("156")))  # fmt: skip
    return Spacer(Gear(f"ring-{thickness}", facts), made_for_it=True)


def _dash(height: str, depth: str, kit: str = "not-needed") -> Opening:
    return Opening("dash", "Dash", "receiver", (), face=Face(mm("182"), mm(height)), depth=Depth(mm(depth)), kit=kit)


def _receiver(height: str = "50", depth: str = "160") -> Gear:
    return Gear("cleft", GearFacts("receiver", "Sandmartin", "Cleft", body=Face(mm("180"), mm(height)), chassis_depth=mm(depth)))  # fmt: skip


_LEAN = Depth(mm("62"), "skin", "no-glass", leans=parse("5.00 deg", "angle"))
FIXED = (
    # Depth margin = D + s - d - c, grille margin = G - s - p - cg, with c = cg = 3: derived by hand
    Case(_speaker("58"), _door("62"), name="flush, 1 mm behind and 7 mm before"),
    Case(_speaker("63"), _door("62"), name="a spacer of 4 to 7 mm is wanted"),
    Case(_speaker("63"), _door("62"), (_ring("6"),), name="on 6 mm"),
    Case(_speaker("63"), _door("62"), (_ring("1/2 in"),), name="half an inch strikes the grille"),
    Case(_speaker("63"), _door("55"), name="no height of spacer does"),
    Case(_speaker("58", magnet=mm("90")), _door("62", depth=_LEAN), name="the lean takes 3.94 mm"),
    Case(_speaker("58"), _door("62", across="158"), name="the flange of 165 does not cover 158"),
    # A door measured to the glass, 2 3/16 in of speaker, a bracket of 19.05 mm: the window is 11.56 to 13 mm with 3 and 2 mm kept
    Case(
        _speaker("2 3/16 in", "9"),
        _door("47", "24", depth=Depth(mm("47"), "skin", "whole-travel", "Window glass"), factory_spacer=mm("3/4 in")),
        name="flush it strikes the glass, on the bracket the grille",
    ),
    # 198 x 132 against a basket of 127 and a flange of 165: 16.5 mm open at each end
    Case(_speaker("40"), _door("62", hole=Hole("oval", width=mm("198"), height=mm("132"))), name="round speaker, oval hole"),
    # opening - body on each axis; clear depth - chassis - 30 for the plugs
    Case(_receiver(), _dash("53", "200"), name="10 mm to spare"),
    Case(_receiver(), _dash("53", "175"), name="15 mm too deep"),
    Case(_receiver(depth="100"), _dash("53", "175"), name="a short chassis"),
    Case(_receiver("100"), _dash("53", "200"), name="double into single"),
    Case(_receiver(), _dash("103", "200"), name="53 mm of height left over"),
)  # fmt: skip


def randoms(seed: int, count: int) -> list[Case]:
    """Random questions: shapes, patterns, units, unknowns, things between; dimensions lie near each other, so that verdicts of every kind come up."""
    chance = random.Random(seed)  # noqa: S311 - numbers for a test
    return [_random_receiver(chance) if chance.random() < 0.25 else _random_speaker(chance) for _ in range(count)]


def _length(chance: random.Random, around: float, spread: float) -> Quantity:
    value = max(1.0, chance.gauss(around, spread))
    written = chance.choice([
        f"{value:.0f} mm", f"{value:.1f} mm", f"{value / 10:.2f} cm", f"{value / 25.4:.2f} in",
        f"{int(value // 25.4)} {chance.choice(['1/2', '3/16', '7/8', '5/32'])} in" if value > 25.4 else f"{value:.2f} mm",
    ])  # fmt: skip
    return parse(written, "length")


def _maybe(chance: random.Random, value: Any, lost: float = 0.06, *words: Any) -> Any:
    return chance.choice(words or (None,)) if chance.random() < lost else value


def _hole(chance: random.Random, around: float, spread: float) -> Hole:
    shape = chance.choices(["round", "oval", "rectangle"], [6, 3, 1])[0]
    size = partial(_length, chance)
    if shape == "round":
        return Hole(shape, diameter=size(around, spread))
    return Hole(shape, width=size(around, spread), height=size(around * chance.choice([1, 1.4]), spread))


def _bolts(chance: random.Random, around: float) -> Bolts:
    count = chance.choice([2, 3, 4, 4, 4, 6, 8])
    if chance.random() < 0.65:
        return Bolts("circle", count, diameter=_length(chance, around, 2))
    return Bolts(
        "rectangle",
        chance.choice([4, 4, count]),
        width=_length(chance, around * 0.7, 3),
        height=_length(chance, around * 0.7, 3),
    )


def _random_speaker(chance: random.Random) -> Case:
    size = chance.choice([76, 92, 120, 130, 145])
    facts = GearFacts(
        "speaker", "Skerrowe", "Shoal",
        basket=_maybe(chance, _hole(chance, size - 3, 2)),
        flange=_maybe(chance, _hole(chance, size + 30, 6)),
        bolts=_maybe(chance, _bolts(chance, size + 26)),
        depth=_maybe(chance, _length(chance, 55, 8), 0.05),
        magnet=_maybe(chance, _length(chance, 88, 10), 0.15),
        protrusion=_maybe(chance, _length(chance, 8, 3), 0.1),
        gasket=chance.choice([None, None, Blank.NONE, Blank.UNKNOWN, parse("1.5 mm", "length"), parse("2 mm", "length")]),
        impedance=parse(chance.choice(["4 ohm", "4 ohm", "2 ohm", "8 ohm", "3 ohm"]), "resistance"),
    )  # fmt: skip
    return Case(Gear("shoal", facts), _random_door(chance, size), tuple(_random_ring(chance, size) for _ in range(chance.randrange(3))))  # fmt: skip


def _random_door(chance: random.Random, size: int) -> Opening:
    depth = Depth(
        _maybe(chance, _length(chance, 60, 6), 0.05, Blank.UNKNOWN),
        chance.choices(["skin", "bracket", "panel", ""], [8, 3, 1, 1])[0],
        chance.choice(["whole-travel", "glass-down", "no-glass", ""]),
        chance.choice(["Window glass", "Cross-bar", ""]),
        chance.choice([None, None, Blank.UNKNOWN, parse("3 deg", "angle"), parse("0 deg", "angle"), parse("7.5 deg", "angle")]),
    )  # fmt: skip
    return Opening(
        chance.choice(["front-door", "shelf"]), "Place", "speaker", (), area=chance.choice(["", "front-door", "shelf"]),
        hole=_maybe(chance, _hole(chance, size, 3)),
        bolts=_maybe(chance, _bolts(chance, size + 26)),
        panel=chance.choice([None, None, Face(_length(chance, size + 40, 9), _maybe(chance, _length(chance, size + 40, 9), 0.2, Blank.UNKNOWN))]),
        depth=_maybe(chance, depth, 0.03),
        room_to_grille=_maybe(chance, _length(chance, 19, 5), 0.08, None, Blank.UNKNOWN),
        factory_spacer=_maybe(chance, _length(chance, 14, 4), 0.5, None, Blank.NONE, Blank.UNKNOWN),
        impedance=_maybe(chance, parse("4 ohm", "resistance"), 0.2, Blank.UNKNOWN),
        crash_sensor=chance.choice(["yes", "no", "unknown", None]),
    )  # fmt: skip


def _random_ring(chance: random.Random, size: int) -> Spacer:
    number = chance.randrange(100)
    facts = GearFacts(
        "spacer", "Pellworth", f"Ring {number}",
        thickness=_length(chance, 9, 4),
        hole=_hole(chance, size, 2),
        bolts=_maybe(chance, _bolts(chance, size + 26), 0.1),
        car_bolts=_maybe(chance, _bolts(chance, size + 26), 0.6),
        flange=_maybe(chance, _hole(chance, size + 34, 4), 0.1),
    )  # fmt: skip
    return Spacer(Gear(f"ring-{number}", facts), made_for_it=chance.random() < 0.5)


def _random_receiver(chance: random.Random) -> Case:
    high = chance.choice([50, 50, 100, 75])
    facts = GearFacts(
        "receiver", "Sandmartin", "Cleft",
        body=Face(_length(chance, 180, 1.5), _length(chance, high, 1)),
        trim=_maybe(chance, Face(_length(chance, 190, 15), _length(chance, high + 8, 8)), 0.3),
        chassis_depth=_maybe(chance, _length(chance, 130, 30), 0.05),
        plug_room=_maybe(chance, _length(chance, 32, 5), 0.3, None, Blank.UNKNOWN),
    )  # fmt: skip
    opening = Opening(
        "dash", "Dash", "receiver", (),
        face=Face(_maybe(chance, _length(chance, 183, 3), 0.05, Blank.UNKNOWN), _length(chance, chance.choice([53, 104, 112]), 2)),
        clear_front=_maybe(chance, Face(_length(chance, 215, 20), _length(chance, high + 30, 15)), 0.4),
        depth=_maybe(chance, Depth(_maybe(chance, _length(chance, 168, 15), 0.05, Blank.UNKNOWN), chance.choice(["", "face", "face", "bracket"])), 0.03),
        kit=chance.choice(["needed", "not-needed", "unknown"]),
    )  # fmt: skip
    return Case(Gear("cleft", facts), opening, tuple(_random_kit(chance) for _ in range(chance.randrange(3))))


def _random_kit(chance: random.Random) -> Spacer:
    number = chance.randrange(100)
    inside: Sequence[str] = chance.choice([(), ("Frame", "Two brackets")])
    face = Face(_length(chance, 182, 1), _length(chance, chance.choice([53, 104]), 1.5))
    return Spacer(
        Gear(f"kit-{number}", GearFacts("kit", "Pellworth", f"Dale {number}", opening=face, contains=tuple(inside))),
        made_for_it=True,
    )
