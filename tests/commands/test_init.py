"""A collection from an empty folder: what is written, what is kept, and that the files for code hosts are what these hosts read."""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from ruamel.yaml import YAML

from pdf_text import texts
from undertrim.cli import main
from undertrim.commands import init
from undertrim.commands.installed import installed, pinned
from undertrim.record import collection
from undertrim.record.store import Workspace
from undertrim.resources import inside
from undertrim.words import language, message, say, speaking

FILES = inside("commands", "collection")
SCHEMAS = {
    "vendor.github-workflows": ".github/workflows/*.yml",
    "vendor.github-issue-forms": ".github/ISSUE_TEMPLATE/*.yml",
    "vendor.gitlab-ci": ".gitlab-ci.yml",
}
READS_ONLY = {"contents": "read"}


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("begun") / "Bay Four"
    assert main(["init", str(folder), "--repository", "https://code.example/bay/cars"]) == 0
    return folder


def test_it_is_a_collection_without_problems(begun: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--in", str(begun)]) == 0
    assert main(["format", "--check", "--in", str(begun)]) == 0
    assert "2 records checked, no problems" in capsys.readouterr().out
    said = collection.settings(begun)
    assert (said.name, said.address, said.repository) == ("Bay Four", "", "https://code.example/bay/cars")
    for record in Workspace(begun).files():
        first, _, _ = record.read_text(encoding="utf-8").partition("\n")
        assert (record.parent / first.partition("$schema=")[2]).is_file(), "editors find the schema"


def test_what_is_there_is_kept_and_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    mine = {"README.md": "mine\n", "records/handbook/safety.md": "# Mine\n"}
    for name, text in mine.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    (tmp_path / "ci.sh").symlink_to(tmp_path / "nowhere")
    assert main(["init", str(tmp_path)]) == 0
    first, *said = sorted(capsys.readouterr().out.splitlines(), key=lambda line: not line[0].isdigit())
    assert said == [
        f"{name} is there already: kept as it is" for name in ("ci.sh", "README.md", "records/handbook/safety.md")
    ]
    assert {name: (tmp_path / name).read_text(encoding="utf-8") for name in mine} == mine
    assert not (tmp_path / "nowhere").exists()
    assert first.endswith(f"files written in {tmp_path}")
    assert main(["init", str(tmp_path)]) == 0
    assert capsys.readouterr().out.endswith(f"0 files written in {tmp_path}\n")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--name", "a\nb"], "'name' must be text in quotes, on one line"),
        (["--address", "javascript:alert(1)"], "'address' must be an address of the web in quotes"),
        (["--repository", "https://x.example/?q"], "'repository' must be an address of the web in quotes"),
    ],
)
def test_what_the_settings_could_not_hold_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    assert main(["init", str(tmp_path / "new"), *words]) == 2
    assert said in capsys.readouterr().err
    assert not (tmp_path / "new").exists()


def test_a_name_with_signs_is_written_as_it_is_read(tmp_path: Path) -> None:
    name = 'Bay "4" \\ Söhne'
    assert main(["init", str(tmp_path), "--name", name]) == 0
    assert tomllib.loads((tmp_path / "undertrim.toml").read_text(encoding="utf-8"))["name"] == name
    assert (tmp_path / "README.md").read_text(encoding="utf-8").startswith(f"# {name}\n")


@pytest.mark.parametrize("schema", SCHEMAS)
def test_the_hosts_read_their_files(begun: Path, schema: str) -> None:
    files = sorted(begun.glob(SCHEMAS[schema]))
    assert files
    done = subprocess.run(
        [sys.executable, "-m", "check_jsonschema", "--builtin-schema", schema, *map(str, files)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout


def test_a_strangers_change_meets_no_secret_and_may_write_nothing(begun: Path) -> None:
    for path in sorted((begun / ".github/workflows").glob("*.yml")):
        text = path.read_text(encoding="utf-8")
        flow = YAML(typ="safe", pure=True).load(text)
        when = flow.get("on", flow.get(True))
        assert "pull_request_target" not in when
        assert "secrets." not in text
        assert flow["permissions"] in ({}, READS_ONLY)
        for name, job in flow["jobs"].items():
            writes = "write" in job.get("permissions", {}).values()
            steps = job["steps"]
            runs = " ".join(step.get("run", "") for step in steps)
            assert not (writes and re.search(r"ci\.sh|undertrim ", runs.replace("'undertrim take'", ""))), name
            assert not (writes and path.name == "check.yml" and "push" not in job["if"]), name
            assert "${{" not in runs, "what others wrote reaches a shell as a variable alone"
            assert all(re.fullmatch(r"[\w/-]+@[0-9a-f]{40}", step["uses"]) for step in steps if "uses" in step)
    assert "CI_JOB_TOKEN" not in (begun / ".gitlab-ci.yml").read_text(encoding="utf-8").partition("\nanswers:")[0]


@pytest.mark.parametrize("tag", ["en", "es"])
def test_the_texts_are_there_in_each_language(tag: str) -> None:
    assert _names(FILES / tag) == _names(FILES / "en")
    form = (FILES / tag / "dot_github/ISSUE_TEMPLATE/answers.yml").read_text(encoding="utf-8")
    with speaking(language(tag)):
        assert f"*{say(message('not-so/something-not-so'))}*" in form, "it names the button as the page does"
    folder = re.findall(r"^\| `([^`]+)`", (FILES / tag / "README.md").read_text(encoding="utf-8"), re.MULTILINE)
    assert folder == re.findall(r"^\| `([^`]+)`", (FILES / "en/README.md").read_text(encoding="utf-8"), re.MULTILINE)


def _names(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def test_the_versions_are_those_that_run_here() -> None:
    lines = list(pinned())
    assert lines[0].startswith("undertrim==")
    names = {one.metadata["Name"].lower() for one in installed()}
    assert {"mkdocs", "typst", "jinja2", "watchdog"} <= names, "also what is asked for by what is asked for"
    assert not {"pytest", "distributed", "check-jsonschema"} & names
    assert len(lines) == len(names) == len(set(lines))


def test_without_an_address_a_sheet_prints_none(begun: Path, tmp_path: Path) -> None:
    for address, lines in (("", []), ('address = "https://bay.example/"\n', ["https://bay.example/vehicles/"])):
        settings = begun / "undertrim.toml"
        before = settings.read_text(encoding="utf-8")
        settings.write_text(before + address, encoding="utf-8")
        out = tmp_path / f"{len(address)}.pdf"
        assert main(["sheet", "teal-2012-2016?jobs=front-door", "--out", str(out), "--in", str(begun)]) == 0
        settings.write_text(before, encoding="utf-8")
        printed = "".join("".join(texts(out.read_bytes())).split())
        assert [line for line in ("https://bay.example/vehicles/",) if line in printed] == lines
        assert ".html" in printed or not lines
        assert "undertrim.example" not in printed


def test_every_mark_is_filled_in(begun: Path) -> None:
    marks = re.compile(r"@[A-Z]{4,}@")
    assert any(marks.search(path.read_text(encoding="utf-8")) for path in FILES.rglob("*") if path.is_file())
    assert [
        path for path in begun.rglob("*") if path.is_file() and marks.search(path.read_text(encoding="utf-8"))
    ] == []
    assert init.__doc__
