"""The steps of the host's files that may write, run here with a stand-in for the host's command: what a stranger's change can and cannot make them do."""

import os
import re
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from undertrim.resources import inside

FLOWS = inside("commands", "collection") / "all/dot_github/workflows"
GIT = ("git", "-c", "user.name=rk", "-c", "user.email=rk@localhost", "-c", "commit.gpgsign=false")

pytestmark = pytest.mark.skipif(not shutil.which("bash"), reason="the host runs steps in bash")


def step(flow: str, job: str) -> str:
    """The last shell step of a job."""
    data: Any = YAML(typ="safe", pure=True).load((FLOWS / flow).read_text(encoding="utf-8"))
    runs: list[str] = [one["run"] for one in data["jobs"][job]["steps"] if "run" in one]
    return runs[-1]


def run(script: str, folder: Path, gh: str, **env: str) -> subprocess.CompletedProcess[str]:
    """As the host does it: `bash -e`, with `gh` doing what is said here."""
    (folder.parent / "bin").mkdir(exist_ok=True)
    stand_in = folder.parent / "bin" / "gh"
    stand_in.write_text(f"#!/bin/sh\n{gh}\n", encoding="utf-8")
    stand_in.chmod(0o755)
    path = f"{stand_in.parent}{os.pathsep}{os.environ['PATH']}"
    known = {**os.environ, "PATH": path, "GH_REPO": "bay/cars", "HEAD": "a" * 40, "RUN": "7", **env}
    return subprocess.run(
        ["bash", "-e", "-c", script], cwd=folder, env=known, capture_output=True, text=True, check=False
    )


def commented(folder: Path, names: str, review: str = "@rk: No safety fact is weaker", code: int = 0) -> str | None:
    """The comment that is posted where a change touches these files; None where none is."""
    folder.mkdir()
    (folder / "names").write_text(names, encoding="utf-8")
    (folder / "made.md").write_text(review, encoding="utf-8")
    gh = f"""case "$1 $2 $3" in
        "api --paginate repos/bay/cars/pulls?state=open") echo 4 ;;
        "api --paginate repos/bay/cars/pulls/4/files") cat names; exit {code} ;;
        "run download 7") mkdir review; cp made.md review/review.md ;;
        "pr comment 4") cp comment.md posted.md ;;
    esac"""
    done = run(step("comment.yml", "comment"), folder, gh)
    posted = folder / "posted.md"
    assert posted.exists() == (done.returncode == 0), done.stderr
    return posted.read_text(encoding="utf-8") if posted.exists() else None


def test_a_comment_says_when_the_change_may_have_made_it_up(tmp_path: Path) -> None:
    plain = commented(tmp_path / "a", "records/vehicles/kelbrook/finch-2014-2018.yaml\nclaims/x.json\n")
    assert plain == "@\N{ZERO WIDTH SPACE}rk: No safety fact is weaker"
    touched = commented(tmp_path / "b", "records/a.yaml\nci.sh\n.github/workflows/check.yml\n")
    assert touched
    assert touched.startswith("> **This change also touches 2 files outside records/ and claims/.**")
    assert touched.endswith(f"\n\n{plain}")
    many = commented(tmp_path / "c", "records/a.yaml\n" * 3_000)  # the host lists so many, and may leave out the one
    assert many
    assert "touches many files" in many
    assert commented(tmp_path / "d", "", code=1) is None  # not known is not none
    long = commented(tmp_path / "e", "records/a.yaml\n", "é" * 50_000)
    assert long
    assert len(long) <= 30_000


def changed(folder: Path, origin: Path) -> bytes:
    """A repository with something in each place, and a patch that changes all of them."""
    subprocess.run(["git", "init", "--quiet", "--bare", str(origin)], check=True)

    def git(*words: str) -> bytes:
        return subprocess.run([*GIT, "-C", str(folder), *words], check=True, capture_output=True).stdout

    def write(text: str, *names: str) -> None:
        for name in names:
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_text(text, encoding="utf-8")

    write("one\n", "records/a.yaml", "ci.sh", "claims/README.md")
    for words in (["init", "--quiet"], ["add", "--all"], ["commit", "--quiet", "-m", "base"]):
        git(*words)
    git("remote", "add", "origin", str(origin))
    write("two\n", "records/a.yaml", "ci.sh", "claims/README.md", ".github/workflows/x.yml")
    git("add", "--all")
    patch = git("diff", "--cached", "--binary")
    git("reset", "--quiet", "--hard")
    return patch


PROPOSING = 'case "$1 $2" in "pr list") echo 0 ;; *) echo "$@" >>../asked ;; esac'


def proposed(root: Path, patch: bytes) -> subprocess.CompletedProcess[str]:
    (root / "taken").mkdir(exist_ok=True)
    (root / "taken/taken.patch").write_bytes(patch)
    return run(step("answers.yml", "propose"), root / "work", PROPOSING, RUNNER_TEMP=str(root), NAME="issue-4")


def test_what_is_proposed_holds_records_and_claims_alone(tmp_path: Path) -> None:
    origin = tmp_path / "origin.git"
    patch = changed(tmp_path / "work", origin)
    out = proposed(tmp_path, patch.replace(b"/records/a.yaml", b"/records/../../x"))
    assert out.returncode != 0  # a path that leads out is refused, and nothing is pushed
    assert not (tmp_path / "x").exists()
    assert proposed(tmp_path, patch).returncode == 0
    show = ["git", "-C", str(origin), "show", "--name-only", "--format=", "answers/issue-4"]
    assert subprocess.run(show, check=True, capture_output=True).stdout.split() == [
        b"claims/README.md",
        b"records/a.yaml",
    ]
    asked = (tmp_path / "asked").read_text(encoding="utf-8")
    assert re.search(r"^pr create --head answers/issue-4", asked, re.MULTILINE)


def test_the_answers_of_an_issue_are_the_one_block_and_nothing_runs(tmp_path: Path) -> None:
    data: Any = YAML(typ="safe", pure=True).load((FLOWS / "answers.yml").read_text(encoding="utf-8"))
    script = next(one["run"] for one in data["jobs"]["take"]["steps"] if one.get("name") == "The answers of the issue")
    body = '### Answers\n\n```json\r\n{"x": "$(touch ran) `touch ran` ; touch ran"}\r\n```\n\n```json\nmore\n```\n'
    (tmp_path / "work/claims").mkdir(parents=True)
    done = run(script, tmp_path / "work", "", BODY=body, NUMBER="4")
    assert done.returncode == 0
    assert (tmp_path / "work/claims/issue-4.json").read_text(
        encoding="utf-8"
    ) == '{"x": "$(touch ran) `touch ran` ; touch ran"}\n'
    assert not list(tmp_path.rglob("ran"))
