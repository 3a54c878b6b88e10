"""What the written pages show of the program's answers, worked out anew.

`python tests/shown.py` writes the answers into README.md and the handbook; the tests compare.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

from pages import HANDBOOK, ROOT, Block, blocks, written
from undertrim.check import reports, runner
from undertrim.record.source import read_text
from undertrim.record.store import entry

README = ROOT / "README.md"
LESSON = HANDBOOK / "writing-a-record.md"
PATH = Path("records/vehicles/mirefield/teal-2012-2016.yaml")


def said(text: str) -> str:
    """What `undertrim check` prints about the lesson's record."""
    problems = runner.check_entry(entry(PATH, "vehicle", read_text(text, PATH)))
    return reports.text(runner.Report(1, problems))


def record() -> str:
    """The lesson's record: its pieces one after another."""
    return "".join(block.body for block in blocks(LESSON) if block.language == "yaml")


def mistaken(change: Block) -> str:
    """The record with one of the lesson's changes made to it."""
    lines = change.body.splitlines()
    before = "".join(f"{line[1:]}\n" for line in lines if line.startswith("-"))
    after = "".join(f"{line[1:]}\n" for line in lines if line.startswith("+"))
    assert record().count(before) == 1, before
    return record().replace(before, after)


def lesson() -> Iterator[Block]:
    """The lesson's blocks: a change is followed by its message, the first piece and the last by theirs."""
    before = Block("", "")
    pieces = 0
    for block in blocks(LESSON):
        answer = block
        if block.language == "text" and before.language == "diff":
            answer = Block("text", said(mistaken(before)))
        elif block.language == "text" and pieces:
            answer = Block("text", said(before.body if pieces == 1 else record()))
        yield answer
        pieces += block.language == "yaml"
        before = block


def readme() -> Iterator[Block]:
    """The readme's blocks: a shell block is followed by what it prints, all in one copy of the records."""
    with tempfile.TemporaryDirectory() as folder:
        for name in ("records", "mkdocs.yml"):
            source = ROOT / name
            (shutil.copytree if source.is_dir() else shutil.copy)(source, Path(folder) / name)
        before = Block("", "")
        for block in blocks(README):
            yield Block("text", _printed(before.body, folder)) if block.language == "text" else block
            before = block


def _printed(script: str, folder: str) -> str:
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    ran = subprocess.run(
        ["sh", "-c", script],
        cwd=folder,
        env={**os.environ, "PATH": path},
        capture_output=True,
        text=True,
        check=False,
    )
    assert not ran.stderr, ran.stderr
    return ran.stdout


SHOWN: dict[Path, Callable[[], Iterator[Block]]] = {README: readme, LESSON: lesson}

if __name__ == "__main__":
    for page, answers in SHOWN.items():
        page.write_text(written(page, list(answers())), encoding="utf-8")
