"""Gear records go through the gear rules, with positions, allows and crashes as vehicles do."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from undertrim.check import register, runner
from undertrim.check.findings import Finding, GearSubject
from undertrim.record.problem import Level
from undertrim.record.store import Workspace

SPACER = """format: 1
demo: yes
gear:
  kind: spacer
  maker: Sandmartin
  model: Plank 69
  thickness: {thickness}
  hole: {{shape: round, diameter: 128 mm}}
"""


def lines(root: Path, name: str, text: str) -> list[tuple[int, Level, str]]:
    path = root / "records" / "gear" / name
    path.parent.mkdir(parents=True)
    path.write_text(text, encoding="utf-8")
    problems = runner.check(Workspace(root)).problems
    return [(problem.position.line, problem.level, problem.rule) for problem in problems]


def test_a_good_one_passes(tmp_path: Path) -> None:
    assert lines(tmp_path, "spacers/sandmartin-plank-69.yaml", SPACER.format(thickness="6 mm")) == []


def test_both_gear_rules_speak(tmp_path: Path) -> None:
    assert lines(tmp_path, "speakers/sandmartin-plank-69.yaml", SPACER.format(thickness="600 mm")) == [
        (3, Level.ERROR, "gear-file-name"),
        (7, Level.WARNING, "implausible-quantity"),
    ]


@pytest.mark.parametrize(
    "name",
    [
        "spacers/more/sandmartin-plank-69.yaml",
        "spacers/sandmartin-plank-69.yml",
        "more/spacers/sandmartin-plank-69.yaml",
    ],
)
def test_the_whole_path_counts(tmp_path: Path, name: str) -> None:
    assert lines(tmp_path, name, SPACER.format(thickness="6 mm")) == [(3, Level.ERROR, "gear-file-name")]


def test_a_finding_can_be_allowed(tmp_path: Path) -> None:
    text = SPACER.format(thickness="600 mm  # allow implausible-quantity: it is a whole board")
    assert lines(tmp_path, "spacers/sandmartin-plank-69.yaml", text) == []


def test_a_gear_rule_that_crashes_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class Crashing:
        LEVEL = Level.ERROR

        def check_gear(self, subject: GearSubject, /) -> Iterator[Finding]:
            raise RuntimeError(str(subject.source.path))

    monkeypatch.setitem(register.GEAR_RULES, "gear-file-name", Crashing())
    found = lines(tmp_path, "spacers/sandmartin-plank-69.yaml", SPACER.format(thickness="600 mm"))
    assert found == [(1, Level.ERROR, "crash"), (7, Level.WARNING, "implausible-quantity")]
