"""Receivers against openings in the dash. The numbers are worked examples, derived by hand from the formulas beside them."""

from dataclasses import replace
from typing import Any

import pytest

from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds.receiver import fit as receiver
from undertrim.derive.fit.kinds.receiver.takes import limits
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Blank, Depth, Face
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.record.units import parse
from undertrim.words import say

USUAL = clearances()


def face(width: str, height: str) -> Face:
    return Face(parse(f"{width} mm", "length"), parse(f"{height} mm", "length"))


def dash(height: str, depth: str, kit: str = "not-needed", **other: Any) -> ReceiverOpening:
    facts: dict[str, Any] = {
        "face": face("182", height),
        "depth": Depth(parse(f"{depth} mm", "length"), "face"),
        "clear_front": face("300", "200"),
        **other,
    }
    return ReceiverOpening("dash", "Dash", (), kit=kit, **facts)


def gear(height: str = "50", depth: str = "160", **other: Any) -> Stocked[ReceiverGear]:
    usual: dict[str, Any] = {"trim": face("200", "120"), "plug_room": parse("30 mm", "length")}
    sizes: dict[str, Any] = {"body": face("180", height), "chassis_depth": parse(f"{depth} mm", "length")}
    return Stocked("cleft", ReceiverGear("Sandmartin", "Cleft", **{**usual, **sizes, **other}))


def kit(height: str) -> Stocked[KitGear]:
    return Stocked("kit", KitGear("Pellworth", "Dale", opening=face("182", height), contains=("Frame",)))


def fit(item: Stocked[ReceiverGear], opening: ReceiverOpening, *kits: Stocked[KitGear]) -> Fit:
    return receiver.fit(item, opening, kits, USUAL)


def margins(found: Fit) -> dict[str, float | None]:
    return {check.name: check.margin for check in found.checks}


# opening - body on each axis; clear depth - chassis - 30 for the plugs
@pytest.mark.parametrize(
    ("opening", "item", "up", "depth", "kind"),
    [
        (dash("53", "200"), gear(), 3, 10, "fits"),
        (dash("53", "175"), gear(), 3, -15, "does-not-fit"),
        (dash("53", "175"), gear(depth="100"), 3, 45, "fits"),
        (dash("53", "200"), gear(height="100"), -47, 10, "does-not-fit"),
        (dash("103", "200"), gear(), 53, 10, "fits"),
    ],
)
def test_body_and_depth(
    opening: ReceiverOpening, item: Stocked[ReceiverGear], up: float, depth: float, kind: str
) -> None:
    found = fit(item, opening)
    assert {name: margins(found)[name] for name in ("body-across", "body-up", "depth")} == pytest.approx(
        {"body-across": 2, "body-up": up, "depth": depth}
    )
    assert found.kind == kind


def test_the_binding_failure_comes_first() -> None:
    found = fit(gear(height="100"), dash("53", "175"))
    assert say(found.headline) == "does not fit: Body in the opening, up: 47 mm (1.85 in) short, ± 0.71 mm (0.028 in)"


def test_height_left_over_wants_a_filler() -> None:
    assert "53 mm (2.09 in) of height left over: a filler or a pocket closes it" in [
        *map(say, fit(gear(), dash("103", "200")).notes)
    ]
    assert fit(gear(), dash("53", "200")).notes == ()


def test_the_usual_plug_room_is_shown_as_such() -> None:
    depth = next(check for check in fit(gear(plug_room=None), dash("53", "200")).checks if check.name == "depth")
    assert [(number.value, number.default) for number in depth.numbers] == [(200, False), (160, False), (30, True)]
    own = fit(gear(plug_room=parse("40 mm", "length")), dash("53", "200"))
    assert margins(own)["depth"] == pytest.approx(0)


def test_a_sleeve_wants_a_millimetre() -> None:
    tight = Face(parse("180.5 mm", "length"), parse("53 mm", "length"))
    body = Face(parse("180.0 mm", "length"), parse("50 mm", "length"))
    item = gear(depth="90", body=body)
    found = fit(item, dash("53", "200", face=tight))
    assert found.kind == "fits"
    assert any("no room for a sleeve: 0.5 mm" in note for note in map(say, found.notes))


def test_a_kit_brings_its_own_opening() -> None:
    found = fit(gear(height="100"), dash("128", "200", "needed"), kit("103"))
    assert (found.kind, say(found.headline)) == ("fits-with", "fits with Pellworth Dale")
    assert margins(found)["body-up"] == pytest.approx(3)
    assert "in the box of Pellworth Dale: Frame" in [*map(say, found.notes)]
    assert fit(gear(height="100"), dash("128", "200", "needed"), kit("96")).kind == "does-not-fit"


def test_a_kit_that_is_not_in_stock() -> None:
    found = fit(gear(height="100"), dash("128", "200", "needed"))
    assert (found.kind, say(found.headline)) == ("fits-with", "fits with a kit: none in stock suits")
    assert fit(gear(), dash("128", "175", "needed")).kind == "does-not-fit"


@pytest.mark.parametrize("said", ["unknown", ""])
def test_whether_a_kit_is_needed_must_be_known(said: str) -> None:
    found = fit(gear(), dash("53", "200", said))
    assert found.kind == "unknown"
    assert "whether a kit is needed" in say(found.headline)
    assert fit(gear(), dash("53", "200", said), kit("53")).kind == "fits-with"


@pytest.mark.parametrize(
    ("other", "missing"),
    [
        ({"depth": Depth(Blank.UNKNOWN, "face")}, "clear depth (unknown)"),
        ({"depth": Depth(parse("200 mm", "length"), datum="bracket")}, "measured from the bracket"),
        ({"face": Face(Blank.UNKNOWN, parse("53 mm", "length"))}, "opening width (unknown)"),
    ],
)
def test_what_is_missing_is_named(other: dict[str, Any], missing: str) -> None:
    found = fit(gear(), replace(dash("53", "200"), **other))
    assert found.kind == "unknown"
    assert missing in say(found.headline)


# ISO 7736:1984 (secondary text): bodies of 180 x 50 and 180 x 100 mm
@pytest.mark.parametrize(
    ("height", "said"),
    [
        ("53", "single height (180 × 50 mm, ISO 7736) goes in; double height (180 × 100 mm, ISO 7736) does not go in"),
        ("103", "single height (180 × 50 mm, ISO 7736) goes in; double height (180 × 100 mm, ISO 7736) goes in"),
        (
            "49",
            "single height (180 × 50 mm, ISO 7736) does not go in; double height (180 × 100 mm, ISO 7736) does not go in",
        ),
    ],
)
def test_the_heights_of_the_standard(height: str, said: str) -> None:
    assert said in [*map(say, limits(dash(height, "200"), USUAL))]


def test_a_trim_within_the_opening_needs_no_room_around_it() -> None:
    """182 x 53: a trim of 190 may strike what nobody measured, one of 180 x 50 stays inside."""
    small, wide = face("180", "50"), face("190", "58")
    assert fit(gear(trim=small), dash("53", "200", clear_front=None)).kind == "fits"
    found = fit(gear(trim=wide), dash("53", "200", clear_front=None))
    assert found.kind == "unknown"
    assert "clear room in front, width (not recorded)" in say(found.headline)
    unseen = fit(gear(trim=None), dash("53", "200"))
    assert unseen.kind == "unknown"
    assert "trim or screen before the dash (not recorded)" in say(unseen.headline)


def test_a_kit_that_is_larger_than_the_opening_of_the_car_does_not_fit() -> None:
    """A frame of just the size is usual."""
    assert fit(gear(height="100"), dash("103", "200", "needed"), kit("103")).kind == "fits-with"
    found = fit(gear(height="100"), dash("100", "200", "needed"), kit("103"))
    assert say(found.headline).startswith(
        "does not fit with Pellworth Dale: Opening of Pellworth Dale within the opening of the car, up: 3 mm"
    )


def test_a_depth_without_its_face_cannot_be_told() -> None:
    found = fit(gear(), replace(dash("53", "200"), depth=Depth(parse("200 mm", "length"))))
    assert found.kind == "unknown"
    assert "from which face it was measured is not recorded" in say(found.headline)
