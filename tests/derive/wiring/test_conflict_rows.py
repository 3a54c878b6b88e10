"""A wire on which the evidence disagrees is metered before anything is joined to it."""

import pytest

from fitting import named
from joining import car, harness, joined, row
from undertrim.derive.fit.kinds.receiver.functions import needs
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.row import State
from undertrim.record.model import VehicleRecord
from undertrim.words import say

EVIDENCE = """
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, with: Multimeter 0.01 V}
  e2: {how: told, on: 2026-03-02, by: rk}
"""
PINS = """
3: {function: illumination, colour: orange, behaves: on-off}
4: {function: battery-feed, colour: yellow, behaves: steady}
"""
LEADS = """
battery: {function: battery-feed, colour: yellow, behaves: steady}
lamps: {function: illumination, colour: orange, behaves: on-off}
antenna: {function: antenna-feed, colour: blue, behaves: on-off, limit: 300 mA}
"""
KNOT = harness("3: {function: illumination, colour: orange}\n4: {function: battery-feed, colour: yellow}")


def disputed(about: str, one: str, other: str, settled: str = "", *more: str) -> VehicleRecord:
    by = f", settled_by: {settled}" if settled else ""
    claims = f"[{{says: {one}, source: e1}}, {{says: {other}, source: e2}}]"
    return car(PINS, EVIDENCE, f"conflicts:\n  c: {{about: {about}, claims: {claims}{by}}}\n", *more)


PIN = "connectors/radio-main/pins/3"


@pytest.mark.parametrize("between", [(), (KNOT,)])
def test_a_disputed_pin_is_not_simply_joined(between: tuple[Gear, ...]) -> None:
    found = row(joined(disputed(f"{PIN}/function", "illumination", "antenna-feed"), LEADS, *between), "lamps")
    assert found.state is State.CONFLICT
    assert say(found.do).startswith("conflict: meter it first")
    assert any("illumination (e1) or antenna feed (e2)" in words for words in map(say, found.words))
    assert any(words.startswith("if it is antenna feed, never") for words in map(say, found.words))


def test_a_lead_that_has_no_partner_may_have_one_by_the_other_claim() -> None:
    found = row(joined(disputed(f"{PIN}/function", "illumination", "antenna-feed"), LEADS), "antenna")
    assert found.state is State.CONFLICT
    assert any("radio-main/3" in words for words in map(say, found.words))


def test_what_is_not_disputed_is_joined_as_before() -> None:
    assert (
        row(joined(disputed(f"{PIN}/function", "illumination", "antenna-feed"), LEADS), "battery").state is State.JOINED
    )


@pytest.mark.parametrize(("field", "one", "other"), [("behaves", "on-off", "dimmed-plus"), ("colour", "orange", "red")])
def test_any_fact_of_the_pin_counts(field: str, one: str, other: str) -> None:
    assert row(joined(disputed(f"{PIN}/{field}", one, other), LEADS), "lamps").state is State.CONFLICT


def test_the_view_of_the_plug_doubts_every_pin() -> None:
    made = joined(disputed("connectors/radio-main/view", "wires", "contacts"), LEADS)
    assert {row(made, name).state for name in ("lamps", "battery")} == {State.CONFLICT}


@pytest.mark.parametrize(
    ("field", "one", "other"), [("colour", "orange", "OG"), ("function", "illumination", "Illumination")]
)
def test_claims_of_one_value_are_no_conflict(field: str, one: str, other: str) -> None:
    assert row(joined(disputed(f"{PIN}/{field}", one, other), LEADS), "lamps").state is State.JOINED


def test_a_settled_conflict_changes_nothing() -> None:
    settled = disputed(f"{PIN}/function", "illumination", "antenna-feed", "e1")
    assert row(joined(settled, LEADS), "lamps").state is State.JOINED


def test_the_fit_says_it_too() -> None:
    (need,) = needs(["illumination"], disputed(f"{PIN}/function", "illumination", "antenna-feed"), {}, [KNOT])
    assert (need.by, need.disputed, named(need.providers)) == ("unknown", True, ("Pellworth Knot",))
    assert say(need.words).startswith("conflict: meter it: pin 3 of the main radio plug")


def test_a_function_without_a_pin_may_be_disputed() -> None:
    more = "functions:\n  reverse: {by: wire}\n"
    made = disputed("functions/reverse/by", "wire", "data", "", more)
    found = row(joined(made, "back: {function: reverse, behaves: on-off}"), "back")
    assert found.state is State.CONFLICT
