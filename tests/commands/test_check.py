"""The `check` command: what it looks at, what it prints, how it exits."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli
from undertrim.check import runner

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"
GUILTY = BASE.replace("{screw: T20, count: 4}", "{screw: T20}")
MESSAGE = f"{FILE}:24:15: error: 'screw: T20' has no count (fastener-without-count)\n"
EARLIER = "1 record is of format 1: 'undertrim upgrade' moves it to format 2\n"
HINT = "    count them, or write 'count: unknown'\n"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / "records/gear").mkdir()
    (tmp_path / FILE).write_text(BASE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    code = cli.main(["check", *map(str, words)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_nothing_wrong(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys) == (0, "1 record checked, no problems\n" + EARLIER, "")


@pytest.mark.parametrize("path", ["", ".", "records", "records/vehicles", HOME, FILE, f"./{FILE}"])
def test_problems_are_printed_and_exit_with_one(capsys: pytest.CaptureFixture[str], path: object) -> None:
    FILE.write_text(GUILTY, encoding="utf-8")
    told = run(capsys, *([path] if path else []))
    assert told == (1, f"{MESSAGE}{HINT}1 record checked: 1 error, 0 warnings\n{EARLIER}", "")


def test_a_warning_counts(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(BASE.replace("takes: 3 min", "takes: 9 h"), encoding="utf-8")
    code, out, _ = run(capsys)
    assert code == 1
    assert out.endswith("1 record checked: 0 errors, 1 warning\n" + EARLIER)


def test_json(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(GUILTY, encoding="utf-8")
    code, out, err = run(capsys, "--format", "json")
    assert (code, err) == (1, "")
    assert json.loads(out) == {
        "records": 1,
        "problems": [
            {
                "file": str(FILE),
                "line": 24,
                "column": 15,
                "level": "error",
                "rule": "fastener-without-count",
                "message": "'screw: T20' has no count",
                "hint": "count them, or write 'count: unknown'",
            }
        ],
        "earlier_format": [str(FILE)],
    }


def test_github(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(GUILTY, encoding="utf-8")
    code, out, _ = run(capsys, "--format", "github", FILE)
    assert code == 1
    assert out == (
        f"::error file={FILE},line=24,col=15,title=fastener-without-count"
        "::'screw: T20' has no count. count them, or write 'count: unknown'\n"
        f"1 record checked: 1 error, 0 warnings\n{EARLIER}"
    )


WHERE = "records are .yaml files below records/vehicles and gear"


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["nowhere.yaml"], "'nowhere.yaml' does not exist"),
        ([FILE, "nowhere"], "'nowhere' does not exist"),
        (["--in", "nowhere"], "'nowhere' does not exist"),
        ([FILE, "notes.md"], f"'notes.md' is or holds no record: {WHERE}"),
        ([FILE, "spare"], f"'spare' is or holds no record: {WHERE}"),
        ([FILE, "spare/x.yaml"], f"'spare/x.yaml' is or holds no record: {WHERE}"),
        (["records/gear"], f"'records/gear' is or holds no record: {WHERE}"),
        ([FILE, "b\x1b[31m"], "'b?[31m' does not exist"),
    ],
)
def test_what_it_cannot_follow_exits_with_two(
    capsys: pytest.CaptureFixture[str], words: list[object], message: str
) -> None:
    Path("spare").mkdir()
    Path("spare/x.yaml").write_text(BASE)
    Path("notes.md").write_text("x")
    assert run(capsys, *words) == (2, "", f"undertrim: {message}\n")


def test_a_path_in_another_workspace_is_refused(
    capsys: pytest.CaptureFixture[str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    other = tmp_path_factory.mktemp("other") / FILE
    other.parent.mkdir(parents=True)
    other.write_text(GUILTY)
    code, out, err = run(capsys, FILE, other)
    assert (code, out) == (2, "")
    assert err == f"undertrim: '{other}' is or holds no record: {WHERE}\n"
    assert run(capsys, other)[0] == 1
    assert run(capsys, "--in", other.parents[3])[0] == 1


def test_without_a_workspace_it_says_so(
    capsys: pytest.CaptureFixture[str], tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    empty = tmp_path_factory.mktemp("empty")
    monkeypatch.chdir(empty)
    assert run(capsys) == (2, "", f"undertrim: no 'records' folder in {empty} or above it\n")


def test_a_file_is_known_by_its_place_from_any_folder(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(HOME)
    assert run(capsys, FILE.name) == (0, "1 record checked, no problems\n" + EARLIER, "")


def test_a_file_named_twice_is_looked_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, FILE, FILE.resolve(), ".") == (0, "1 record checked, no problems\n" + EARLIER, "")


@pytest.mark.parametrize("words", [["--format", "xml"], ["--what"]])
def test_a_word_it_does_not_know_exits_with_two(capsys: pytest.CaptureFixture[str], words: list[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        run(capsys, *words)
    assert ended.value.code == 2


def test_our_own_fault_exits_with_three_and_says_what_to_report(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(runner, "check", fail)
    code, out, err = run(capsys)
    assert (code, out) == (3, "")
    assert "ZeroDivisionError" in err
    assert err.splitlines()[-1].endswith("this is our fault. Report it with the lines above and the record.")


def test_what_a_record_holds_cannot_steer_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    nasty = BASE.replace("release: slide", 'release: "\\e]0;x\\a\\x9b2J"').replace("takes: 3", '"t\\ekes\\n": 3')
    FILE.write_text(nasty, encoding="utf-8")
    (HOME / "a\x1b[31m\nb.yaml").write_text(nasty, encoding="utf-8")
    for name in ("text", "json", "github"):
        code, out, _ = run(capsys, "--format", name)
        assert code == 1
        assert all(char.isprintable() or char == "\n" for char in out)
    assert "a?[31m?b.yaml:" in run(capsys)[1]


def test_a_name_in_no_encoding_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    name = os.fsdecode(b"\xff.yaml")
    (HOME / name).write_text(BASE, encoding="utf-8")
    code, out, _ = run(capsys)
    assert code == 1
    assert f"{HOME}/?.yaml:" in out
    assert str(HOME / name) in {p["file"] for p in json.loads(run(capsys, "--format", "json")[1])["problems"]}


def test_the_program_itself_runs() -> None:
    FILE.write_text(GUILTY, encoding="utf-8")
    ran = subprocess.run(
        [sys.executable, "-m", "undertrim.cli", "check", FILE], capture_output=True, text=True, check=False
    )
    assert (ran.returncode, ran.stderr) == (1, "")
    assert ran.stdout.startswith(MESSAGE)


@pytest.fixture
def elsewhere(tmp_path: Path) -> Path:
    """A workspace with no record in it."""
    (tmp_path / "empty" / "records" / "vehicles").mkdir(parents=True)
    return tmp_path / "empty"


@pytest.mark.parametrize("arguments", [(), ("--format", "json"), ("--format", "github")])
def test_a_collection_without_records_is_not_one_without_problems(
    elsewhere: Path, capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...]
) -> None:
    assert cli.main(["check", "--in", str(elsewhere), *arguments]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("undertrim: no records found: they are .yaml files below ")


def test_nothing_is_built_of_no_records(elsewhere: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["build", "--in", str(elsewhere)]) == 2
    assert "no records found" in capsys.readouterr().err
    assert [path.name for path in elsewhere.iterdir()] == ["records"]


def test_a_record_under_another_name_is_a_problem(elsewhere: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = elsewhere / "records" / "vehicles"
    (folder / "finch-2014-2018.yaml.txt").write_text("format: 1\n")
    assert cli.main(["check", "--in", str(elsewhere)]) == 1
    assert "this is not read: a record's name ends in '.yaml'" in capsys.readouterr().out
    assert cli.main(["check", str(folder)]) == 1
    assert "1 error" in capsys.readouterr().out
