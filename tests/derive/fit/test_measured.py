"""Each value is as uncertain as what it was measured with: a scale is read to half of its step, as digits are. Worked by hand."""

from typing import Any

import pytest

from fitting import CAR
from making import record
from undertrim.derive.fit.measured import reckoned
from undertrim.record.instruments import coarseness, scales, too_fine
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.units import parse


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Calliper 0.05 mm, angle gauge 0.1 deg, tape 1 cm", [("length", 0.05), ("angle", 0.1), ("length", 10)]),
        ("Multimeter 0.01 V, 1 mA, 1 ohm", [("voltage", 0.01), ("current", 0.001), ("resistance", 1)]),
        ("Tape 1/16 in", [("length", 1.5875)]),
        ("Steel rule 0.5mm.", [("length", 0.5)]),
        ("Depth gauge no. 3, 0.1 mm", [("length", 0.1)]),
        ("Calliper", []),
        ("", []),
        ("Rule of 2 minutes", [("time", 120)]),
        ("Gauge 0 mm", []),
    ],
)
def test_scales_are_read_out_of_the_words(said: str, found: list[tuple[str, float]]) -> None:
    read = scales(said)
    assert [scale.kind for scale in read] == [kind for kind, _ in found]
    assert [scale.value for scale in read] == pytest.approx([value for _, value in found])


@pytest.mark.parametrize(
    ("value", "said", "step"),
    [
        ("62 mm", ["Tape 1 cm"], 5),  # half of a centimetre
        ("62.0 mm", ["Tape 1 cm"], 5),
        ("62 mm", ["Calliper 0.05 mm"], 0.5),  # the digits are the coarser
        ("62.00 mm", ["Calliper 0.05 mm"], 0.025),
        ("62 mm", ["Calliper 0.05 mm, tape 1 cm"], 0.5),  # digits that no tape can tell: the calliper is meant
        ("62.0 mm", ["Calliper 0.05 mm", "Steel rule 0.5 mm"], 0.25),  # the coarsest of two
        ("62 mm", ["Calliper 0.05 mm", "Tape 1 cm"], 5),
        ("62 mm", ["Angle gauge 1 deg", ""], 0.5),  # nothing of its kind
        ("2 3/16 in", ["Tape 1/8 in"], 1.5875),
    ],
)
def test_the_coarser_of_digits_and_instrument_counts(value: str, said: list[str], step: float) -> None:
    assert coarseness(parse(value, "length"), [scales(one) for one in said]) == pytest.approx(step)


def test_digits_are_too_fine_where_the_scale_cannot_show_them() -> None:
    tape, rule = scales("Tape 1 cm"), scales("Steel rule 0.5 mm")
    assert too_fine(parse("62 mm", "length"), tape) == tape[0]
    assert too_fine(parse("60 mm", "length"), tape) is None  # a whole number of its steps
    assert too_fine(parse("62.5 mm", "length"), rule) is None
    assert too_fine(parse("62.4 mm", "length"), rule) == rule[0]
    assert too_fine(parse("3 deg", "angle"), tape) is None


EVIDENCE = """
evidence:
  fine: {how: measured, on: 2026-03-02, by: rk, car: one, with: "Calliper 0.05 mm, angle gauge 5 deg"}
  coarse: {how: measured, on: 2026-03-03, by: rk, car: one, with: Tape 1 cm}
"""


def steps(car: str, *more: str) -> dict[str, Any]:
    made = record(car, EVIDENCE, *more)
    opening, _ = reckoned(made, made.openings["front-door"])
    assert isinstance(opening, SpeakerOpening)
    assert opening.depth
    assert opening.hole
    values = {
        "hole": opening.hole.diameter,
        "clear": opening.depth.clear,
        "leans": opening.depth.leans,
        "ohm": opening.impedance,
    }
    return {name: getattr(value, "step", None) for name, value in values.items()}


LEANING = CAR.replace("leans: none", "leans: 3 deg").replace(
    "    impedance: 4 ohm\n", "    impedance: 4 ohm\n    source: coarse\n"
)


def test_the_nearest_source_counts() -> None:
    assert steps(LEANING) == {"hole": 5, "clear": 5, "leans": 0.5, "ohm": 0.5}
    nearer = LEANING.replace("leans: 3 deg}", "leans: 3 deg, source: fine}")
    assert steps(nearer) == {"hole": 5, "clear": 0.5, "leans": 2.5, "ohm": 0.5}
    assert steps(CAR)["hole"] == 0.5


@pytest.mark.parametrize(
    ("settled", "step"), [("    settled_by: fine\n", 0.5), ("    settled_by: coarse\n", 5), ("", 0.5)]
)
def test_a_conflict_says_which_source_a_value_is_from(settled: str, step: float) -> None:
    """Unsettled it is reckoned with the value that 'fine' claims, the smaller one."""
    conflict = f"""
conflicts:
  depth:
    about: openings/front-door/depth/clear
    claims:
      - {{says: 62 mm, source: fine}}
      - {{says: 70 mm, source: coarse}}
{settled}"""
    assert steps(LEANING, conflict)["clear"] == step
