"""Pairs of units in running text, in every text of a record. Conversions after NIST SP 811, appendix B.9."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rule_pages import Example, compose, say

from undertrim.check.rules import unit_pair_disagrees

LBF_FT = 1.355818  # N.m, NIST SP 811


def said(text: str) -> list[str]:
    piece = f"duties:\n  clock: {{kept_by: stays, note: {text!r}}}\n"
    example = Example({"brindleway/otter-2014-2018.yaml": compose(piece)}, ())
    return [message for _, _, message in say(example, unit_pair_disagrees)]


@pytest.mark.parametrize(
    ("text", "pair"),
    [
        ("Take 7/32 in (6.5 mm).", "'7/32 in' and '6.5 mm'"),
        ("Cut 50 mm (2 in) off the foam.", "'50 mm' and '2 in'"),
        ("Tighten to 40 N.m (40 lb-ft).", "'40 N.m' and '40 lb-ft'"),
        ("Tighten to 5 N.m (4 lbf.ft).", "'5 N.m' and '4 lbf.ft'"),
        ("Tighten to 10 N.m (10 lbf.in).", "'10 N.m' and '10 lbf.in'"),
        ("It is 2 in = 55 mm there.", "'2 in' and '55 mm'"),
        ("A gap of 62 mm (2.4 in), then 62 mm (2.54 in).", "'62 mm' and '2.54 in'"),
        ("The body is 180 x 51 mm (7 x 2 in).", "'180 x 51 mm' and '7 x 2 in'"),
    ],
)
def test_two_units_that_disagree(text: str, pair: str) -> None:
    [message] = said(text)
    assert message.startswith(f"error: {pair} do not agree (it is ")


@pytest.mark.parametrize(
    "text",
    [
        "Take 7/32 in (5.5 mm).",
        "110 N.m (81 lb-ft).",
        "62 mm (2.4 in).",
        "64 mm (19 mm of it the bracket).",
        "20 mm (16 mm).",
        "The body is 178 x 51 mm (7 x 2 in).",
        "40 N.m for M10 (in 2 steps), 12 V (4 ohm).",
        "10 mm or 3/8 in sockets.",
    ],
)
def test_two_units_that_agree(text: str) -> None:
    assert said(text) == []


@given(st.integers(1, 250), st.sampled_from([0.96, 0.965, 0.975, 0.98, 1.0, 1.02, 1.025, 1.035, 1.04]))
def test_a_torque_may_be_off_by_three_per_cent(newton_metres: int, off: float) -> None:
    text = f"Tighten to {newton_metres} N.m ({newton_metres / LBF_FT * off:.4f} lbf.ft)."
    assert bool(said(text)) == (abs(off - 1) > 0.03)


def test_gear_is_looked_at_too() -> None:
    text = """gear:
  kind: spacer
  maker: Sandmartin
  model: Plank 69
  thickness: 6 mm
  hole: {shape: round, diameter: 128 mm}
  note: It is 6 mm (1 in) thick.
"""
    example = Example({"spacers/sandmartin-plank-69.yaml": compose(text)}, ())
    assert [line for _, line, _ in say(example, unit_pair_disagrees)] == [9]
