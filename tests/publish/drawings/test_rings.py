"""A tweeter's place from the front: circles to one scale about one middle."""

import re

from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.pictures.drawings.rings import Ring, Rings, opening


def drawn(*rings: Ring) -> dict[str, float]:
    """The radius of each part in drawing units."""
    found = re.findall(r'<path [^>]*d="([^"]*)"[^>]*data-part="([a-z-]+)"', opening(Rings("Sail", rings, ("More.",))))
    return {part: float(arc[1]) for path, part in found if (arc := re.search(r"A ?([\d.]+)", path))}


def test_circles_are_to_one_scale() -> None:
    radii = drawn(Ring("cut-out", "cut-out", Measure(40, "40 mm")), Ring("rim", "rim", Measure(50, "50 mm")))
    assert round(radii["cut-out"] / radii["rim"], 2) == 0.8


def test_what_is_not_known_is_said_and_not_drawn() -> None:
    svg = opening(Rings("Sail", (Ring("cut-out", "cut-out", Measure(40, "40 mm")), Ring("rim", "rim of it", UNKNOWN))))
    assert 'data-part="rim"' not in svg
    assert "rim of it: not recorded" in svg
