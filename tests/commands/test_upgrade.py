"""The `upgrade` command: what it writes, what it leaves, what it says, how it exits."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"
LINES = len(BASE.splitlines())


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / FILE).write_text(BASE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    code = cli.main(["upgrade", *map(str, words)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_it_moves_a_record_and_is_then_done(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys)
    text = FILE.read_text(encoding="utf-8")
    assert (code, err) == (0, "")
    assert out == (
        f"{FILE}: format 1 to 2, {LINES} lines to {len(text.splitlines())}\n"
        f"{FILE}: says now what follows: vehicle/model_years\n"
    )
    assert text.startswith("format: 2\n")
    assert "    held_by: {screw: T20, count: 4}\n" in text
    assert "    area: dash\n    release: [slide, 3 min, replaced]\n" in text
    assert "    kind: [receiver, kit needed]\n    behind: radio\n" in text
    assert run(capsys) == (0, "nothing to do: no vehicle record of an earlier format\n", "")
    assert cli.main(["check"]) == 0
    assert capsys.readouterr().out == "1 record checked, no problems\n"


def test_a_dry_run_shows_and_writes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "--dry-run", HOME)
    assert code == 0
    assert FILE.read_text(encoding="utf-8") == BASE
    assert "-format: 1\n+format: 2\n" in out
    assert f"\n{FILE}: would go from format 1 to 2, {LINES} lines to " in out


def test_a_record_with_errors_is_left_and_the_others_are_moved(capsys: pytest.CaptureFixture[str]) -> None:
    broken = HOME / "badger-2014-2018.yaml"
    broken.write_text(BASE.replace("release: slide", "release: slid"), encoding="utf-8")
    before = broken.read_bytes()
    code, out, err = run(capsys)
    assert code == 1
    assert (
        err
        == f"undertrim: {broken}: left as it is, since it has errors\n    see 'undertrim check', mend them and run this again\n"
    )
    assert broken.read_bytes() == before
    assert out.startswith(f"{FILE}: format 1 to 2")


def test_a_path_that_is_not_there_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "records/vehicles/nothing.yaml")
    assert (code, out) == (2, "")
    assert err.startswith("undertrim: 'records/vehicles/nothing.yaml' ")


def test_gear_stays_as_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    gear = Path("records/gear/spacers/skerrowe-ring.yaml")
    gear.parent.mkdir(parents=True)
    gear.write_text("format: 1\n", encoding="utf-8")
    assert run(capsys, gear) == (0, "nothing to do: no vehicle record of an earlier format\n", "")
    assert gear.read_text(encoding="utf-8") == "format: 1\n"
