"""The `format` command: what it writes, what it only says, what it leaves, how it exits."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli

HOME = Path("records/vehicles/brindleway")
FILE, OTHER = HOME / "otter-2014-2018.yaml", HOME / "badger-2014-2018.yaml"
MESSY = BASE.replace("    release: slide\n", "").replace(
    "    replaced: yes\n", "    replaced: yes\n\n    release: slide\n"
)


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / FILE).write_text(MESSY, encoding="utf-8")
    monkeypatch.chdir(tmp_path)


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    code = cli.main(["format", *map(str, words)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_it_writes_and_is_then_done(capsys: pytest.CaptureFixture[str]) -> None:
    assert MESSY != BASE
    assert run(capsys) == (0, "1 of 1 records laid out anew\n", "")
    text = FILE.read_text(encoding="utf-8")
    assert text.index("release: slide") < text.index("replaced: yes")
    assert run(capsys) == (0, "0 of 1 records laid out anew\n", "")
    assert run(capsys, "--check") == (0, "0 of 1 records are laid out otherwise\n", "")


def test_check_names_the_first_line_and_writes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys)
    text = FILE.read_text(encoding="utf-8")
    line = text[: text.index("    release: slide")].count("\n") + 1
    FILE.write_text(text.replace("    release: slide\n", "    release:    slide\n"), encoding="utf-8")
    assert run(capsys, "--check") == (
        1,
        f"{FILE}:{line}: is laid out otherwise from here on\n1 of 1 records is laid out otherwise\n",
        "",
    )
    assert "release:    slide" in FILE.read_text(encoding="utf-8")


def test_a_difference_is_shown(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys)
    text = FILE.read_text(encoding="utf-8")
    FILE.write_text(text.replace("    release: slide\n", "    release:    slide\n"), encoding="utf-8")
    code, out, _ = run(capsys, "--diff", HOME)
    assert code == 0
    assert "\n-    release:    slide\n+    release: slide\n" in out
    assert "release:    slide" in FILE.read_text(encoding="utf-8")


def test_one_that_cannot_be_read_is_left_and_the_others_are_laid_out(capsys: pytest.CaptureFixture[str]) -> None:
    OTHER.write_text("parts: [\n", encoding="utf-8")
    code, out, err = run(capsys)
    assert (code, out) == (1, "1 of 2 records laid out anew\n")
    assert err == (
        f"undertrim: {OTHER}: left as it is, since it cannot be read as a record\n"
        "    mend what 'undertrim check' says of it\n"
    )
    assert OTHER.read_text(encoding="utf-8") == "parts: [\n"


def test_shorter(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["upgrade"])
    capsys.readouterr()
    text = FILE.read_text(encoding="utf-8").replace(
        "    release: [slide, 3 min]\n", "    release: slide\n    takes: 3 min\n"
    )
    FILE.write_text(text, encoding="utf-8")
    assert run(capsys, "--shorter")[0] == 0
    assert "    release: [slide, 3 min]\n" in FILE.read_text(encoding="utf-8")


def test_a_path_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "nowhere") == (2, "", "undertrim: 'nowhere' does not exist\n")
