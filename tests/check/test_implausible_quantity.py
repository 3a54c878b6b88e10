"""The ends of every range in the schemas belong to it, and nothing beyond them."""

import pytest
from rule_pages import Example, compose, load, say

from undertrim.check.findings import Subject
from undertrim.check.rules import implausible_quantity
from undertrim.record.model import VehicleRecord

OPENING = """
openings:
  dash:
    name: Radio opening
    kind: receiver
    behind: [radio]
    kit: needed
    face: {{width: 182 mm, height: 53 mm}}
    depth: {{clear: {clear}}}
"""
GEAR = """
gear:
  kind: spacer
  maker: Sandmartin
  model: Plank
  thickness: {value}
  hole: {{shape: round, diameter: 99 mm}}
"""


def said(piece: str) -> list[str]:
    return [text for _, _, text in say(Example({"a/b.yaml": compose(piece)}, ()), implausible_quantity)]


@pytest.mark.parametrize("clear", ["20 mm", "500 mm", "20.0 mm", "50 cm", "2 1/2 in", "unknown"])
def test_the_ends_belong_to_the_range(clear: str) -> None:
    assert said(OPENING.format(clear=clear)) == []


# 20 mm is 0.787 in and 500 mm is 19.685 in: 25.4 mm to the inch, exact.
@pytest.mark.parametrize("clear", ["19.9 mm", "501 mm", "0.78 in", "19 3/4 in", "0 mm", "5 m"])
def test_beyond_the_ends_is_outside(clear: str) -> None:
    [message] = said(OPENING.format(clear=clear))
    assert message.startswith(f"warning: clear depth '{clear}' is outside the usual 20 mm to 500 mm (")


@pytest.mark.parametrize(
    ("value", "hint"),
    [
        ("0.2 mm", "is it '0.2 in'?"),
        ("0.02 mm", "check number and unit"),
        ("2 mm", ""),
        ("80 mm", ""),
        ("12 in", "is it '12 mm'?"),
    ],
)
def test_gear_is_looked_at_too(value: str, hint: str) -> None:
    assert [message.partition("(")[2].rstrip(")") for message in said(GEAR.format(value=value))] == (
        [hint] if hint else []
    )


@pytest.mark.parametrize(("typed", "meant"), [("1 1/2 in", ""), ("12 3/16 in", "check number and unit")])
def test_a_fraction_is_never_offered_in_millimetres(typed: str, meant: str) -> None:
    messages = said(GEAR.format(value=typed))
    assert [message.partition("(")[2].rstrip(")") for message in messages] == ([meant] if meant else [])


def test_what_the_schema_refuses_is_left_to_it() -> None:
    entry = load("a/b.yaml", compose(OPENING.format(clear="64")))
    assert [problem.message for problem in entry.problems] == ["'64' has no unit"]
    assert isinstance(entry.record, VehicleRecord)
    assert list(implausible_quantity.check(Subject(entry, entry.record))) == []
