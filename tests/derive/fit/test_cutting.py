"""Spacers and kits that want cutting are offered only where something may be cut."""

from dataclasses import replace

import pytest

from fitting import named
from making import record
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock, Stocked
from undertrim.publish.facts.fit_page import form
from undertrim.record.model import Blank, Bolts, Hole
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.record.units import Quantity, parse
from undertrim.words import say


def mm(text: str) -> Quantity:
    return parse(f"{text} mm", "length")


BOLTS = Bolts("circle", 4, diameter=mm("156"))
SPEAKER = Stocked(
    "shoal",
    SpeakerGear("Skerrowe", "Shoal", basket=Hole("round", diameter=mm("127")), flange=Hole("round", diameter=mm("165")),
        bolts=BOLTS, depth=mm("63"), protrusion=mm("8"), gasket=Blank.NONE,
        impedance=parse("4 ohm", "resistance"),
    ),
)  # fmt: skip
CAR = """
    vehicle: {high_voltage: HIGH}
    areas: {AREA: {restraints: [Belt reel], high_voltage: clear}, rear-door: {high_voltage: WHERE}}
    parts: {panel: {}}
    sound: {factory: {output: speaker, least_load: 4 ohm}}
    openings:
      rear-door:
        behind: [panel]
        area: rear-door
        hole: {shape: round, diameter: 130 mm}
        bolts: {pattern: circle, count: 4, diameter: 156 mm}
        depth: {clear: 62 mm, datum: skin, over: no-glass, leans: none}
        panel: {width: 300 mm, height: 300 mm}
        room_to_grille: 20 mm
        impedance: 4 ohm
        channel: rear
        factory_spacer: none
        crash_sensor: SENSOR
"""


def parts(alters: tuple[str, ...], **changed: str) -> tuple[tuple[str, ...], int, bool]:
    """What goes between, whether the page may put it there, and whether it is said that it alters the car."""
    text = CAR
    for word, value in {"SENSOR": "no", "AREA": "boot", "HIGH": "no", "WHERE": "clear", **changed}.items():
        text = text.replace(word, value)
    ring = SpacerGear("Pellworth", "Ring", thickness=mm("6"), hole=Hole("round", diameter=mm("128")), flange=Hole("round", diameter=mm("176")),
        bolts=BOLTS, alters=alters,
    )  # fmt: skip
    vehicle = Vehicle(record(text), "brindleway/otter-2014-2018", Stock((SPEAKER, Stocked("ring", ring))), clearances())
    opening = vehicle.record.openings["rear-door"]
    fit = answer(vehicle, opening, [SPEAKER], {})[0].fits[0]
    return (
        named(fit.parts),
        int(not (alters and form(vehicle, opening).uncut)),
        any("alters the car: cut" in note for note in map(say, fit.notes)),
    )


def test_what_needs_no_cutting_goes_anywhere() -> None:
    assert parts((), SENSOR="yes") == (("Pellworth Ring",), 1, False)


def test_what_needs_cutting_goes_where_it_may_be_and_says_so() -> None:
    assert parts(("cut",)) == (("Pellworth Ring",), 1, True)


@pytest.mark.parametrize(
    "changed",
    [{"SENSOR": "yes"}, {"SENSOR": "unknown"}, {"HIGH": "yes", "WHERE": "near"}, {"HIGH": "yes", "WHERE": "unknown"}],
)
def test_what_needs_cutting_is_not_offered_elsewhere(changed: dict[str, str]) -> None:
    assert parts(("cut",), **changed) == ((), 0, False)


def test_what_another_ring_of_the_same_name_would_do_to_the_car_is_not_said() -> None:
    """Two revisions under one name: gear is told apart by its record."""
    plain = SpacerGear("Pellworth", "Ring", thickness=mm("6"), hole=Hole("round", diameter=mm("128")), flange=Hole("round", diameter=mm("176")), bolts=BOLTS)  # fmt: skip
    cutting = replace(plain, alters=("cut",), hole=Hole("round", diameter=mm("60")))
    text = CAR
    for word, value in {"SENSOR": "no", "AREA": "boot", "HIGH": "no", "WHERE": "clear"}.items():
        text = text.replace(word, value)
    shelf = Stock((SPEAKER, Stocked("ring", plain), Stocked("ring-2", cutting)))
    vehicle = Vehicle(record(text), "brindleway/otter-2014-2018", shelf, clearances())
    fit = answer(vehicle, vehicle.record.openings["rear-door"], [SPEAKER], {})[0].fits[0]
    assert [part.id for part in fit.parts] == ["ring"]
    assert not any("alters the car" in note for note in map(say, fit.notes))
