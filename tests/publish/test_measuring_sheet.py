"""The measuring sheet: it asks what the record asks, with boxes, and its rulers are true to size."""

import io
from datetime import date
from pathlib import Path

import pypdfium2
import pytest
from pypdf import PdfReader

from claiming import lay
from pdf_text import texts
from spoiling import RECORDS, ROOT
from undertrim import cli
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.place import Vehicle
from undertrim.derive.fit.stock import Stock
from undertrim.derive.questions import questions
from undertrim.publish.printed import pdf
from undertrim.publish.printed.sheet import Paper
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

URL = "https://undertrim.example/vehicles/x/y.html"
DAY = date(2026, 11, 20)
MM = 72 / 25.4
LETTER: Paper = "us-letter"


def printed(path: Path, paper: Paper = "a4") -> bytes:
    entry = Workspace(ROOT).load(path)
    assert isinstance(entry.record, VehicleRecord)
    vehicle = Vehicle(entry.record, entry.address, Stock(()), clearances())
    return pdf.render_questions(vehicle, entry.source, URL, paper, DAY)


def read(made: bytes) -> str:
    return " ".join(" ".join(texts(made)).split())


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_every_question_with_fields_stands_on_it(path: Path) -> None:
    entry = Workspace(ROOT).load(path)
    assert isinstance(entry.record, VehicleRecord)
    text = read(printed(path)).replace("-", "").replace(" ", "")
    asked = [question for question in questions(entry.record, entry.source) if question.fields]
    for question in asked:
        assert say(question.ask).replace("-", "").replace(" ", "") in text, question.about
    assert text.count("Foundout:") == len(asked)


def test_the_car_is_told_as_the_record_tells_it() -> None:
    text = read(printed(next(path for path in RECORDS if path.stem == "finch-2014-2018")))
    assert "Which radio is in the dash?" in text
    assert "Map radio: A key marked MAP left of the screen" in text
    assert "1. look up the maker's wait between battery off and touching restraint wiring" in text
    assert "in s, min or h, usually 1 s to 2 h; or none" in text


@pytest.mark.parametrize("paper", ["a4", LETTER])
def test_the_rulers_are_true_to_size(paper: Paper) -> None:
    page = pypdfium2.PdfDocument(printed(RECORDS[0], paper))[0]
    found = page.get_textpage()
    rects = [found.get_rect(number) for number in range(found.count_rects())]
    marks = {found.get_text_bounded(*rect).strip(): rect for rect in rects if rect[0] < 15 * MM and rect[2] < 15 * MM}
    inches = {found.get_text_bounded(*rect).strip(): rect for rect in rects if rect[0] > page.get_width() - 15 * MM}
    middle = {
        name: (rect[1] + rect[3]) / 2
        for name, rect in (marks | {f"{name} in": rect for name, rect in inches.items()}).items()
    }
    assert middle["100"] - middle["200"] == pytest.approx(100 * MM, abs=0.3)
    assert middle["10"] - middle["20"] == pytest.approx(10 * MM, abs=0.3)
    assert middle["1 in"] - middle["7 in"] == pytest.approx(6 * 72, abs=0.3)
    assert min(rect[1] for rect in marks.values()) > 10 * MM


def test_the_same_bytes_for_the_same_day() -> None:
    assert printed(RECORDS[0]) == printed(RECORDS[0])
    head = PdfReader(io.BytesIO(printed(RECORDS[0]))).metadata
    assert head is not None
    assert str(head.title).startswith("Measuring sheet: ")


def test_the_command_writes_it_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert cli.main(["ask", "otter-2014-2018", "--out", "sheet.pdf"]) == 0
    assert capsys.readouterr().out == "sheet.pdf: the measuring sheet of brindleway/otter-2014-2018\n"
    assert "Clear depth" in read(Path("sheet.pdf").read_bytes())
    assert cli.main(["ask", "otter-2014-2018", "--out", "sheet.pdf"]) == 2
