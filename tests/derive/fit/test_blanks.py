"""A clean pair with each fact blanked in turn, absent and unknown: never still a plain yes, unless the blank is named or needs no answer."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from making import PATH, from_data
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear, Stock, Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.record import build, complaints
from undertrim.record.copying import copied
from undertrim.record.gear import GearFacts
from undertrim.record.source import read_text
from undertrim.words import say

ADDRESS = "brindleway/otter-2014-2018"
CAR: dict[str, Any] = {
    "parts": {"radio": {}},
    "openings": {
        "dash": {
            "kind": "receiver", "behind": ["radio"], "area": "dash", "kit": "needed",
            "face": {"width": "220 mm", "height": "130 mm"}, "clear_front": {"width": "300 mm", "height": "200 mm"},
            "depth": {"clear": "200 mm", "datum": "face", "to": "Air duct"},
        },
        "front-door": {
            "kind": "speaker", "behind": ["radio"], "area": "front-door", "each": ["left", "right"],
            "hole": {"shape": "round", "diameter": "130 mm"}, "panel": {"width": "190 mm", "height": "186 mm"},
            "bolts": {"pattern": "circle", "count": "4", "diameter": "156 mm", "angle": "45 deg"},
            "depth": {"clear": "70 mm", "datum": "skin", "over": "whole-travel", "to": "Window glass", "leans": "3 deg"},
            "channel": "front", "fed_through": "direct", "room_to_grille": "30 mm", "factory_spacer": "none", "impedance": "4 ohm", "crash_sensor": "no",
        },
        "tweeter": {
            "kind": "speaker", "behind": ["radio"], "area": "dash", "each": ["left", "right"], "channel": "front", "fed_through": "capacitor", "impedance": "4 ohm",
            "hole": {"shape": "round", "diameter": "46 mm"}, "depth": {"clear": "27 mm", "datum": "skin", "over": "no-glass", "leans": "none"},
        },
    },
    "sound": {"amplified": {"output": "line", "amplifier": "Under the seat", "turn_on": "wire", "least_load": "4 ohm"}},
}  # fmt: skip
GEAR: dict[str, dict[str, Any]] = {
    "receiver": {
        "kind": "receiver", "maker": "Skerrowe", "model": "Cleft", "body": {"width": "180 mm", "height": "100 mm"}, "trim": {"width": "230 mm", "height": "140 mm"},
        "chassis_depth": "90 mm", "plug_room": "30 mm", "outputs": ["line"], "needs": [], "least_load": "4 ohm",
    },
    "speaker": {
        "kind": "speaker", "maker": "Skerrowe", "model": "Shoal", "basket": {"shape": "round", "diameter": "127 mm"}, "flange": {"shape": "oval", "width": "165 mm", "height": "170 mm"},
        "bolts": {"pattern": "circle", "count": "4", "diameter": "156 mm", "angle": "45 deg"},
        "depth": "50 mm", "magnet": "90 mm", "protrusion": "10 mm", "gasket": "1.5 mm", "impedance": "4 ohm", "terminals": "Tabs 4.8 mm",
    },
    "kit": {"kind": "kit", "maker": "Pellworth", "model": "Dale", "opening": {"width": "182 mm", "height": "104 mm"}, "suits": [{"vehicle": ADDRESS, "opening": "dash"}], "contains": ["Frame"]},
}  # fmt: skip

_ELSEWHERE = "another opening, of which only what loads the channel counts"
HARMLESS = {
    "maker": "a name",
    "model": "a name",
    "area": "a door speaker without one counts as in a door, and what is nowhere keeps its word on the glass",
    "each": "how often it is there; without it the other counts as beside it",
    "to": "what is behind: without it the greater clearance is kept",
    "fed_through": "'direct' where nothing is said, which counts the most",
    "crash_sensor": "it decides on cutting and drilling, which no fit asks for",
    "terminals": "how its leads are joined takes no room that is recorded",
    "contains": "what is in the box",
    "kit": "a kit that is in stock for this car is taken, whether it was needed or not",
    "amplifier": "where it is; what the radio sends says that there is one",
    "least_load for dash": "what speakers may be joined to, which no receiver alone asks for",
    "output for front-door": "there is an amplifier, and the least load that it allows is known",
    "turn_on for front-door": "how the amplifier is woken changes no speaker",
    "tweeter for front-door": _ELSEWHERE,
}
"""Where the verdict stays, by field or by field and opening, and why."""

NAMED = {
    "impedance": "its impedance is not recorded",
    "plug_room": "the room that its plugs need is not recorded",
}
"""Where the verdict stays, and what must be said then."""

FILLED_IN = {("kind",), ("face",), ("depth",), ("hole",)}
"""What the schema asks for and the test's own record maker fills in."""


def places(data: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    for key, value in data.items():
        yield (*path, key)
        if isinstance(value, dict):
            yield from places(value, (*path, key))


def blanked(data: dict[str, Any], path: tuple[str, ...], word: str | None) -> dict[str, Any]:
    made: dict[str, Any] = copied(data)
    around = made
    for key in path[:-1]:
        around = around[key]
    if word is None:
        del around[path[-1]]
    else:
        around[path[-1]] = word
    return made


def gear(data: dict[str, Any]) -> Gear:
    facts = build.section("gear", data)
    assert isinstance(facts, GearFacts)
    return Stocked(facts.model.lower(), facts)


def fit(car: dict[str, Any], stock: dict[str, dict[str, Any]], opening: str) -> Fit:
    record = from_data(car)
    vehicle = Vehicle(record, ADDRESS, Stock(tuple(gear(item) for item in stock.values())), clearances())
    return answer(vehicle, record.openings[opening], None, {})[0].fits[0]


def cases() -> Iterator[tuple[str, str, tuple[str, ...], str | None]]:
    """What is blanked, for which opening it is asked, where, and with what word; what the schema refuses cannot come."""
    for opening, kinds in (("dash", ("receiver", "kit")), ("front-door", ("speaker",))):
        near = ("dash",) if opening == "dash" else (opening, "tweeter")
        for path in places(CAR):
            if len(path) > 2 and (path[0] == "sound" or path[1] in near):
                yield from (("car", opening, path, word) for word in (None, "unknown") if _allowed_car(path, word))
        for kind in kinds:
            for path in places(GEAR[kind]):
                yield from (
                    (kind, opening, path, word) for word in (None, "unknown") if _allowed_gear(kind, path, word)
                )


def _allowed_car(path: tuple[str, ...], word: str | None) -> bool:
    if path[0] == "openings" and path[2:] in FILLED_IN:
        return False
    try:
        from_data(blanked(CAR, path, word))
    except (AssertionError, KeyError):
        return False
    return True


def _allowed_gear(kind: str, path: tuple[str, ...], word: str | None) -> bool:
    whole = {"format": "1", "gear": blanked(GEAR[kind], path, word)}
    return not complaints.complaints(replace(read_text("", PATH), data=whole), "gear")


def said(found: Fit) -> str:
    return " ".join(map(say, (found.headline, *found.notes)))


def test_the_clean_pairs_fit() -> None:
    assert fit(CAR, GEAR, "dash").kind == "fits-with"
    assert fit(CAR, GEAR, "front-door").kind == "fits"


@pytest.mark.parametrize(
    ("blank", "opening", "path", "word"),
    list(cases()),
    ids=lambda case: "/".join(case) if isinstance(case, tuple) else str(case),
)
def test_a_blank_is_never_a_plain_yes(blank: str, opening: str, path: tuple[str, ...], word: str | None) -> None:
    car = blanked(CAR, path, word) if blank == "car" else CAR
    stock = GEAR if blank == "car" else {**GEAR, blank: blanked(GEAR[blank], path, word)}
    found = fit(car, stock, opening)
    if found.kind in ("fits", "fits-with"):
        assert excused(path, opening) or any(key in NAMED and NAMED[key] in said(found) for key in path)


def excused(path: tuple[str, ...], opening: str) -> bool:
    return any(key in HARMLESS or f"{key} for {opening}" in HARMLESS for key in path)


def test_enough_is_blanked() -> None:
    """Every field that the schema lets be absent or unknown, in two openings, their gear and the sound system."""
    made = list(cases())
    assert len(made) > 70
    assert sum(word is None for *_, word in made) > 40
    blanks = {field for _, _, path, _ in made for field in path}
    assert {
        "leans",
        "clear_front",
        "panel",
        "least_load",
        "turn_on",
        "output",
        "gasket",
        "magnet",
        "trim",
        "angle",
        "channel",
    } <= blanks


def test_every_exception_is_one() -> None:
    """An entry that excuses nothing goes."""
    fields = {field for _, _, path, _ in cases() for field in path}
    assert {name.split(" for ")[0] for name in (*HARMLESS, *NAMED)} <= fields
