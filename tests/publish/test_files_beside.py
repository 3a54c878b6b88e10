"""What is printed of a vehicle: in the papers of its collection, all templates in one file, and links that lead to what is there."""

import io
import re
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from small_site import ROOT

from undertrim.derive.fit.joining import Joining
from undertrim.derive.fit.stock import NOTHING
from undertrim.publish.build import beside
from undertrim.publish.build.keyed import keys
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.printed import paper, pdf
from undertrim.publish.web import pages
from undertrim.record.digests import Digests
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.store import Workspace

URL = "https://undertrim.example/"
FINCH = ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml"
DROVER = ROOT / "records/vehicles/ashgrove/drover-2015-2020.yaml"
SIZES = {"a4": (595.3, 841.9), "letter": (612.0, 792.0)}
BOTH = tuple(SIZES)


@cache
def known(path: Path = FINCH) -> tuple[VehicleRecord, dict[str, Any]]:
    entry = Workspace(ROOT).load(path)
    assert isinstance(entry.record, VehicleRecord)
    return entry.record, dict(facts.vehicle(entry))


def finch() -> tuple[VehicleRecord, dict[str, Any]]:
    return known()


def printing(*papers: str) -> beside.Printing:
    return beside.printing(*finch(), papers)


def made(monkeypatch: pytest.MonkeyPatch, *papers: str) -> dict[str, bytes]:
    """The files to print, the sheet of facts as the name of its paper."""
    monkeypatch.setattr(pdf, "render", lambda _facts, _urls, size, _day: size.encode())
    return dict(beside.sheets(printing(*papers), finch()[1], URL, date(2026, 11, 26)))


def links(body: str) -> list[str]:
    return re.findall(r'href="([^"]+\.pdf[^"]*)"', body)


@pytest.mark.parametrize("papers", [("a4",), ("letter",), BOTH, BOTH[::-1]])
def test_each_paper_of_the_collection_has_its_files_and_no_other(
    papers: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    found = made(monkeypatch, *papers)
    sorts = ("", "-templates")
    assert list(found) == [f"finch-2014-2018{sort}-{name}.pdf" for name in papers for sort in sorts]
    for name in papers:
        assert found[f"finch-2014-2018-{name}.pdf"] == beside.PAPERS[name].encode()
        box = PdfReader(io.BytesIO(found[f"finch-2014-2018-templates-{name}.pdf"])).pages[0].mediabox
        assert (box.width, box.height) == pytest.approx(SIZES[name], abs=0.1)


@pytest.mark.parametrize("papers", [("letter",), BOTH])
def test_the_page_leads_to_all_that_is_printed_and_to_nothing_else(
    papers: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    body = "".join(pages.vehicle(finch()[1], printing(*papers).downloads).values())
    assert {link.partition("#")[0] for link in links(body)} == made(monkeypatch, *papers).keys()


def test_a_link_leads_to_the_page_on_which_its_opening_begins(monkeypatch: pytest.MonkeyPatch) -> None:
    record, _ = finch()
    wanted = printing("a4").downloads.templates
    sheets = PdfReader(io.BytesIO(made(monkeypatch, "a4")["finch-2014-2018-templates-a4.pdf"])).pages
    texts = [" ".join(page.extract_text().split()) for page in sheets]
    begins = {}
    for opening, (link,) in wanted.items():
        begins[int(link.href.partition("#page=")[2])] = record.openings[opening].name
    assert len(begins) > 2
    assert [at + 1 for at, text in enumerate(texts) if "page 1 of" in text] == sorted(begins)
    name = ""
    for number, text in enumerate(texts, 1):  # every sheet says what it shows, also where the opening needs several
        name = begins.get(number, name)
        assert f"True-scale template: {name}" in text


def test_a_template_in_the_file_of_all_is_as_by_itself() -> None:
    record, about = known(DROVER)
    wanted = beside.printing(record, about, ("a4",))
    found = PdfReader(io.BytesIO(paper.printed(wanted.templates["a4"].values(), paper.A4, "All")))
    (link,) = wanted.downloads.templates["bass"]
    begin = int(link.href.partition("#page=")[2]) - 1
    alone = PdfReader(io.BytesIO(paper.render(paper.Template(about["address"], record, record.openings["bass"]))))
    assert begin > 0
    assert len(alone.pages) > 1
    for at, page in enumerate(alone.pages):
        assert _drawn(page)
        # Which words the pages share a subset of a font with changes the codes of their letters, and no place of anything.
        assert _drawn(found.pages[begin + at]) == _drawn(page)
        assert found.pages[begin + at].extract_text() == page.extract_text()


def _drawn(page: Any) -> list[Any]:
    """Every line and curve of a page as it is drawn, with what moves or scales it."""
    return [
        (operator, [float(number) for number in numbers])
        for numbers, operator in page.get_contents().operations
        if operator in (b"m", b"l", b"c", b"re", b"cm", b"w", b"Tm")
    ]


def test_nobody_is_given_six_sheets_to_glue_for_a_plain_floor() -> None:
    record, about = finch()
    floors = {name for name, opening in record.openings.items() if isinstance(opening, AmplifierOpening)}
    assert floors
    assert not floors & printing("a4").templates["a4"].keys()
    for name in floors:
        template = paper.Template(about["address"], record, record.openings[name])
        assert len(paper.laid_out(template).pages) > 1  # asked for, it is made
        small = paper.Paper("a2", 420, 594)
        assert paper.prepared(template, small) == paper.laid_out(template, small)  # of one sheet it is prepared


def test_a_page_of_which_nothing_is_printed_leads_to_no_sheet() -> None:
    assert links("".join(pages.vehicle(finch()[1]).values())) == []


def test_another_paper_is_made_anew(tmp_path: Path) -> None:
    folder = tmp_path / "records/vehicles/kelbrook"
    folder.mkdir(parents=True)
    path = folder / FINCH.name
    path.write_bytes(FINCH.read_bytes())

    def key(settings: str) -> str:
        (tmp_path / "undertrim.toml").write_text(settings, encoding="utf-8")
        space = Workspace(tmp_path)
        (found,) = keys(space, [path], URL, Digests(), NOTHING)
        assert found.now(space, found.gear, Joining(NOTHING)) == found
        return found.key

    assert key("") == key('paper = "a4"')
    assert len({key(f"paper = {papers}") for papers in ('"a4"', '"letter"', '["a4", "letter"]')}) == 3
