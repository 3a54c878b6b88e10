"""What a person asks for, by name."""

import pytest

from making import record
from undertrim.derive import jobs
from undertrim.derive.jobs import BadRequest
from undertrim.words import say

ABOUT = record("""
    vehicle: {drive_side: [left, right], bodies: [saloon, estate]}
    variants:
      radio: {ask: Which one, choices: {plain: {label: Plain}, map: {label: Map}}}
      roof: {ask: Which one, choices: {steel: {label: Steel}, glass: {label: Glass}}}
    parts:
      brace: {when: {radio: map}}
      radio: {after: [brace]}
      panel: {each: [left, right]}
    openings:
      dash: {behind: [radio]}
      front-door: {each: [left, right], behind: [panel]}
""")


def test_a_job_is_an_opening_at_every_side_or_at_one() -> None:
    assert [str(target) for target in jobs.wanted(ABOUT, ["front-door"])] == ["front-door@left", "front-door@right"]
    assert [str(target) for target in jobs.wanted(ABOUT, ["front-door@right"])] == ["front-door@right"]


def test_jobs_come_in_the_records_order_and_once() -> None:
    names = [str(target) for target in jobs.wanted(ABOUT, ["front-door@left", "dash", "front-door", "dash"])]
    assert names == ["dash", "front-door@left", "front-door@right"]


@pytest.mark.parametrize(
    ("job", "message"),
    [
        ("front-dor", "no opening 'front-dor' in this record; did you mean 'front-door'?"),
        ("dash@left", "no opening 'dash@left' in this record"),
        ("", "no opening '' in this record"),
    ],
)
def test_a_job_the_record_does_not_have(job: str, message: str) -> None:
    with pytest.raises(BadRequest) as caught:
        jobs.wanted(ABOUT, [job])
    assert say(caught.value.said).startswith(message)


def test_a_car_keeps_the_variants_that_matter() -> None:
    assert jobs.car(ABOUT, {"radio": "map", "roof": "glass", "body": "estate", "drive-side": "left"}) == {
        "radio": "map"
    }


@pytest.mark.parametrize(
    ("choices", "message"),
    [
        ({"radoi": "map"}, "no variant 'radoi' in this record; did you mean 'radio'?"),
        ({"radio": "mapp"}, "variant 'radio' has no choice 'mapp'; did you mean 'map'?"),
        ({"drive-side": "centre"}, "variant 'drive-side' has no choice 'centre'"),
        ({"body": "van"}, "variant 'body' has no choice 'van'"),
    ],
)
def test_a_variant_or_choice_the_record_does_not_have(choices: dict[str, str], message: str) -> None:
    with pytest.raises(BadRequest) as caught:
        jobs.car(ABOUT, choices)
    assert say(caught.value.said).startswith(message)


def test_open_variants_make_a_car_each() -> None:
    assert jobs.open_cars(ABOUT, {}) == [{"radio": "plain"}, {"radio": "map"}]
    assert jobs.open_cars(ABOUT, {"radio": "map"}) == [{"radio": "map"}]
