"""Draws the openings of a vehicle from its facts."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import cattrs

from undertrim.publish.drawings import dash, front, section
from undertrim.publish.drawings.dash import Dash
from undertrim.publish.drawings.front import Front
from undertrim.publish.drawings.section import Section

Facts = Mapping[str, Any]


def openings(drawn: Facts, width: int = 320) -> Iterator[tuple[str, str]]:
    """The title and the SVG of each drawing of one opening (`publish.facts.drawn`); `width` in drawing units."""
    if "section" in drawn:
        yield drawn["section"]["title"], section.door(_converter().structure(drawn["section"], Section), width)
    if "front" in drawn:
        yield drawn["front"]["title"], front.opening(_converter().structure(drawn["front"], Front), width)
    if "dash" in drawn:
        yield drawn["dash"]["title"], dash.opening(_converter().structure(drawn["dash"], Dash), width)


@cache
def _converter() -> cattrs.Converter:
    return cattrs.Converter()
