"""The template command from the shell's side: where it writes, and how it refuses."""

import io
import shutil
from pathlib import Path

import pytest
from pypdf import PdfReader

from undertrim.cli import main

ROOT = Path(__file__).parents[2]
FINCH = "finch-2014-2018"


@pytest.fixture
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The shipped records, free to be changed, and an empty folder to write into as the current one."""
    for folder in ("vehicles", "gear"):
        shutil.copytree(ROOT / "records" / folder, tmp_path / "records" / folder)
    out = tmp_path / "out"
    out.mkdir()
    monkeypatch.chdir(out)
    return tmp_path


def run(workspace: Path, *arguments: str) -> int:
    return main(["template", *arguments, "--in", str(workspace)])


@pytest.mark.parametrize(
    ("arguments", "name"),
    [
        ([FINCH, "front-door"], "finch-2014-2018-front-door.pdf"),
        (["kelbrook/finch-2014-2018", "front-door"], "finch-2014-2018-front-door.pdf"),
        ([FINCH, "front-door", "sandmartin-bank-65"], "finch-2014-2018-front-door-sandmartin-bank-65.pdf"),
        ([FINCH, "front-door", "tidewrack-ledge-65"], "finch-2014-2018-front-door-tidewrack-ledge-65.pdf"),
        ([FINCH, "dash", "skerrowe-broadside"], "finch-2014-2018-dash-skerrowe-broadside.pdf"),
        ([FINCH, "dash", "sandmartin-dk-f14"], "finch-2014-2018-dash-sandmartin-dk-f14.pdf"),
    ],
)
def test_it_writes_where_it_says(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], name: str
) -> None:
    assert run(workspace, *arguments) == 0
    assert capsys.readouterr().out == f"{name}: print at 100 %, then measure the square and the bar before use\n"
    assert [path.name for path in Path.cwd().iterdir()] == [name]
    assert Path(name).read_bytes().startswith(b"%PDF-")


def test_paper_and_margin_are_chosen(workspace: Path) -> None:
    assert run(workspace, FINCH, "dash", "--paper", "letter", "--margin", "1/2 in", "--output", "x.pdf") == 0
    (page,) = PdfReader(io.BytesIO(Path("x.pdf").read_bytes())).pages
    assert (page.mediabox.width, page.mediabox.height) == pytest.approx((612, 792), abs=0.01)


@pytest.mark.parametrize(
    ("settings", "asked", "size"),
    [
        ('"letter"', [], (612, 792)),
        ('["letter", "a4"]', [], (612, 792)),
        ('"letter"', ["--paper", "a4"], (595.28, 841.89)),
    ],
)
def test_the_paper_is_that_of_the_collection_unless_asked_for(
    workspace: Path, settings: str, asked: list[str], size: tuple[float, float]
) -> None:
    (workspace / "undertrim.toml").write_text(f"paper = {settings}\n", encoding="utf-8")
    sheet = ["sheet", f"{FINCH}?jobs=dash", *asked, "--in", str(workspace), "--out", "sheet.pdf"]
    assert run(workspace, FINCH, "dash", *asked, "--output", "x.pdf") == main(sheet) == 0
    for name in ("x.pdf", "sheet.pdf"):
        box = PdfReader(name).pages[0].mediabox
        assert (box.width, box.height) == pytest.approx(size, abs=0.01)


def test_a_file_that_is_there_stays_unless_forced(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    Path("x.pdf").write_text("mine", encoding="utf-8")
    assert run(workspace, FINCH, "dash", "--output", "x.pdf") == 1
    assert "'x.pdf' is there already" in capsys.readouterr().err
    assert Path("x.pdf").read_text(encoding="utf-8") == "mine"
    assert run(workspace, FINCH, "dash", "--output", "x.pdf", "--force") == 0
    assert Path("x.pdf").read_bytes().startswith(b"%PDF-")


def test_a_folder_that_is_not_there_is_said(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, FINCH, "dash", "--output", "no/x.pdf") == 1
    assert "'no/x.pdf' cannot be written: No such file or directory" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["fnich-2014-2018", "dash"], "did you mean 'finch-2014-2018'?"),
        ([FINCH, "front-dor"], "did you mean 'front-door'?"),
        ([FINCH, "dash", "skerrowe-brodside"], "did you mean 'skerrowe-broadside'?"),
        ([FINCH, "dash", "pellworth-cove-40"], "a speaker: over 'dash' a receiver or a kit can be drawn"),
        (
            [FINCH, "front-door", "skerrowe-broadside"],
            "a receiver: over 'front-door' a speaker or a spacer can be drawn",
        ),
        ([FINCH, "dash", "--margin", "10"], "has no unit"),
        ([FINCH, "dash", "--margin", "30 mm"], "at most 25 mm"),
        ([FINCH, "dash", "--margin=-1 mm"], "negative"),
    ],
)
def test_what_cannot_be_followed_exits_with_two(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], words: str
) -> None:
    assert run(workspace, *arguments) == 2
    assert words in capsys.readouterr().err
    assert list(Path.cwd().iterdir()) == []


def change(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def test_an_opening_without_its_measure_exits_with_one(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    change(
        workspace / "records/vehicles/kelbrook/finch-2014-2018.yaml",
        "face: [182 mm, 112 mm]",
        "face: [182 mm, unknown]",
    )
    assert run(workspace, FINCH, "dash") == 1
    assert "opening 'Radio opening' is not recorded: measure it and write 'face'" in capsys.readouterr().err
    assert list(Path.cwd().iterdir()) == []


def test_records_with_problems_are_not_drawn(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    change(workspace / "records/gear/speakers/pellworth-cove-40.yaml", "depth: 40 mm", "depth: 40")
    assert run(workspace, FINCH, "rear-door", "pellworth-cove-40") == 2
    assert (
        "the record of 'pellworth-cove-40' has problems and is not offered: run 'undertrim check'"
        in capsys.readouterr().err
    )
    change(workspace / "records/vehicles/kelbrook/finch-2014-2018.yaml", "clear: 64 mm", "clear: 64")
    assert run(workspace, FINCH, "rear-door") == 1
    assert "undertrim check" in capsys.readouterr().err
