"""Fit in a browser: the same verdicts, numbers and words as Python's, for the worked examples and for 1,500 random questions."""

import math
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from undertrim.record.units import UnitError, parse, show
from undertrim.resources import table, top
from vectors.fit import FIXED, Case, randoms, said, usual

EACH = """([units, usual, cases]) => {
  undertrimLengths.use(units);
  return cases.map((one) => undertrimFit[one.kind](one.gear, one.opening, one.between, usual));
}"""
READ = """([units, texts]) => {
  undertrimLengths.use(units);
  return texts.map((text) => { try { return undertrimLengths.read(text); } catch (error) { return { message: error.message, hint: error.hint }; } });
}"""


@pytest.fixture
def scripts(phone: Page, tmp_path: Path) -> Page:
    """An empty page with the two scripts, opened from disk."""
    assets = (top("site_overrides") / "assets" / "undertrim").as_uri()
    page = tmp_path / "fit.html"
    tags = "".join(f'<script src="{assets}/{name}.js"></script>' for name in ("lengths", "fit"))
    page.write_text(f'<!doctype html><meta charset="utf-8"><title>Fit</title>{tags}', encoding="utf-8")
    phone.goto(page.as_uri())
    return phone


def differences(ours: Any, theirs: Any, where: str = "") -> Iterator[str]:
    """Where two answers differ: numbers by more than 1e-9, all else at all."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        for key in ours.keys() | theirs.keys():
            yield from differences(ours.get(key), theirs.get(key), f"{where}/{key}")
    elif isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        for place, (one, other) in enumerate(zip(ours, theirs, strict=True)):
            yield from differences(one, other, f"{where}/{place}")
    elif isinstance(ours, float | int) and isinstance(theirs, float | int) and not isinstance(ours, bool):
        if not math.isclose(ours, theirs, rel_tol=1e-12, abs_tol=1e-9):
            yield f"{where}: {ours} and {theirs}"
    elif ours != theirs:
        yield f"{where}: {ours!r} and {theirs!r}"


def compare(page: Page, cases: Sequence[Case]) -> list[str]:
    answers = page.evaluate(EACH, [table("units")["length"], usual(), [case.asked() for case in cases]])
    kinds = []
    for case, answer in zip(cases, answers, strict=True):
        expected = said(case.answer())
        assert list(differences(expected, answer)) == [], case
        kinds.append(answer["kind"])
    return kinds


def test_worked_examples(scripts: Page) -> None:
    compare(scripts, FIXED)


@pytest.mark.parametrize("seed", [20261125, 7, 365])
def test_random_questions(scripts: Page, seed: int) -> None:
    kinds = compare(scripts, randoms(seed, 500))
    for kind in ("fits", "fits-with", "marginal", "unknown", "does-not-fit"):
        assert kinds.count(kind) > 4, kind


LENGTHS = (
    "62 mm", "6.2 cm", "0.062 m", "2 3/16 in", "2-3/16 in", '7/32"', "2 in", "2.19 in", "1 1/3 in", "  62   mm ", ".5 mm", "62mm", "2 ft",
    "1200 mm", "0.4 mm", "300.05 mm", "MM 62", "62", "62 furlong", "62,5 mm", "1,200 mm", "5/4 in", "1/0 in", "3/8 mm", "-3 mm", "", "a mm",
)  # fmt: skip


def test_lengths_are_read_as_the_program_reads_them(scripts: Page) -> None:
    answers = scripts.evaluate(READ, [table("units")["length"], list(LENGTHS)])
    for text, answer in zip(LENGTHS, answers, strict=True):
        expected = read(text)
        if "message" in expected:
            assert (answer.get("message"), bool(answer.get("hint"))) == (expected["message"], True), text
        else:
            assert list(differences(expected, answer)) == [], text


def read(text: str) -> dict[str, Any]:
    """A length as Python reads it, or what it says of one that is none."""
    try:
        known = parse(text, "length")
    except UnitError as error:
        return {"message": error.message}
    return {"value": known.value, "step": known.step, "text": known.text, "shown": show(known)}
