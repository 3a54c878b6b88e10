"""Evidence is looked for where the schema has a `source`, not where something is called so."""

import pytest
from rule_pages import compose, load

from undertrim.check.findings import Subject
from undertrim.check.rules import named_but_absent, unused_evidence
from undertrim.record.model import VehicleRecord

PIECE = """
variants:
  source: {{ask: Which one plays, choices: {{tape: {{label: Tape}}, disc: {{label: Disc}}}}}}
evidence:
  e2: {{how: seen, on: 2026-03-09, by: tw}}
parts:
  source:
    name: Sound source
    when: {{source: tape}}
    release: slide
    source: [{names}]
"""


@pytest.mark.parametrize(
    ("names", "absent", "unused"), [("e1, e2", [], []), ("e1", [], ["e2"]), ("e2, e3", ["e3"], [])]
)
def test_a_part_and_a_variant_may_be_called_source(names: str, absent: list[str], unused: list[str]) -> None:
    entry = load("a/b.yaml", compose(PIECE.format(names=names)))
    assert isinstance(entry.record, VehicleRecord)
    subject = Subject(entry, entry.record)
    assert [f.message for f in named_but_absent.check(subject)] == [f"no evidence '{name}'" for name in absent]
    assert [f.pointer[-1] for f in unused_evidence.check(subject)] == unused


def test_an_inch_fraction_with_a_point_is_met_with_its_stroke() -> None:
    [problem] = load(
        "a/b.yaml",
        compose("parts:\n  a:\n    name: A\n    release: pull\n    held_by: [{screw: hex 7.32 mm, count: 1}]\n"),
    ).problems
    assert problem.rule == "schema"
    assert problem.message == "no tool is made for 'hex 7.32 mm'"
    assert problem.hint.startswith("did you mean hex 7/32 in (5.56 mm)")
