"""A part or a cable run that is reached for its own sake: a job beside the openings, with no gear."""

import pytest

from making import ids, plan, record
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOTHING
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import understood
from undertrim.publish.facts.names import job
from undertrim.record.model import VehicleRecord
from undertrim.words import say

LINING = """
    parts:
      handle: {}
      lining: {each: [left, right], after: [handle], reached_for: Camera cable}
      radio: {replaced: yes, after: [handle]}
    openings:
      dash: {behind: [radio]}
"""
RUN = """
    parts:
      sill: {each: [left, right]}
      radio: {replaced: yes}
    openings:
      dash: {behind: [radio]}
    runs:
      to-boot: {name: To the boot, from: Dash, to: Boot, length: 4 m, side: left, trims: [sill], reached_for: Camera cable}
"""


def asked(about: VehicleRecord, words: str) -> str:
    vehicle = Vehicle(about, "kelbrook/finch", NOTHING, clearances())
    found = understood(vehicle, text.parse(f"finch?{words}"))
    assert not found.said, [say(one) for one in found.said]
    return text.words(found.visit)


def test_what_is_reached_for_comes_off_with_what_is_in_its_way_and_all_goes_back() -> None:
    assert [one for one in ids(record(LINING), "lining@left") if one.split(":")[0] in ("remove", "refit", "install")] == [
        "remove:handle", "remove:lining@left", "refit:lining@left", "refit:handle",
    ]  # fmt: skip


def test_of_a_run_the_trims_on_its_side_come_off() -> None:
    assert [one for one in ids(record(RUN), "to-boot") if one.startswith(("remove", "refit", "install"))] == [
        "remove:sill@left", "refit:sill@left",
    ]  # fmt: skip


def test_a_part_that_new_gear_replaces_goes_back_where_it_is_only_reached_for() -> None:
    about = record(LINING.replace("{replaced: yes,", "{replaced: yes, reached_for: Its plugs,"))
    assert "refit:radio" in ids(about, "radio")
    assert "refit:radio" not in ids(about, "dash", "radio")


def test_the_text_of_a_visit_says_it_at_both_sides_or_at_one() -> None:
    about = record(LINING)
    assert asked(about, "jobs=lining@right,lining@left,dash") == "jobs=dash,lining"
    assert asked(about, "jobs=lining@right") == "jobs=lining@right"


def test_it_takes_no_gear() -> None:
    vehicle = Vehicle(record(LINING), "kelbrook/finch", NOTHING, clearances())
    assert understood(vehicle, text.parse("finch?jobs=lining&lining=some-radio")).said


def test_its_name_says_what_it_is_reached_for() -> None:
    about = record(LINING)
    names = [say(job(about, target)) for target in targets(about)]
    assert names[1:] == ["Lining, left (reached for: Camera cable)", "Lining, right (reached for: Camera cable)"]


def test_an_unknown_job_is_told_of_it() -> None:
    with pytest.raises(jobs.BadRequest, match="lining@left"):
        jobs.wanted(record(LINING), ["nothing-like-it"])


def test_an_opening_has_its_id_to_itself() -> None:
    about = record(LINING.replace("radio: {replaced", "dash: {reached_for: Camera cable}\n      radio: {replaced"))
    assert "remove:radio" in ids(about, "dash")
    assert "remove:dash" not in ids(about, "dash")


def test_a_page_plans_it_and_nothing_more_where_nothing_is_reached_for() -> None:
    with_it = choices(Planner(record(LINING))).cars[0]
    without = choices(Planner(record(LINING.replace(", reached_for: Camera cable", "")))).cars[0]
    assert list(with_it.singles) == ["dash", "lining@left", "lining@right"]
    assert list(without.singles) == ["dash"]
    assert with_it.singles["dash"] == without.singles["dash"]


def test_a_page_knows_where_new_gear_makes_it_another_visit() -> None:
    about = record(LINING.replace("{replaced: yes,", "{replaced: yes, reached_for: Its plugs,"))
    planner = Planner(about)
    sets = choices(planner).cars[0].sets
    both = [one for one in targets(about) if str(one) in ("dash", "radio")]
    assert sets["dash", "radio"] == planner.step_ids(both, {})


def test_it_is_said_that_such_a_car_does_not_have_it() -> None:
    about = record(
        LINING.replace("reached_for", "when: {roof: glass}, reached_for")
        + """
    variants:
      roof: {ask: Which roof, choices: {glass: {label: Glass, tell: Clear}, steel: {label: Steel, tell: Painted}}}
"""
    )
    vehicle = Vehicle(about, "kelbrook/finch", NOTHING, clearances())
    assert understood(vehicle, text.parse("finch?jobs=lining&roof=steel")).absent
    assert not understood(vehicle, text.parse("finch?jobs=lining&roof=glass")).absent


COVER = """
    preps:
      battery: {sets: {battery: off}, after: [cover], how: Take the clamp off.}
    parts:
      cover: {reached_for: Jump lead}
      radio: {replaced: yes}
    openings:
      dash: {behind: [radio]}
"""


def test_reaching_for_what_a_preparation_needs_leaves_the_preparing_of_other_visits_as_it_is() -> None:
    with_it, without = record(COVER), record(COVER.replace("{reached_for: Jump lead}", "{}"))
    sections = [{step.id: step.section for step in plan(about, "dash").steps} for about in (with_it, without)]
    assert sections[0] == sections[1]
    assert (sections[0]["remove:cover"], sections[0]["prepare:battery"]) == ("prepare", "prepare")
    assert ids(with_it, "cover")[-1] == "refit:cover"
