"""A place for an amplifier from above and from the front: to scale, the gear turned as it fits, what is unknown said."""

import re
from dataclasses import replace

from undertrim.publish.pictures.drawings import bay
from undertrim.publish.pictures.drawings.bay import Bay, Cuboid
from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure


def mm(value: float) -> Measure:
    return Measure(value, f"{value:g} mm")


PLACE = Bay("Place", Cuboid(mm(400), mm(100), mm(300)), "Weir", Cuboid(mm(200), mm(50), mm(150)))


def sizes(drawn: str, part: str) -> list[tuple[float, float]]:
    """Width and height of each rectangle of a part, as this package writes them: M x y h w v h."""
    paths = re.findall(rf'<path(?=[^>]*data-part="{part}")[^>]*? d="([^"]*)"', drawn)
    numbers = [[float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", path)] for path in paths]
    return [(found[2], abs(found[3])) for found in numbers]


def test_both_views_are_to_one_scale() -> None:
    """400 x 300 from above, 400 x 100 from the front; the amplifier half of it each way."""
    drawn = bay.opening(PLACE)
    (above, front), (over, before) = sizes(drawn, "space"), sizes(drawn, "box")
    assert above[0] / above[1] == 4 / 3
    assert front[0] == above[0]
    assert abs(front[0] / front[1] - 4) < 0.02
    assert abs(above[0] / over[0] - 2) < 0.02
    assert abs(front[1] / before[1] - 2) < 0.02


def test_what_is_not_measured_is_said_and_not_drawn() -> None:
    unknown = replace(PLACE, space=Cuboid(UNKNOWN, UNKNOWN, UNKNOWN), box=None)
    drawn = bay.opening(unknown)
    assert sizes(drawn, "space") == []
    assert "not measured" in drawn


def test_without_gear_the_space_stands_alone() -> None:
    drawn = bay.opening(replace(PLACE, gear="", box=None))
    assert sizes(drawn, "box") == []
    assert "turned as it fits" not in drawn
