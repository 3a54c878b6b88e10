"""Tables of questions that were filled in: the same claims whether typed as JSON, CSV or XLSX, and nothing that unpacks without end."""

import io
import json
import zipfile
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from claiming import ADDRESS, FILE, RECORD, lay
from spoiling import ROOT
from undertrim import cli
from undertrim.publish.facts.question_table import question_table
from undertrim.record import claims
from undertrim.record.claims import spreadsheets
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Position
from undertrim.record.source import read_text
from undertrim.record.store import Workspace
from undertrim.words import sentence

HEAD = {"by": "rk", "on": "2026-11-20", "with": "Calliper 0.05 mm", "year": "2015", "is radio": "plain"}
ANSWERS = {
    "openings/front-door/depth/clear": ("2 1/2", "in", "measured"),
    "openings/front-door/crash_sensor": ("no", "", "maker"),
    "openings/front-door/room_to_grille": ("?", "", ""),
    "openings/front-door/depth/leans": ("-", "", "measured"),
    "functions/speed/by": ("data", "", ""),
}


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)


def sheet_of(book: Workbook) -> Worksheet:
    sheet = book.active
    assert isinstance(sheet, Worksheet)
    return sheet


def filled() -> list[list[str]]:
    entry = Workspace(ROOT).entry(ROOT / FILE, read_text(RECORD, FILE))
    assert isinstance(entry.record, VehicleRecord)
    rows = question_table(entry.record, entry.source, ADDRESS).rows
    for row in rows:
        if row[0] in HEAD:
            row[1] = HEAD[row[0]]
        elif row[0] in ANSWERS:
            row[2], row[3], row[4] = ANSWERS[row[0]]
    return rows


def answers(path: Path) -> list[dict[str, Any]]:
    found = claims.read(path)
    assert not found.problems
    assert not found.bad
    return [
        {
            "about": one.about,
            "said": one.says or one.found,
            "how": one.how,
            "by": one.by,
            "car": one.car,
            "with": one.with_,
        }
        for one in found.answers
    ]


@pytest.mark.parametrize("name", ["t.csv", "t.xlsx"])
def test_a_filled_table_is_a_claims_file(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    Path(name).write_bytes(spreadsheets.written(filled(), Path(name).suffix, {}))
    car = {"year": "2015", "is": {"radio": "plain"}}
    found = {one["about"]: one for one in answers(Path(name))}
    assert found.keys() == ANSWERS.keys()
    assert all((one["by"], one["car"]) == ("rk", car) for one in found.values())
    assert found["openings/front-door/depth/clear"]["said"] == "2 1/2 in"
    assert found["openings/front-door/depth/clear"]["with"] == "Calliper 0.05 mm"
    assert found["openings/front-door/room_to_grille"]["said"] == "cannot-tell"
    assert found["openings/front-door/depth/leans"]["said"] == "none"
    assert found["openings/front-door/crash_sensor"]["how"] == "maker"
    assert cli.main(["take", name]) == 0, capsys.readouterr().err
    text = FILE.read_text(encoding="utf-8")
    assert "depth: {clear: 2 1/2 in, datum: skin, over: whole-travel, leans: none}" in text
    assert cli.main(["check"]) == 0


def test_the_commands_write_and_take_them_back(capsys: pytest.CaptureFixture[str]) -> None:
    for name in ("q.csv", "q.xlsx"):
        assert cli.main(["ask", "otter-2014-2018", "--out", name]) == 0
        assert f"'undertrim take {name}' takes it back" in capsys.readouterr().out
        assert cli.main(["ask", "otter-2014-2018", "--out", name]) == 2
    book = load_workbook("q.xlsx")
    assert "mm,in" in str([rule.formula1 for rule in sheet_of(book).data_validations.dataValidation])
    assert cli.main(["take", "q.csv"]) == 1
    assert "q.csv:" in capsys.readouterr().err
    assert FILE.read_text(encoding="utf-8") == RECORD


@pytest.mark.parametrize("sign", [";", "\t"])
def test_other_programs_write_other_commas(sign: str) -> None:
    lines = [f"claims{sign}1", f"vehicle{sign}{ADDRESS}", f"by{sign}rk", f"on{sign}2026-11-20", f"how{sign}seen"]
    lines += [
        f"answer{sign}x",
        f"about{sign}answer{sign}note",
        f"openings/front-door/depth/clear{sign}62 mm{sign}A note, so",
    ]
    Path("t.csv").write_text("\n".join(lines), encoding="utf-8")
    assert answers(Path("t.csv"))[0]["said"] == "62 mm"


def test_what_is_wrong_is_told_by_row_and_column() -> None:
    rows = [
        ["claims", "1"],
        ["vehicle", ADDRESS],
        ["by", "rk"],
        ["on", "20.11.2026"],
        ["how", "seen"],
        ["about", "question", "answer"],
    ]
    rows += [
        ["openings/front-door/depth/clear", "", "62 mm"],
        ["Openings", "", "1"],
        ["openings/front-door/depth/over", "", ""],
    ]
    Path("t.csv").write_bytes(spreadsheets.written(rows, ".csv", {}))
    found = claims.read(Path("t.csv"))
    assert [(bad.number, [problem.position for problem in bad.problems]) for bad in found.bad] == [
        (0, [Position(4, 2)]),
        (1, [Position(8, 1)]),
    ]


def test_cells_are_text_whatever_they_hold() -> None:
    book = Workbook()
    sheet = sheet_of(book)
    rows: list[list[Any]] = [
        ["claims", 1],
        ["vehicle", ADDRESS],
        ["by", "rk"],
        ["on", None],
        ["how", "seen"],
        ["year", 2015.0],
        ["about", "q", "answer"],
    ]
    for row in rows:
        sheet.append(row)
    sheet["B4"] = date(2026, 11, 20)
    sheet.append(["openings/front-door/bolts/count", "", 4])
    book.save("t.xlsx")
    found = claims.read(Path("t.xlsx"))
    assert [(one.on, one.says, one.car) for one in found.answers] == [("2026-11-20", "4", {"year": "2015"})]


def test_nothing_that_is_written_is_a_formula() -> None:
    rows = [["about", "so far"], ["x", "=1+1"], ["y", "@SUM(A1)"], ["z", "+1"]]
    assert b"'=1+1" in spreadsheets.written(rows, ".csv", {})
    book = load_workbook(io.BytesIO(spreadsheets.written(rows, ".xlsx", {})))
    assert {cell.data_type for row in sheet_of(book).iter_rows() for cell in row} == {"s"}


def packed(**parts: bytes) -> bytes:
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as made:
        for name, content in parts.items():
            made.writestr(name, content)
    return stream.getvalue()


@pytest.mark.parametrize(
    ("name", "raw", "said"),
    [
        ("t.csv", b"a,b\r\n1,2\r\n", "this is no table of questions"),
        ("t.csv", "about,answer\r\nb\u00f6,1".encode("latin-1"), "this is not UTF-8"),
        ("t.csv", b"about,answer\r\n" + b"x" * 1_000_001, "larger than"),
        ("t.xlsx", b"no zip", "this is no workbook that can be read"),
        ("t.xlsx", packed(a=b"0" * 20_000_001), "unpacked it has more than 20 MB"),
        ("t.xlsx", packed(a=b"<?xml version='1.0'?><!DOCTYPE x [<!ENTITY a 'aa'>]><x/>"), "this is no workbook"),
        ("t.xlsx", packed(a=b"<x/>"), "this is no workbook that can be read"),
    ],
)
def test_what_is_no_table_is_said(name: str, raw: bytes, said: str) -> None:
    Path(name).write_bytes(raw)
    assert said in sentence(claims.read(Path(name)).problems[0].said)


def test_the_reference_of_a_table_and_of_json_is_one() -> None:
    Path("t.csv").write_bytes(spreadsheets.written(filled(), ".csv", {}))
    found = claims.read(Path("t.csv"))
    Path("t.json").write_text(json.dumps(found.source.data), encoding="utf-8")
    again = claims.read(Path("t.json"))
    assert again.answers == found.answers
