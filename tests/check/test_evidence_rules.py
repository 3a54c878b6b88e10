"""What the rules about evidence say beyond their pages: of the stamp, of the day, of what the schema refused."""

from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from fragments import findings, messages
from rule_pages import BASE, compose, load

from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.rules import (
    car_not_said,
    evidence_after_today,
    evidence_before_the_car,
    evidence_of_another_car,
    source_of_another_variant,
)
from undertrim.record.store import Workspace

STAMP = "verified: {{on: {on}, by: rk, car: {car}, facts: {{vehicle: 00000000}}}}"
HOME = Path("records/vehicles/brindleway/otter-2014-2018.yaml")


def test_the_stamp_is_held_against_the_record_too() -> None:
    assert messages(evidence_of_another_car, STAMP.format(on="2026-04-02", car="'2011'"))
    assert messages(evidence_before_the_car, STAMP.format(on="2010-04-02", car="'2016'"))
    assert messages(evidence_after_today, STAMP.format(on="2090-04-02", car="'2016'"))
    [found] = findings(car_not_said, STAMP.format(on="2026-04-02", car="The blue one"))
    assert found.pointer == ("verified", "car")


NO_CAR = "if it is one, write its month of build as 'built'; else the evidence belongs to another record"


@pytest.mark.parametrize(
    ("car", "said", "way_out"),
    [
        ("2009 to 2011", "no car of this record is of 2009 to 2011: it covers 2014 to 2018", NO_CAR),
        ("{is: {drive-side: left}}", "no variant 'drive-side'", "write 'side: left' or 'side: right' beside 'is'"),
        ("{is: {roof: glass}}", "no variant 'roof'", "say it in 'note', or declare it under 'variants'"),
    ],
)
def test_what_no_car_can_be_is_said_with_its_way_out(car: str, said: str, way_out: str) -> None:
    [found] = findings(evidence_of_another_car, f"evidence:\n  e1: {{how: seen, on: 2026-03-02, by: rk, car: {car}}}")
    assert (found.message, found.hint) == (said, way_out)


def test_tomorrow_may_be_today_elsewhere_and_the_day_after_is_not() -> None:
    now = datetime.now(UTC).date()
    for days, wrong in ((0, False), (-400, False), (2, True)):
        piece = f"evidence:\n  e1: {{how: seen, on: {now + timedelta(days=days)}, by: rk}}"
        assert bool(messages(evidence_after_today, piece)) is wrong
    assert evidence_after_today.today() >= datetime.now().astimezone().date()


def test_what_depends_on_the_day_is_not_remembered(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / HOME).parent.mkdir(parents=True)
    (tmp_path / HOME).write_text(BASE.replace("on: 2026-03-02", "on: 2090-03-02"), encoding="utf-8")
    place = Workspace(tmp_path)
    first = runner.check(place, cache=Cache(place)).problems
    assert "evidence-after-today" in {problem.rule for problem in first}
    monkeypatch.setattr(evidence_after_today, "today", lambda: date(2090, 3, 2))
    assert runner.check(place, cache=Cache(place)).problems == ()


def test_a_car_the_schema_refused_is_not_asked_for_more() -> None:
    text = compose("evidence:\n  e1: {how: seen, on: 2026-03-02, by: rk, car: {yeer: 2016}}\n")
    said = {problem.rule for problem in runner.check_entry(load("brindleway/otter-2014-2018.yaml", text))}
    assert said == {"schema"}


def test_a_source_that_is_nowhere_excludes_nothing() -> None:
    piece = """
variants:
  radio:
    ask: Which radio is in the dash?
    choices:
      plain: {label: Plain radio, tell: Six keys}
      map: {label: Map radio, tell: A MAP key}
evidence:
  e1: {how: seen, on: 2026-03-02, by: rk, car: "2016, plain radio"}
duties:
  map: {when: {radio: map}, kept_by: none, source: SOURCE}
"""
    assert messages(source_of_another_variant, piece.replace("SOURCE", "e1"))
    assert not messages(source_of_another_variant, piece.replace("SOURCE", "[e1, e7]"))


@pytest.mark.parametrize("word", ["year: twenty", "side: middle", "is: {}", "built: 2016-13", "year: 1850"])
def test_fields_of_a_car_that_are_no_such(word: str) -> None:
    text = compose(f"evidence:\n  e1: {{how: seen, on: 2026-03-02, by: rk, car: {{{word}}}}}\n")
    assert [problem.rule for problem in load("brindleway/otter-2014-2018.yaml", text).problems] == ["schema"]


@pytest.mark.parametrize("word", ['by: " "', 'by: "?"', 'by: rk, with: " "', 'by: rk, car: " "', 'by: rk, note: "  "'])
def test_spaces_and_marks_are_no_words(word: str) -> None:
    text = compose(f"evidence:\n  e1: {{how: seen, on: 2026-03-02, {word}}}\n")
    assert [problem.rule for problem in load("brindleway/otter-2014-2018.yaml", text).problems] == ["schema"]
