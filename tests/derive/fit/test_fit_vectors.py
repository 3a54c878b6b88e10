"""The questions of fit that the page's script is held to: what the worked ones come to, that all kinds occur, and that their comparison bites."""

import json
from collections import Counter
from functools import cache

import pytest

from undertrim.derive.fit.verdict import KINDS
from vectors.fit import FIXED, USUAL, Case, said
from vectors.fit_random import randoms
from vectors.printed import printed


@cache
def made() -> list[Case]:
    return randoms(20261125, 500)


# Worked by hand: the formulas stand beside the examples in vectors/fit.py
@pytest.mark.parametrize("case", FIXED, ids=lambda case: case.name)
def test_worked_examples(case: Case) -> None:
    found = case.answer()
    margins = {check.name: check.margin for check in found.checks}
    assert found.kind == case.kind
    assert {name: margins[name] for name in case.margins} == pytest.approx(case.margins, abs=0.005)


def test_every_worked_example_says_what_it_comes_to() -> None:
    assert all(case.kind and (case.margins or case.kind == "unknown") for case in FIXED)
    assert len({case.name for case in FIXED}) == len(FIXED)


def test_every_kind_of_answer_occurs() -> None:
    kinds = Counter(case.answer().kind for case in made())
    assert all(kinds[kind] >= 5 for kind in KINDS), kinds


def test_every_check_and_verdict_occurs() -> None:
    checks = [check for case in (*made(), *randoms(8, 1000)) for check in case.answer().checks]
    assert {check.verdict for check in checks} == {"fits", "marginal", "fails", "unknown"}
    assert {check.name.removesuffix("-across").removesuffix("-up") for check in checks} == {
        "hole", "flange", "panel", "bolts", "spacer-bolts", "depth", "grille", "spacer", "body", "front", "kit", "bolts-angle", "spacer-bolts-angle",
    }  # fmt: skip


def test_every_way_occurs() -> None:
    """Straight in, turned, on the bracket, on a piece from stock, on one to get."""
    fits = [case.answer() for case in randoms(20261125, 1500)]
    assert sum(fit.way.turned for fit in fits) >= 2
    assert sum(fit.way.on_bracket for fit in fits) >= 5
    assert sum(bool(fit.parts) for fit in fits) >= 5
    assert sum(bool(fit.to_get) for fit in fits) >= 5
    assert sum(case.usual != USUAL for case in made()) >= 50


def test_margins_come_close() -> None:
    """Of nothing at all, within the uncertainty either way, and of just the uncertainty."""
    checks = [check for case in (*made(), *FIXED) for check in case.answer().checks]
    numbers = [(check.margin, check.uncertainty or 0) for check in checks if check.margin is not None]
    assert sum(margin == 0 for margin, _ in numbers) >= 20
    assert sum(0 < margin < spread for margin, spread in numbers) >= 20
    assert sum(-spread < margin < 0 for margin, spread in numbers) >= 20
    assert any(margin and abs(margin) == spread for margin, spread in numbers)


def test_the_same_seed_makes_the_same_questions() -> None:
    assert randoms(5, 40) == randoms(5, 40) != randoms(6, 40)


def test_questions_and_answers_are_plain_data() -> None:
    for case in (*FIXED, *made()[:50]):
        for data in (case.asked(), said(case.answer())):
            assert json.loads(json.dumps(data, allow_nan=False)) == data


def test_what_is_printed_is_compared_and_bare_numbers_are_not() -> None:
    one = {"words": "62 mm", "margin": 1.0, "known": True, "more": [{"text": "a", "value": 2}, 3.5], "none": None}
    assert printed(one) == {"words": "62 mm", "known": True, "more": [{"text": "a"}], "none": None}
