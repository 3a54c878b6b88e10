"""`check --mend`: what was meant is written, and nothing else."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / "records/gear").mkdir()
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], text: str) -> tuple[int, str, str]:
    FILE.write_bytes(text.encode())
    code = cli.main(["check", "--mend"])
    return code, capsys.readouterr().out, FILE.read_bytes().decode()


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_what_is_certain_is_written_and_shown(capsys: pytest.CaptureFixture[str], end: str) -> None:
    spoilt = BASE.replace("takes: 3 min", "takes: 3\u00a0min  # by the clock", 1).replace("count: 4}", "count: 4", 1)
    assert spoilt.count("\u00a0") == 1
    code, out, written = run(capsys, spoilt.replace("\n", end))
    assert code == 0
    assert written == BASE.replace("takes: 3 min", "takes: 3 min  # by the clock", 1).replace("\n", end)
    assert "+    held_by: [{screw: T20, count: 4}]" in out
    assert out.splitlines()[0] == f"--- {FILE}"


def test_what_could_mean_something_else_is_left(capsys: pytest.CaptureFixture[str]) -> None:
    spoilt = BASE.replace("takes: 3 min", "takes 3 min", 1)
    code, out, written = run(capsys, spoilt)
    assert (code, written) == (1, spoilt)
    assert "write: takes: 3 min" in out


def test_a_good_record_is_left(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, written = run(capsys, BASE)
    assert (code, written) == (0, BASE)
    assert "---" not in out


def test_a_file_that_may_not_be_written_is_said(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("undertrim.record.store.write_text", full)
    FILE.write_text(BASE.replace("count: 4}", "count: 4", 1), encoding="utf-8")
    assert cli.main(["check", "--mend"]) == 1
    assert "it could not be written: No space left on device" in capsys.readouterr().err
