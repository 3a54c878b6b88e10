"""Answers for a whole car: what stands between, disputes, loads and levels. The numbers are worked examples, derived by hand beside them."""

from typing import Any

import pytest

from fitting import CAR, PLAIN, RECEIVER, SPEAKER, all_said, gear, named
from making import record
from undertrim.derive.fit.answers import Answer, Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.words import say


def other(kind: str, model: str, **facts: Any) -> Gear:
    return gear({"kind": kind, "maker": "Tidewrack", "model": model}, **facts)


def sounding(*more: str) -> tuple[str, ...]:
    """The car with what more there is to it, and a sound system that takes 2 ohm where it has no other."""
    return (*more, *(() if any("sound:" in piece for piece in more) else (PLAIN,)))


def answers(opening: str, stock: list[Gear], *more: str, **fixed: str) -> list[Answer]:
    made = record(CAR, *sounding(*more))
    vehicle = Vehicle(made, "brindleway/otter-2014-2018", Stock(tuple(stock)), clearances())
    return answer(vehicle, made.openings[opening], None, fixed)


def one(opening: str, stock: list[Gear], *more: str, **fixed: str) -> Any:
    found = answers(opening, stock, *more, **fixed)
    assert len(found) == 1
    return found[0].fits[0]


AMPLIFIED = """
sound:
  amplified: {output: line, amplifier: Under the seat, turn_on: wire, least_load: 4 ohm}
"""
CONVERTER = other("converter", "Step", takes="speaker", gives="line")


def test_line_level_wants_a_line_output_or_a_converter() -> None:
    found = one("dash", [gear(RECEIVER)], AMPLIFIED)
    assert (found.kind, all_said(found.to_get)) == ("fits-with", ["a line output or level converter"])
    assert any("join the amplifier turn-on" in note for note in all_said(found.notes))
    assert named(one("dash", [gear(RECEIVER), CONVERTER], AMPLIFIED).parts) == ("Tidewrack Step",)
    assert one("dash", [gear(RECEIVER, outputs=["line"]), CONVERTER], AMPLIFIED).parts == ()


def test_a_converter_must_be_fed_what_the_receiver_has() -> None:
    found = one("dash", [gear(RECEIVER, outputs=["digital-ring"]), CONVERTER], AMPLIFIED)
    assert all_said(found.to_get) == ["a line output or level converter"]


@pytest.mark.parametrize(
    ("output", "to_get"),
    [("digital-ring", ("an interface for the digital ring",)), ("speaker", ()), ("unknown", ())],
)
def test_other_outputs(output: str, to_get: tuple[str, ...]) -> None:
    found = one("dash", [gear(RECEIVER)], f"sound: {{only: {{output: {output}}}}}")
    assert all_said(found.to_get) == list(to_get)
    assert any("unknown: look for a factory amplifier" in note for note in all_said(found.notes)) == (
        output == "unknown"
    )


def test_what_wants_the_least_plate_comes_first() -> None:
    """A hole of 130 mm: 117 mm leave 13 to be closed, 50 mm leave 80, though the small one has more room behind and in front."""
    near = gear(
        SPEAKER,
        model="Near",
        basket={"shape": "round", "diameter": "117 mm"},
        bolts={"pattern": "circle", "count": "4", "diameter": "140 mm"},
    )
    small = {
        "basket": {"shape": "round", "diameter": "50 mm"},
        "flange": {"shape": "round", "diameter": "70 mm"},
        "bolts": {"pattern": "circle", "count": "4", "diameter": "62 mm"},
    }
    far = gear(SPEAKER, model="Far", **small, depth="20 mm", protrusion="2 mm")
    fits = answers("front-door", [far, near])[0].fits
    assert [(fit.name, fit.kind, fit.bridged) for fit in fits] == [
        ("Skerrowe Near", "fits-with", 13),
        ("Skerrowe Far", "fits-with", 80),
    ]
    assert gear(SPEAKER).id == one("front-door", [far, near, gear(SPEAKER)]).gear  # what needs none comes before both


def test_speakers_on_a_line_only_receiver_want_an_amplifier() -> None:
    found = one("dash", [gear(RECEIVER, outputs=["line"])], "sound: {only: {output: speaker}}")
    assert all_said(found.to_get) == ["an amplifier"]


DATA = """
functions:
  reverse: {by: data}
  illumination: {by: data}
duties:
  chime: {kept_by: interface}
  map: {kept_by: none}
"""
SUITS = [{"vehicle": "brindleway/otter-2014-2018", "opening": "dash"}]


def test_functions_by_data_want_an_interface() -> None:
    wants = gear(RECEIVER, needs=["reverse", "illumination"])
    found = one("dash", [wants], DATA)
    bell = "an interface that keeps the chime"
    assert all_said(found.to_get) == ["an interface for reverse, illumination", bell]
    partly = other("interface", "Half", suits=SUITS, provides=["reverse"])
    assert all_said(one("dash", [wants, partly], DATA).to_get) == ["an interface for illumination", bell]
    whole = other("interface", "Whole", suits=SUITS, provides=["reverse", "illumination"])
    assert named(one("dash", [wants, partly, whole], DATA).parts) == ("Tidewrack Whole",)


def test_an_interface_that_keeps_a_duty_is_among_the_parts() -> None:
    keeper = other("interface", "Bell", suits=SUITS, provides=["mute"], keeps=["chime"])
    found = one("dash", [gear(RECEIVER), keeper], DATA)
    assert named(found.parts) == ("Tidewrack Bell",)
    assert "chime: kept by Tidewrack Bell" in all_said(found.notes)
    lost = one("dash", [gear(RECEIVER)], DATA)
    assert lost.kind == "stop"
    assert "chime: LOST, needs an interface, none in stock keeps it" in say(lost.headline)


CONFLICT = """
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: one}
  e2: {how: measured, on: 2026-03-03, by: tw, car: other}
conflicts:
  depth:
    about: openings/front-door/depth/clear
    claims:
      - {says: 62 mm, source: e1}
      - {says: 60 mm, source: e2}
"""


def test_an_open_dispute_is_reckoned_with_the_cautious_value() -> None:
    """60 - 58 - 3 leaves 1 mm short, to be had by a spacer; 62 would leave 1 mm over."""
    found = one("front-door", [gear(SPEAKER)], CONFLICT)
    assert (found.kind, len(found.to_get)) == ("fits-with", 1)
    assert (
        "on the mounting face: does not fit: Depth behind the flange: 1 mm (0.039 in) short, ± 0.71 mm (0.028 in)"
        in all_said(found.notes)
    )
    assert "the evidence disagrees on clear depth: measure again; reckoned with 60 mm" in all_said(found.notes)
    settled = CONFLICT + "    settled_by: e1\n"
    assert one("front-door", [gear(SPEAKER)], settled).kind == "fits"


def test_a_misfit_names_the_nearest_that_fits() -> None:
    deep = gear(SPEAKER, model="Deep", depth="90 mm")
    near, far = gear(SPEAKER, model="Near", depth="57 mm"), gear(SPEAKER, model="Far", depth="40 mm")
    fits = answers("front-door", [deep, far, near])[0].fits
    assert {fit.gear: fit.nearest for fit in fits} == {
        "skerrowe-deep": "skerrowe-near",
        "skerrowe-near": "",
        "skerrowe-far": "",
    }
    alone = answers("front-door", [deep])[0].fits[0]
    assert alone.nearest == ""


def test_what_the_opening_takes_in_words() -> None:
    """62 - 3 behind, 20 - 3 before, 130 + 2 x 5 round the hole; together 62 + 20 - 3 - 3."""
    takes = all_said(answers("front-door", [])[0].takes)
    assert tuple(takes) == (
        "basket up to 130 mm (5.12 in)",
        "flange from 140 mm (5.51 in)",
        "mounting depth up to 59 mm (2.32 in)",
        "cone out to 17 mm (0.67 in)",
        "on a spacer, mounting depth and cone together up to 76 mm (2.99 in)",
    )
