"""The mirror command: what is known in the other drive side, what to ask, and how it exits."""

import json
from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli

HOME = Path("records/vehicles/brindleway")
PARTS = """  pedal-panel: {name: Pedal-side panel, release: pull, on_side: left, mirrors: yes, direction: right}
  fuse-box: {name: Fuse box, release: pull, on_side: left, mirrors: no}
  battery-cover: {name: Battery cover, release: pull, on_side: left, mirrors: unknown}
  brace: {name: Brace, release: pull, when: {drive-side: left}, on_side: left}
  tray: {name: Tray, release: pull}
"""
OTTER = BASE.replace("openings:", f"{PARTS}openings:").replace("drive_side: [left]", "drive_side: [left, right]")
TEXT = """brindleway/otter-2014-2018 in right-hand drive, recorded in left-hand drive

KNOWN
  Pedal-side panel: right (driver side) (recorded: left)
  Pedal-side panel, direction: left (recorded: right)
  Fuse box: left (passenger side)

TO FIND OUT AT A CAR
  on which side is 'Battery cover'? (recorded: left)

NOT IN THESE CARS
  Brace

SIDES NOT RECORDED AT ALL
  Battery off; Factory radio; Tray; Radio opening
"""


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / HOME / "otter-2014-2018.yaml").write_text(OTTER, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = cli.main(["mirror", *words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_the_other_drive_side(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "otter-2014-2018", "--drive-side", "right") == (0, TEXT, "")


def test_the_side_it_was_recorded_on(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "otter-2014-2018", "--drive-side", "left")
    assert "Fuse box: left (driver side)" in out
    assert "Brace: left (driver side)" in out
    assert "TO FIND OUT" not in out


def test_json_says_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "brindleway/otter-2014-2018", "--drive-side", "right", "--format", "json")
    data = json.loads(out)
    assert code == 0
    assert (data["drive_side"], data["recorded_on"]) == ("right", "left")
    assert [item["words"] for item in data["known"]] == ["right (driver side)", "left", "left (passenger side)"]
    assert [item["ask"] for item in data["questions"]] == ["on which side is 'Battery cover'?"]
    assert data["not_there"] == ["parts/brace"]


def test_refusals(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "otter", "--drive-side", "right")[0] == 2
    (HOME / "broken.yaml").write_text("parts: [", encoding="utf-8")
    code, out, err = run(capsys, "broken", "--drive-side", "right")
    assert (code, out) == (1, "")
    assert "broken.yaml cannot be read as a record" in err


def test_what_a_record_holds_cannot_steer_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    nasty = OTTER.replace("name: Fuse box", 'name: "Fuse\\e[31m\\nbox"')
    (HOME / "otter-2014-2018.yaml").write_text(nasty, encoding="utf-8")
    for words in ([], ["--format", "json"]):
        _, out, _ = run(capsys, "otter-2014-2018", "--drive-side", "right", *words)
        assert all(char.isprintable() or char == "\n" for char in out)
