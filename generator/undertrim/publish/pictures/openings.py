"""Draws the openings of a vehicle from its facts."""

from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import Any

import cattrs

from undertrim.publish.encoding import Published
from undertrim.publish.pictures.drawings import bay, dash, front, rings, section
from undertrim.publish.pictures.drawings.bay import Bay
from undertrim.publish.pictures.drawings.dash import Dash
from undertrim.publish.pictures.drawings.front import Front
from undertrim.publish.pictures.drawings.rings import Rings
from undertrim.publish.pictures.drawings.section import Section
from undertrim.words import Value


def openings(drawn: Published, width: int = 320) -> Iterator[tuple[str, str]]:
    """The title and the SVG of each drawing of one opening (`publish.facts.drawn`); `width` in drawing units."""
    for name, (inputs, draw) in _PICTURES.items():
        if name in drawn:
            yield drawn[name]["title"], draw(_converter().structure(drawn[name], inputs), width)


_PICTURES: Mapping[str, tuple[type[Any], Callable[[Any, int], str]]] = {
    "section": (Section, section.door),
    "front": (Front, front.opening),
    "dash": (Dash, dash.opening),
    "bay": (Bay, bay.opening),
    "rings": (Rings, rings.opening),
}
"""What a drawing is made of and how, by its name; they stand in this order."""


@cache
def _converter() -> cattrs.Converter:
    made = cattrs.Converter()
    made.register_structure_hook_func(lambda wanted: wanted == Value, lambda said, _: said)
    return made
