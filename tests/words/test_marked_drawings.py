"""Calculators, drawings and paper templates leave nothing unsaid in another language."""

import html
import re
from collections.abc import Iterator

import marked
import pytest

from undertrim.check.shelf import stock
from undertrim.derive.electrical import ampacity, conductors, fuses
from undertrim.derive.electrical.bounds import Refused
from undertrim.publish.pictures.drawings import dash, front, plugs, section
from undertrim.publish.pictures.drawings.axis import Margin, Section, Speaker
from undertrim.publish.pictures.drawings.dimensions import Measure
from undertrim.publish.pictures.drawings.frames import Dash, Frame
from undertrim.publish.pictures.drawings.shapes import DrawnOutline, Front, Pattern
from undertrim.publish.printed import paper
from undertrim.publish.printed.paper.drawing import drawing
from undertrim.publish.printed.paper.words import text
from undertrim.publish.terminal import electrical as electrical_text
from undertrim.publish.web import calculators
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.resources import table
from undertrim.words import WayOut, say, speaking
from vectors.electrical import CALLS, FIXED, Vector, randoms

UNITS = {*marked.SYMBOLS, "sae", "ah", "cmil", "ft/s", "ms", "cfr", "iacs", "astm", "rms", "mh"}
TYPED = {"mauve", "tin", "inch", "roof", *conductors.SCHEMES, *ampacity.PLACES, *table("electrical-cable")["metals"]}
TYPED |= {fuse.colour for fuse in fuses.fuses()}
TYPED |= {"butterworth", "linkwitz-riley", "bessel"}
"""What is typed, and offered to be typed, is the same in every language."""


@pytest.fixture(autouse=True)
def _another_language() -> Iterator[None]:
    with speaking(marked.language()):
        yield


def latin(text: str) -> set[str]:
    """The Latin words of a text that are no units: stricter than `marked.unmarked`, for nothing here comes from a record."""
    return {word.lower() for word in re.findall(r"[A-Za-z]{2,}(?:[-/][A-Za-z]+)*", text)} - UNITS


def seen(page: str) -> str:
    """What is read on a page or in a drawing, labels that only a screen reader says among it."""
    labels = re.findall(r'(?:placeholder|aria-label)="([^"]*)"', page)
    return html.unescape(" ".join((re.sub(r"<script.*?</script>|<[^>]*>", " ", page, flags=re.DOTALL), *labels)))


def test_the_page_of_the_calculators() -> None:
    assert latin(seen(calculators.page())) == set()


def said(vector: Vector) -> str:
    name, asked = vector
    scheme = {"cable": asked.get("wishes", {}).get("scheme", "awg"), "drop": asked.get("scheme", "")}.get(name, "")
    try:
        return electrical_text.answer_text([CALLS[name](**asked)], scheme)
    except Refused as error:
        return say(error.said) + say(WayOut(error.said))


def test_answers_and_refusals_of_the_calculators() -> None:
    every = " ".join(said(vector) for vector in [*FIXED, *randoms(3, 200)])
    assert latin(every) - TYPED == set()


SIZES = [Measure(), Measure(60, "60 mm")]


def drawings(size: Measure, other: Measure) -> Iterator[str]:
    """Each drawing with sizes that are known or not, in which nothing has a name of its own but the gear."""
    speaker = Speaker("Ω", size, other, size, other, size)
    for datum in ("skin", "bracket", "other"):
        margin = Margin("2 mm", "too close")
        yield section.door(Section("Ω", size, other, size, datum, lean=5, lean_text="5", bracket=other, bracket_stays=True, spacer=size, gasket=other, speaker=speaker, margin_behind=margin, margin_front=margin))  # fmt: skip
    yield section.door(Section("Ω", size, other, size))
    for circle in (True, False):
        holes = Pattern(circle, 6, size, other, 45)
        yield front.opening(
            Front("Ω", DrawnOutline("oval", size, other), holes, gear="Ω", gear_bolts=holes, turned=True)
        )
    frame = Frame(size, other)
    yield dash.opening(Dash("Ω", frame, "Ω", frame, frame, "Ω", frame, frame, size, chassis=other, plug_room=size))


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("other", SIZES)
def test_drawings_of_openings(size: Measure, other: Measure) -> None:
    for drawn in drawings(size, other):
        assert latin(seen(drawn)) == set()


@pytest.mark.parametrize("latch", ["top", "bottom", "left", "right", "none", "unknown"])
def test_faces_of_plugs(latch: plugs.Edge) -> None:
    for side in ("wires", "contacts"):
        assert latin(seen(plugs.face("Ω", side, latch, (1, 1), []))) == set()


def templates() -> Iterator[paper.Template]:
    """Each opening of the shipped records alone, and with the first pieces of gear that can lie over it."""
    shelf = stock(Workspace(marked.ROOT)).items
    for record in (entry.record for entry in marked.records().values()):
        if isinstance(record, VehicleRecord):
            for opening in record.openings.values():
                over = [item for item in shelf if isinstance(item.facts, opening.drawn_with)]
                yield from (paper.Template("a/b", record, opening, gear) for gear in (None, *over[:4]))


def test_paper_templates() -> None:
    assert sum(map(_says_nothing_unmarked, templates())) > 10


def _says_nothing_unmarked(asked: paper.Template) -> bool:
    """False where there is no outline to draw."""
    try:
        drawn = drawing(asked)
    except paper.NotRecorded:
        return False
    words = text(asked, drawn)
    every = " ".join((*words.alerts, words.shows, *drawn.notes))
    name, number = (asked.gear.name, asked.gear.id) if asked.gear else ("", "")
    assert marked.unmarked(every.replace(name, "").replace(number, "")) == []
    return True
