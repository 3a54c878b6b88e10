"""A car that was looked at, held against its record."""

from datetime import date

import pytest
from fragments import subject

from undertrim.derive.evidence.holding import Why, first_day, looks, misfits, unsaid, years
from undertrim.derive.evidence.seen import answers, seen, shown
from undertrim.record.model import VehicleRecord
from undertrim.words import say

PIECE = """
vehicle:
  make: Brindleway
  model: Otter
  built: {{from: 2014-03, to: 2018-09}}
  {years}
  drive_side: [left, right]
  bodies: [van, minibus]
  high_voltage: no
variants:
  radio:
    ask: Which radio is in the dash?
    choices:
      plain: {{label: Plain radio, tell: Six keys}}
      map: {{label: Map radio, tell: A MAP key}}
  plug:
    ask: When was it built?
    choices:
      early: {{label: Before July 2016, tell: The plate, built: {{from: 2014-03, to: 2016-07}}}}
      late: {{label: From July 2016, tell: The plate, built: {{from: 2016-07, to: 2018-09}}}}
evidence:
  e1: {{how: seen, on: 2026-03-02, by: rk, car: {car}}}
"""


def record(car: str, years: str = "model_years: {first: 2014, last: 2018}") -> VehicleRecord:
    about = subject(PIECE.format(car=car, years=years))
    assert not about.entry.problems, about.entry.problems
    return about.record


def misfit(car: str) -> list[tuple[Why, str]]:
    made = record(car)
    return [
        (item.why, " to ".join(filter(None, (item.value, item.until))))
        for item in misfits(made, made.evidence["e1"].car)
    ]


@pytest.mark.parametrize(
    ("car", "known"),
    [
        ('"2018, left-hand drive, map radio, minibus"', {"plug": "late", "drive-side": "left", "radio": "map", "body": "minibus"}),
        ('"2015, RHD, Plain  radio, van"', {"plug": "early", "drive-side": "right", "radio": "plain", "body": "van"}),
        ('"2016, lhd, map"', {"drive-side": "left", "radio": "map"}),
        ('"built 2016-07, right-hand drive"', {"plug": "late", "drive-side": "right"}),
        ("{built: 2016-06, side: left, is: {radio: map}}", {"plug": "early", "drive-side": "left", "radio": "map"}),
        ("{year: 2018, side: unknown, is: {radio: unknown, body: van}}", {"plug": "late", "body": "van"}),
        ('"a blue one with a map radio"', {}),
    ],
)  # fmt: skip
def test_the_line_and_the_fields_say_the_same(car: str, known: dict[str, str]) -> None:
    made = record(car)
    assert answers(made, seen(made, made.evidence["e1"].car)) == known


@pytest.mark.parametrize(
    ("car", "found"),
    [
        ('"2014, left-hand drive"', []),
        ('"2018, left-hand drive"', []),
        ('"2013, left-hand drive"', [(Why.YEAR, "2013")]),
        ('"2019, left-hand drive"', [(Why.YEAR, "2019")]),
        ('"2009 to 2014"', []),
        ('"2018 to 2020"', []),
        ('"2009 to 2013"', [(Why.YEAR, "2009 to 2013")]),
        ('"2019 to 2023"', [(Why.YEAR, "2019 to 2023")]),
        ("{built: 2014-03}", []),
        ("{built: 2014-02}", [(Why.BUILT, "2014-02")]),
        ("{built: 2018-08}", []),
        ("{built: 2018-09}", [(Why.BUILT, "2018-09")]),
        ("{year: 2017, built: 2016-11}", []),
        ("{year: 2016, built: 2017-02}", []),
        ("{year: 2018, built: 2016-11}", [(Why.MONTH_BESIDE_YEAR, "2018")]),
        ("{built: 2016-11, is: {plug: early}}", [(Why.CHOICE_THEN, "early")]),
        ("{year: 2015, is: {plug: late}}", [(Why.CHOICE_THEN, "late")]),
        ("{year: 2016, is: {plug: late}}", []),
        ('"2015, From July 2016"', [(Why.CHOICE_THEN, "late")]),
        ("{is: {radio: tape, body: lorry}}", [(Why.CHOICE, "tape"), (Why.CHOICE, "lorry")]),
        ("{is: {roof: glass}}", [(Why.VARIANT, "roof")]),
        ("{is: {roof: unknown}}", [(Why.VARIANT, "roof")]),
        ("{is: {drive-side: left}}", [(Why.VARIANT, "drive-side")]),
    ],
)
def test_what_no_car_of_the_record_can_be(car: str, found: list[tuple[Why, str]]) -> None:
    assert misfit(car) == found


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_side_the_record_does_not_have(side: str) -> None:
    about = subject(f"evidence:\n  e1: {{how: seen, on: 2026-03-02, by: rk, car: '2016, {side}-hand drive'}}")
    found = [item.why for item in misfits(about.record, about.record.evidence["e1"].car)]
    assert found == ([Why.SIDE] if side == "right" else [])


@pytest.mark.parametrize(
    ("car", "open_"),
    [
        ('"2018, left-hand drive, map radio, van"', []),
        ('"2016, left-hand drive, map radio, van"', ["plug"]),
        ('"2017 to 2018, left-hand drive, map radio, van, From July 2016"', ["year"]),
        ('"left-hand drive, van"', ["year", "radio", "plug"]),
        ("{year: unknown, side: unknown, is: {radio: unknown, plug: unknown, body: unknown}}", []),
        ("{note: The blue one}", ["year", "side", "radio", "plug", "body"]),
    ],
)
def test_what_is_not_said(car: str, open_: list[str]) -> None:
    made = record(car)
    assert list(unsaid(made, made.evidence["e1"].car)) == open_


def test_a_choice_that_two_variants_call_the_same_says_nothing() -> None:
    piece = PIECE.replace("label: Before July 2016", "label: Map radio").format(car='"2016, map radio"', years="")
    about = subject(piece)
    known = seen(about.record, about.record.evidence["e1"].car)
    assert (known.choices, known.notes) == ({}, ("map radio",))


def test_years_where_no_model_years_are_recorded_run_one_on() -> None:
    assert years(record("'2016'")) == (2014, 2018)
    assert years(record("'2016'", "tell: A van")) == (2014, 2019)
    assert years(record("'2016'", "model_years: {first: 2015, last: 2019}")) == (2014, 2019)


@pytest.mark.parametrize(
    ("car", "first"),
    [
        ("'no year'", date(2014, 3, 1)),
        ("'2014'", date(2014, 3, 1)),
        ("'2017'", date(2016, 1, 1)),
        ("{year: 2017, built: 2017-05}", date(2017, 5, 1)),
    ],
)
def test_the_first_day_of_a_car(car: str, first: date) -> None:
    made = record(car)
    assert first_day(made, made.evidence["e1"].car) == first


def test_the_car_in_words() -> None:
    made = record("{year: 2016, built: 2016-04, side: left, is: {radio: map, plug: unknown, roof: x}, note: Blue}")
    said = "2016, built 2016-04, left-hand drive, Map radio, plug unknown, roof x, Blue"
    assert say(shown(made, made.evidence["e1"].car)) == said
    unknown = record("{year: unknown, side: unknown}")
    assert say(shown(unknown, unknown.evidence["e1"].car)) == "year unknown, drive side unknown"
    assert say(shown(made, None)) == ""


def test_the_stamp_is_a_look_too() -> None:
    piece = "verified: {on: 2026-04-02, by: rk, car: {year: 2016}, facts: {vehicle: 00000000}}"
    names = [(look.name, look.how, look.at_a_car) for look in looks(subject(piece).record)]
    assert names == [("e1", "measured", True), ("verified", "verified", True)]
