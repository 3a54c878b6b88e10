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


LINE = "# yaml-language-server: $schema=../../../schema/editor/vehicle.schema.json"


def put_schema() -> None:
    editor = Path("schema/editor/vehicle.schema.json")
    editor.parent.mkdir(parents=True)
    editor.write_text("{}", encoding="utf-8")


def test_the_line_for_editors_is_put_first_where_the_schema_is(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys)
    assert "yaml-language-server" not in FILE.read_text(encoding="utf-8")
    put_schema()
    assert run(capsys, "--check")[0] == 1
    assert run(capsys)[0] == 0
    text = FILE.read_text(encoding="utf-8")
    assert text.startswith(f"{LINE}\nformat: ")
    assert run(capsys, "--check")[0] == 0
    assert cli.main(["check"]) == 0


def test_a_line_of_another_schema_and_ends_of_lines_are_kept(capsys: pytest.CaptureFixture[str]) -> None:
    put_schema()
    own = LINE.replace("../../../schema", "https://example.org")
    FILE.write_text(f"{own}\n{MESSY}", encoding="utf-8")
    run(capsys)
    assert FILE.read_text(encoding="utf-8").startswith(f"{own}\nformat: ")
    FILE.write_bytes(MESSY.replace("\n", "\r\n").encode())
    run(capsys)
    assert FILE.read_bytes().startswith(f"{LINE}\r\nformat: ".encode())


def test_upgrade_puts_that_line_too(capsys: pytest.CaptureFixture[str]) -> None:
    put_schema()
    assert cli.main(["upgrade"]) == 0
    assert FILE.read_text(encoding="utf-8").startswith(f"{LINE}\nformat: 2\n")
