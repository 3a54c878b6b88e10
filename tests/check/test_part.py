"""A collection checked in parts, by several machines: together they say what one says."""

import shutil
from pathlib import Path

import pytest

from undertrim import cli
from undertrim.check import runner
from undertrim.check.part import Part
from undertrim.check.register import COLLECTION_RULES
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
GEAR = Path("records/gear/speakers/tidewrack-haven-65.yaml")


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    """Some shipped records with something wrong of each sort: in a file, between files, in one that is no record, in the handbook."""
    shutil.copytree(ROOT / "records/gear/speakers", tmp_path / "records/gear/speakers")
    shutil.copytree(ROOT / "records/vehicles/tolverne", tmp_path / "records/vehicles/tolverne")
    (tmp_path / "records/handbook").mkdir()
    (tmp_path / "records/handbook/page.md").write_text("[away](nowhere.md)\n<script></script>\n", encoding="utf-8")
    text = (tmp_path / GEAR).read_text(encoding="utf-8")
    (tmp_path / GEAR).write_text(text.replace("diameter: 160 mm", "diameter: 120 mm"), encoding="utf-8")
    (tmp_path / GEAR).with_name("twin.yaml").write_text(text, encoding="utf-8")
    (tmp_path / "records/vehicles/loose.yaml").write_text("format: 2\n", encoding="utf-8")
    return Workspace(tmp_path)


@pytest.mark.parametrize("parts", [1, 3])
def test_the_parts_together_are_the_whole(place: Workspace, parts: int) -> None:
    whole = runner.check(place)
    assert {problem.rule for problem in whole.problems} & set(COLLECTION_RULES)
    assert len({problem.file for problem in whole.problems}) > 3
    found = [runner.check(place, part=Part(number, parts)) for number in range(1, parts + 1)]
    said = [problem for part in found for problem in part.problems]
    assert sorted(said, key=lambda problem: problem.sort_key) == list(whole.problems)
    assert sum(part.records for part in found) == whole.records
    assert all(part.records for part in found)


def test_another_record_moves_none() -> None:
    files = [Path(f"/r/gear/speakers/{name}.yaml") for name in "abcdefgh"]
    before = Part(2, 3).among(Path("/r"), files)
    assert before
    assert Part(2, 3).among(Path("/r"), [Path("/r/gear/kits/new.yaml"), *files])[-len(before) :] == before


@pytest.mark.parametrize("text", ["", "1", "0/3", "4/3", "1/0", "a/b", "1/3/5", "-1/3", "1/1000", "\u0661/3"])
def test_what_is_no_part(place: Workspace, text: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert Part.read(text) is None
    assert cli.main(["check", f"--part={text}", "--in", str(place.root)]) == 2
    assert "'--part 2/8' is the second of eight" in capsys.readouterr().err


def test_a_part_of_some_paths_is_refused(place: Workspace, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["check", str(place.records), "--part", "1/2"]) == 2
    assert "name no paths with it" in capsys.readouterr().err


def test_the_command_tells_of_its_part(place: Workspace, capsys: pytest.CaptureFixture[str]) -> None:
    told = []
    for number in (1, 2):
        assert cli.main(["check", "--part", f"{number}/2", "--in", str(place.root)]) == 1
        told.append(capsys.readouterr().out)
    assert sum("loose.yaml:" in text for text in told) == 1
