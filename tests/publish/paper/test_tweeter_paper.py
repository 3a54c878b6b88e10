"""The template of a tweeter's place: what is measured of it in true size, and the one mount that goes there."""

import pytest

from fitting import CAR, gear
from making import record
from undertrim.publish.printed.paper.drawing import NotRecorded, Template, drawing
from undertrim.publish.printed.paper.layout import Circle

TWEETER = {
    "kind": "tweeter",
    "maker": "Skerrowe",
    "model": "Spray",
    "mounts": [
        {"mount": "flush", "diameter": "43 mm", "depth": "15 mm", "over": "3 mm", "rim": "50 mm"},
        {"mount": "surface", "diameter": "54 mm", "depth": "none", "over": "19 mm"},
    ],
    "impedance": "4 ohm",
    "high_pass": {"frequency": "3000 Hz", "filter_order": "first", "power": "60 W"},
}


def across(place: str) -> list[float]:
    """The diameters of all circles, in mm."""
    made = record(f"{CAR.rstrip()}\n  sail: {{kind: tweeter, behind: [radio], {place}}}\n")
    found = drawing(Template("brindleway/otter-2014-2018", made, made.openings["sail"], gear(TWEETER)))
    return [2 * shape.radius for shape in found.shapes if isinstance(shape, Circle)]


@pytest.mark.parametrize(
    ("place", "circles"),
    [
        ("mount: flush, cut_out: 44 mm", [44, 43, 50]),
        ("mount: angled, angle: 20 deg, cup: {diameter: 45 mm, depth: 16 mm}", [45, 43, 50]),
        ("mount: surface, flat: 60 mm", [60, 54]),
        ("mount: unknown, cut_out: 44 mm", [44, 43, 50, 54]),
    ],
)
def test_it_is_drawn_in_true_size(place: str, circles: list[float]) -> None:
    assert across(place) == circles


def test_a_place_of_which_nothing_is_measured_has_no_template() -> None:
    with pytest.raises(NotRecorded, match="cut-out, cup or flat face"):
        across("mount: flush, cut_out: unknown")
