"""Templates of small openings, with and without gear, and what is stroked on their sheets."""

import io
from functools import cache
from typing import Any

import pytest
from pdf_strokes import Stroke, Walker
from pypdf import PdfReader

from making import record
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.publish.printed import paper
from undertrim.publish.printed.paper import A4, LETTER, Paper, Template
from undertrim.record import build

CLOSE = pytest.approx
EXACT = 0.002  # mm; numbers in the file are 32-bit floats

ABOUT = record("""
    vehicle: {high_voltage: yes}
    parts: {panel: {}}
    openings:
      front-door:
        behind: [panel]
        crash_sensor: unknown
        hole: {shape: round, diameter: 119 mm}
        bolts: {pattern: circle, count: 4, diameter: 135 mm}
      rear-door:
        behind: [panel]
        hole: {shape: round, diameter: 138 mm}
        bolts: {pattern: circle, count: 3, diameter: 154 mm}
      side:
        behind: [panel]
        hole: {shape: round, diameter: 116 mm}
        bolts: {pattern: rectangle, count: 4, width: 92 mm, height: 92 mm}
      corner:
        behind: [panel]
        hole: {shape: oval, width: 153 mm, height: 223 mm}
        bolts: {pattern: rectangle, count: 4, width: 110 mm, height: 165 mm}
      shelf: {behind: [panel], hole: {shape: rectangle, width: 300 mm, height: 320 mm}}
      dash: {behind: [panel], face: {width: 248 mm, height: 146 mm}}
""")


def gear(**facts: Any) -> Gear:
    return Stocked(
        "tidewrack-x", build.gear({"format": "1", "gear": {"maker": "Tidewrack", "model": "X", **facts}}).gear
    )


GEAR = {
    "": None,
    "round": gear(
        kind="speaker",
        basket={"shape": "round", "diameter": "115 mm"},
        flange={"shape": "round", "diameter": "146 mm"},
        bolts={"pattern": "circle", "count": "4", "diameter": "135 mm"},
    ),
    "oval": gear(
        kind="speaker",
        basket={"shape": "oval", "width": "150 mm", "height": "220 mm"},
        flange={"shape": "oval", "width": "166 mm", "height": "237 mm"},
        bolts={"pattern": "rectangle", "count": "4", "width": "110 mm", "height": "165 mm"},
    ),
    "receiver": gear(kind="receiver", body={"width": "180 mm", "height": "100 mm"}),
    "plate": gear(
        kind="spacer",
        hole={"shape": "round", "diameter": "115 mm"},
        car_bolts={"pattern": "circle", "count": "3", "diameter": "154 mm"},
    ),
}


@cache
def made(opening: str, over: str = "", on: Paper = A4, margin: float = 10) -> bytes:
    return paper.render(Template("brindleway/otter-2014-2018", ABOUT, ABOUT.openings[opening], GEAR[over]), on, margin)


def walked(data: bytes) -> list[Walker]:
    return [Walker(page) for page in PdfReader(io.BytesIO(data)).pages]


def sized(walker: Walker, width: float, height: float) -> list[Stroke]:
    return [path for path in walker.paths if path.size == CLOSE((width, height), abs=EXACT)]


SMALL, OVAL, DASH = ("front-door", "round"), ("corner", "oval"), ("dash", "receiver")
ALL = pytest.mark.parametrize("asked", [SMALL, OVAL, DASH], ids=["round", "oval", "dash"])
PAPERS = pytest.mark.parametrize("on", [A4, LETTER], ids=["a4", "letter"])
