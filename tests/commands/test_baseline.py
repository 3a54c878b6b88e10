"""A baseline accepts what was there, wherever its lines move, and nothing else."""

import json
from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.cli import main
from undertrim.resources import inside

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"
OTHER = Path("records/gear/speakers/pebblerun-tern-60.yaml")
GEAR = inside("commands", "collection", "all", str(OTHER)).read_text(encoding="utf-8")
GUILTY = BASE.replace("{screw: T20, count: 4}", "{screw: T20}")
BASELINE = Path("accepted.jsonl")


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    monkeypatch.chdir(tmp_path)
    FILE.write_text(GUILTY, encoding="utf-8")
    OTHER.parent.mkdir(parents=True)
    OTHER.write_text(GEAR, encoding="utf-8")
    assert main(["check", "--write-baseline", str(BASELINE)]) == 0
    told = capsys.readouterr()
    assert told.err == "accepted.jsonl: 1 problem accepted\n"
    assert told.out.startswith("2 records checked, no problems\n")
    return tmp_path


def check(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, list[str]]:
    code = main(["check", "--baseline", str(BASELINE), *map(str, words)])
    return code, [line for line in capsys.readouterr().out.splitlines() if ": error: " in line or ": warning: " in line]


def test_an_entry_names_the_fact_and_no_line() -> None:
    head, entry = map(json.loads, BASELINE.read_text(encoding="utf-8").splitlines())
    assert head == {"baseline": 1}
    assert entry["file"] == FILE.as_posix()
    assert entry["rule"] == "fastener-without-count"
    assert entry["about"].startswith("parts/")
    assert "line" not in entry
    assert entry["times"] == 1


@pytest.mark.parametrize("here", [".", "records", "/"])
def test_what_was_there_is_accepted_wherever_it_moves_to(
    workspace: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, here: str
) -> None:
    FILE.write_text("# A line\n\n" + GUILTY, encoding="utf-8")
    monkeypatch.chdir(workspace / here)
    assert main(["check", "--in", str(workspace), "--baseline", str(workspace / BASELINE)]) == 0
    assert "no problems" in capsys.readouterr().out


def test_what_is_new_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    OTHER.write_text(GEAR.replace("depth: 45 mm", "depth: 45"), encoding="utf-8")
    code, told = check(capsys)
    assert (code, len(told)) == (1, 1)
    assert told[0].startswith(f"{OTHER}:12:10: error: '45' has no unit")


def test_the_same_at_another_fact_is_new(capsys: pytest.CaptureFixture[str]) -> None:
    first = GUILTY.index("{screw: T20}")
    FILE.write_text(f"{GUILTY[:first]}{{screw: T25}}{GUILTY[first + 12 :]}", encoding="utf-8")
    code, told = check(capsys)
    assert code == 1
    assert [line.partition(": error: ")[2].rpartition(" (")[2] for line in sorted(told)] == [
        "baseline)",
        "fastener-without-count)",
    ]


def test_an_entry_that_hides_nothing_is_told_where_its_file_was_looked_at(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(BASE, encoding="utf-8")
    said = f"accepted.jsonl:2:1: error: this entry for 'fastener-without-count' in '{FILE}' hides nothing any more (baseline)"
    assert check(capsys) == (1, [said])
    assert check(capsys, FILE) == (1, [said])
    assert check(capsys, OTHER) == (0, [])
    parts = [check(capsys, "--part", f"{number}/2") for number in (1, 2)]
    assert sorted(line for _, lines in parts for line in lines) == [said]
    FILE.unlink()
    assert check(capsys) == (1, [said])


def test_what_hurts_is_never_accepted(capsys: pytest.CaptureFixture[str]) -> None:
    OTHER.write_text(f"{GEAR}  note: With parking brake bypass.\n", encoding="utf-8")
    code = main(["check", "--write-baseline", str(BASELINE)])
    out = capsys.readouterr().out
    assert (code, "(defeats-safety)" in out) == (1, True)
    assert "defeats-safety" not in BASELINE.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "text", ["", "x", '{"baseline": 2}\n', '{"baseline": 1}\n[]\n', '{"baseline": 1}\n{"file": "x"}\n', "[" * 9999]
)
def test_what_is_no_baseline_is_refused(capsys: pytest.CaptureFixture[str], text: str) -> None:
    BASELINE.write_text(text, encoding="utf-8")
    assert main(["check", "--baseline", str(BASELINE)]) == 2
    line = max(1, text.count("\n"))
    assert f"accepted.jsonl:{line}:1: this is no baseline" in capsys.readouterr().err


def test_a_baseline_is_of_the_whole_collection(capsys: pytest.CaptureFixture[str]) -> None:
    for words in ([str(FILE)], ["--part", "1/2"], ["--baseline", str(BASELINE)]):
        assert main(["check", "--write-baseline", "other.jsonl", *words]) == 2
        assert "is for the whole collection" in capsys.readouterr().err
        assert not Path("other.jsonl").exists()
