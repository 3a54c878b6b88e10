"""Tests that share something costly are given to one process."""

import re
from pathlib import Path

import pytest

from sharing import SLOW, TOGETHER, group, rank

TESTS = Path(__file__).parent
FILES = [path.relative_to(TESTS).as_posix() for path in TESTS.rglob("test_*.py")]


@pytest.mark.parametrize("pattern", TOGETHER)
def test_a_pattern_names_files_that_are_there(pattern: str) -> None:
    assert any(re.fullmatch(pattern, file) for file in FILES)


@pytest.mark.parametrize("name", SLOW)
def test_a_slow_test_is_there(name: str) -> None:
    file, _, function = name.partition("::")
    assert f"\ndef {function}(" in (TESTS / file).read_text(encoding="utf-8")


def test_slow_ones_are_at_the_head() -> None:
    assert rank(f"tests/{SLOW[0]}[README.md]") < rank("tests/test_cli.py::test_a")


def test_groups() -> None:
    assert (
        group("tests/browser/test_looks.py::test_a[b::c]") == group("tests/browser/test_tour.py::test_d") == "browser"
    )
    assert group("tests/test_packaging.py::test_a") == group("tests/test_packaging.py::test_b")
    assert group("tests/test_cli.py::test_a") != group("tests/test_cli.py::test_b")
    assert group("tests/test_cli.py::test_a[b]") == group("tests/test_cli.py::test_a[c::d]")
