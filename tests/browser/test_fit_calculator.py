"""Fit in a browser: the same verdicts, numbers and words as Python's, for the worked examples and for 1,500 random questions."""

import math
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest
from browsing import ROOT
from playwright.sync_api import Page

from undertrim.derive.fit import receiver, speaker
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.speaker import Spacer
from undertrim.derive.fit.stock import Gear, stock
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts.fit import verdict_words
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.store import Workspace
from undertrim.record.units import UnitError, parse, show
from undertrim.resources import table, top
from vectors.fit import FIXED, USUAL, Case, randoms, said, usual

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


def test_the_form_on_a_page_gives_the_verdict_of_the_program(phone: Page, site: Path) -> None:
    vehicle = Vehicle(*_record("kelbrook/finch-2014-2018"), stock(Workspace(ROOT)), USUAL)
    phone.goto((site / "vehicles/kelbrook/finch-2014-2018.html").as_uri())
    for name, opening in vehicle.record.openings.items():
        form = phone.locator(f"#opening-{name} details.ut-try")
        form.locator("> summary").click()
        for gear in vehicle.stock.of(opening.kind):
            form.locator(f"#try-{name}-from").select_option(gear.id)
            shown = form.locator(".ut-try-verdict").inner_text()
            expected = sized(vehicle, opening, gear)
            assert expected.headline.endswith(shown.split(" ", 1)[1].removeprefix(verdict_words(expected)).strip()), (
                name,
                gear.id,
            )
            assert verdict_words(expected) in shown


def test_what_cannot_be_read_is_said_beside_its_field(phone: Page, site: Path) -> None:
    phone.goto((site / "vehicles/kelbrook/finch-2014-2018.html").as_uri())
    form = phone.locator("#opening-front-door details.ut-try")
    form.locator("> summary").click()
    form.get_by_label("Mounting depth").fill("58")
    assert form.get_by_text("'58' has no unit: write '58 mm' or '58 in'").is_visible()
    assert form.get_by_text("1 field cannot be read").is_visible()
    form.get_by_label("Mounting depth").fill("2 3/16 in")
    assert form.locator(".ut-try-wrong:not(:empty)").count() == 0
    assert "cannot be told" in form.locator(".ut-try-verdict").inner_text()


def test_a_changed_clearance_changes_the_verdict(phone: Page, site: Path) -> None:
    phone.goto((site / "vehicles/kelbrook/finch-2014-2018.html").as_uri())
    form = phone.locator("#opening-dash details.ut-try")
    form.locator("> summary").click()
    form.locator("#try-dash-from").select_option("pellworth-brae-10")
    form.get_by_label("Room for plugs behind it").fill("")
    assert "fits" in form.locator(".ut-try-verdict").inner_text()
    form.locator("form details > summary").click()
    form.get_by_label("For plugs", exact=True).fill("100 mm")
    assert "does not fit" in form.locator(".ut-try-verdict").inner_text()


def _record(address: str) -> tuple[VehicleRecord, str]:
    entry = Workspace(ROOT).load(ROOT / "records" / "vehicles" / f"{address}.yaml")
    assert isinstance(entry.record, VehicleRecord)
    return entry.record, address


def sized(vehicle: Vehicle, opening: Opening, gear: Gear) -> Fit:
    """The verdict by size alone, in a car of any kind; the form does not know the impedance."""
    between = [
        item for item in vehicle.stock.items if item.conditions(vehicle.address, opening.id) or not item.facts.suits
    ]
    if opening.kind == "receiver":
        return receiver.fit(gear, opening, [item for item in between if item.facts.kind == "kit"], vehicle.usual)
    rings = [Spacer(item, bool(item.facts.suits)) for item in between if item.facts.kind == "spacer"]
    return speaker.fit(gear, opening, rings, vehicle.usual)
