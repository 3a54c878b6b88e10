"""How words are set on a template: any text stays text, in its width, on the paper, and can be read aloud."""

import io
import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import typst
from pypdf import PdfReader
from template_words import ADDRESS, said, small

from making import record
from undertrim.derive.fit.stock import Stocked
from undertrim.publish.facts.vehicle import vehicle
from undertrim.publish.printed import paper, pdf
from undertrim.publish.printed.paper import A4, LETTER, Paper, Template, metrics
from undertrim.publish.printed.paper.drawing import drawing
from undertrim.publish.printed.paper.sheets import pages
from undertrim.publish.printed.paper.words import text
from undertrim.publish.printed.sheet import glyphs
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.store import Workspace

SPACE = Workspace.holding(Path(__file__))


HOSTILE = [
    '#read("/etc/passwd")',
    "$x$ *b* _i_ <label> @ref",
    "日本 \U0001f600",
    "Windscreenpillartrim" * 6,
    "]]}) // c",
]


@pytest.mark.parametrize("on", [A4, LETTER], ids=["a4", "letter"])
@pytest.mark.parametrize("words", HOSTILE)
def test_any_text_stays_text_and_on_the_paper(words: str, on: Paper) -> None:
    about = record("""
        parts: {panel: {}}
        openings:
          front-door: {behind: [panel], hole: {shape: round, diameter: 146 mm}}
    """)
    asked = Template(words, about, about.openings["front-door"], Stocked("x", SpeakerGear(words, words)))
    drawn = drawing(asked)
    for page in pages(text(asked, drawn), drawn, on, 25):
        for shape in page.shapes:
            box = shape.bounds
            assert min(box.left, box.top) >= 25 - 1e-6
            assert box.right <= on.width - 25 + 1e-6
            assert box.bottom <= on.height - 25 + 1e-6
    whole = re.sub(r"\s", "", "".join(said(asked, on)))
    assert re.sub(r"[\s\u200b]", "", glyphs.text(words)) in whole
    assert "root:" not in whole


def test_too_much_to_say_is_refused_with_the_way_out() -> None:
    asked = small("hole: {shape: round, diameter: 146 mm}", gear=Stocked("x" * 4000, SpeakerGear("P", "X")))
    opening = small("hole: {shape: round, diameter: 146 mm}").opening
    assert isinstance(opening, SpeakerOpening)
    basket = opening.hole
    told = Template(ADDRESS, asked.record, asked.opening, Stocked("word " * 2000, SpeakerGear("P", "X", basket=basket)))
    with pytest.raises(paper.NoRoom, match="smaller margin"):
        paper.render(told)


def test_pdf_ua() -> None:
    # ISO 14289-1: the identifier in the metadata, a tagged document, its language, its title shown, figures described.
    asked = small("hole: {shape: oval, width: 153 mm, height: 223 mm}")
    reader = PdfReader(io.BytesIO(paper.render(asked)))
    catalogue: Any = reader.root_object
    assert "<pdfuaid:part>1</pdfuaid:part>" in catalogue["/Metadata"].get_object().get_data().decode()
    assert catalogue["/MarkInfo"]["/Marked"]
    assert catalogue["/Lang"] == "en"
    assert catalogue["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata is not None
    assert reader.metadata.title == "Brindleway Otter 2014–2018: template, Front door"
    described = [alt for alt in alternates(catalogue["/StructTreeRoot"]) if "drawing in true size" in alt]
    assert len(described) == 2
    assert "Solid line: hole of the car, oval, 153 mm" in described[0]


def alternates(node: Any) -> list[str]:
    """The alternate descriptions in a structure tree."""
    node = node.get_object()
    if isinstance(node, list):
        return [alt for child in node for alt in alternates(child)]
    if not isinstance(node, dict):
        return []
    own = [str(node["/Alt"])] if "/Alt" in node else []
    return own + (alternates(node["/K"]) if "/K" in node else [])


def test_a_template_does_not_change_the_next_sheet() -> None:
    facts = vehicle(SPACE.load(SPACE.records / "vehicles/tolverne/gant-1998-2003.yaml"))
    before = pdf.render(facts, {"fitting": "https://undertrim.invalid/x.html"}, "a4", date(2026, 5, 4))
    paper.render(small("hole: {shape: round, diameter: 146 mm}"))
    assert pdf.render(facts, {"fitting": "https://undertrim.invalid/x.html"}, "a4", date(2026, 5, 4)) == before


@pytest.mark.parametrize(("weight", "bold"), [("regular", False), ("bold", True)])
@pytest.mark.parametrize(
    "words", ["Front door speakers, 146 mm (5.75 in) [e2, e4]", "WARNING Wavy – × “fi”", "iiii 1111"]
)
def test_widths_are_those_of_the_layout_engine(words: str, weight: str, bold: bool) -> None:
    # Typst's own `measure`, kerning and ligatures off.
    source = f"""
        #set text(font: "Source Sans Pro", size: 9pt, weight: "{weight}", kerning: false, ligatures: false, fallback: false)
        #context [#metadata(measure(text(sys.inputs.words)).width.mm()) <wide>]
    """
    fonts = typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(glyphs.folder())])
    inputs = {"words": words}
    found = typst.query(
        source.encode(),
        "<wide>",
        field="value",
        one=True,
        sys_inputs=inputs,
        font_paths=fonts,
        ignore_system_fonts=True,
    )
    assert metrics.face("Semibold" if bold else "Regular").width(words, 9) == pytest.approx(float(found), abs=0.01)


def test_lines_are_broken_at_spaces_and_in_long_words() -> None:
    words = glyphs.text("The quick brown fox jumps over the lazy dog and a Windscreenpillartrimfastenerclip stays.")
    lines = metrics.wrapped(words, 30, 8)
    assert all(metrics.face("Regular").width(line, 8) <= 30 for line in lines)
    assert re.sub(r"[\s\u200b]", "", "".join(lines)) == re.sub(r"[\s\u200b]", "", words)
    assert len(lines) >= 4
    assert metrics.wrapped("short", 30, 8) == ("short",)
