"""The `format` command: what it writes, what it leaves, what it says, how it exits."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli
from undertrim.record.layout import modeline

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / FILE).write_text(BASE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: object, verb: str = "format") -> tuple[int, str, str]:
    code = cli.main([verb, *map(str, words)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def tidy(capsys: pytest.CaptureFixture[str]) -> str:
    run(capsys)
    return FILE.read_text(encoding="utf-8")


def test_it_lays_a_record_out_and_is_then_done(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(BASE.replace("demo: yes\n", "demo:   yes\n\n\n"), encoding="utf-8")
    assert run(capsys) == (0, f"{FILE}: laid out\n", "")
    assert run(capsys) == (0, "1 record laid out already\n", "")
    assert run(capsys, "--check") == (0, "1 record laid out already\n", "")
    assert run(capsys, verb="check")[0] == 0


def test_check_names_the_first_line_and_writes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    text = tidy(capsys).replace("\nvehicle:\n", "\nvehicle:\n\n").replace("release: slide", 'release: "slide"')
    FILE.write_text(text, encoding="utf-8")
    where = text.splitlines().index("vehicle:") + 2
    code, out, err = run(capsys, "--check", FILE)
    wanted = text.splitlines()[where]
    assert (code, out) == (1, f"{FILE}:{where}: is not laid out the one way; the line would be: {wanted}\n")
    assert err == "1 of 1 records are not laid out the one way\n    run 'undertrim format' without --check\n"
    assert FILE.read_text(encoding="utf-8") == text


def test_check_says_where_a_text_would_end(capsys: pytest.CaptureFixture[str]) -> None:
    text = tidy(capsys)
    FILE.write_text(text + "\n\n", encoding="utf-8")
    code, out, _ = run(capsys, "--check")
    assert code == 1
    assert out == f"{FILE}:{len(text.splitlines()) + 1}: is not laid out the one way; the text would end before\n"


def test_ends_of_lines_and_the_mark_at_the_start_stay(capsys: pytest.CaptureFixture[str]) -> None:
    text = tidy(capsys)
    FILE.write_bytes(b"\xef\xbb\xbf" + text.replace("make:", "make:  ").replace("\n", "\r\n").encode())
    assert run(capsys)[0] == 0
    assert FILE.read_bytes() == b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode()
    assert run(capsys, "--check")[0] == 0
    FILE.write_bytes(text.removesuffix("\n").encode())
    assert run(capsys, "--check")[0] == 1


def test_diff_shows_and_writes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    text = tidy(capsys).replace("demo: yes", "demo:  yes")
    FILE.write_text(text, encoding="utf-8")
    code, out, err = run(capsys, "--diff")
    assert (code, err) == (0, "")
    assert "-demo:  yes\n+demo: yes\n" in out
    assert FILE.read_text(encoding="utf-8") == text


@pytest.mark.parametrize("spoilt", ["parts: [\n", "format: 2\nformat: 2\n", "- a\n", ""])
def test_what_cannot_be_read_is_left_and_the_others_are_laid_out(
    capsys: pytest.CaptureFixture[str], spoilt: str
) -> None:
    tidy(capsys)
    broken = HOME / "badger-2014-2018.yaml"
    broken.write_text(spoilt, encoding="utf-8")
    code, out, err = run(capsys)
    assert (code, out) == (1, "")
    assert (
        err
        == f"undertrim: {broken}: left as it is, since it cannot be read\n    see 'undertrim check' and mend it first\n"
    )
    assert broken.read_text(encoding="utf-8") == spoilt


def test_a_record_with_errors_is_laid_out_too(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(BASE.replace("release: slide", "release:  slid"), encoding="utf-8")
    assert run(capsys)[0] == 0
    assert "release: slid\n" in FILE.read_text(encoding="utf-8")


def test_a_file_that_cannot_be_written_is_said(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    FILE.write_text(BASE.replace("demo: yes", "demo:  yes"), encoding="utf-8")
    monkeypatch.setattr("undertrim.record.store.write_text", full)
    code, out, err = run(capsys)
    assert (code, out) == (1, "")
    assert "could not be written: No space left on device" in err


def test_a_path_that_is_not_there_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "records/vehicles/nothing.yaml")
    assert (code, out) == (2, "")
    assert err.startswith("undertrim: 'records/vehicles/nothing.yaml' ")


def test_the_line_for_editors_is_put_first_where_the_schema_is(capsys: pytest.CaptureFixture[str]) -> None:
    assert "yaml-language-server" not in tidy(capsys)
    editor = Path("schema/editor/vehicle.schema.json")
    editor.parent.mkdir(parents=True)
    editor.write_text("{}", encoding="utf-8")
    assert run(capsys, "--check")[0] == 1
    line = "# yaml-language-server: $schema=../../../schema/editor/vehicle.schema.json"
    text = tidy(capsys)
    assert text.startswith(f"{line}\nformat: ")
    assert modeline.is_one(line)
    own = text.replace("../../../schema", "https://example.org")
    FILE.write_text("\n# Otter\n" + own, encoding="utf-8")
    assert tidy(capsys).splitlines()[0] == own.splitlines()[0]
    assert run(capsys, verb="check")[0] == 0


def test_upgrade_puts_that_line_too(capsys: pytest.CaptureFixture[str]) -> None:
    editor = Path("schema/editor/vehicle.schema.json")
    editor.parent.mkdir(parents=True)
    editor.write_text("{}", encoding="utf-8")
    assert run(capsys, verb="upgrade")[0] == 0
    assert FILE.read_text(encoding="utf-8").startswith(
        "# yaml-language-server: $schema=../../../schema/editor/vehicle.schema.json\nformat: 2\n"
    )


def test_what_verify_writes_is_laid_out(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(BASE + "restraint: {fitted: no, wait: none, source: e1}\n", encoding="utf-8")
    tidy(capsys)
    words = ("otter-2014-2018", "--by", "müller", "--car", "2016, left-hand drive", "--on", "2026-04-02")
    assert run(capsys, *words, verb="verify")[0] == 0
    assert "\nverified:\n" in FILE.read_text(encoding="utf-8")
    assert run(capsys, "--check") == (0, "1 record laid out already\n", "")
