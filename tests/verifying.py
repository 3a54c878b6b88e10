"""One record in a folder, and the `verify` command on it."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"
KNOWN = BASE.replace(
    "parts:\n", "restraint: {wait: 2 min, memory_keeper: forbidden, read_faults_first: no, source: e1}\nparts:\n"
)
"""A record of which nothing stands in the way of being verified."""


def laid(root: Path, text: str) -> None:
    """The record in a workspace at `root`."""
    (root / HOME).mkdir(parents=True)
    (root / FILE).write_text(text, encoding="utf-8")


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    """A command in the working directory: its exit code, and what it said on both ways."""
    code = cli.main([*words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def verify(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    """The same of `verify` on the record."""
    return run(capsys, "verify", FILE.stem, *words)
