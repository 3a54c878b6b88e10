"""What the benchmark measures is a collection without problems: a new rule that refuses its copies fails here, not months later."""

from pathlib import Path

import pytest
from herd import ROOT, herd

from bench import FEW, main, table
from undertrim.check import runner
from undertrim.check.shelf import stock

KINDS = len(list((ROOT / "records" / "vehicles").rglob("*.yaml")))


def test_the_checker_passes_a_herd_of_two_of_each(tmp_path: Path) -> None:
    made = herd(tmp_path, 2 * KINDS)
    assert made.size == 2 * KINDS
    assert runner.check(made.workspace).problems == ()


def test_gear_is_made_for_every_copy(tmp_path: Path) -> None:
    made = herd(tmp_path, 2 * KINDS)
    suited = {place.vehicle for gear in stock(made.workspace).items for place in gear.facts.suits}
    assert suited == {f"{path.parent.name}/{path.stem}" for path in made.paths}


def test_a_herd_without_all_kinds_names_none_that_is_not_there(tmp_path: Path) -> None:
    assert runner.check(herd(tmp_path, min(FEW)).workspace).problems == ()


def test_the_table_has_a_line_for_each_figure_and_its_growth() -> None:
    assert table({2: {"a": 1.0}, 4: {"a": 2.0}}).splitlines()[1].split() == ["a", "1", "2", "2.00"]


def test_a_few_mistakes_are_counted(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr("sys.argv", ["bench.py", "--few", "--mistakes"])
    assert main() == 0
    assert "never caught" in capsys.readouterr().out
