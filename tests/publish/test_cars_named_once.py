"""The name of an opening that is written once for several kinds of car tells them; what stands beside it does not tell them again."""

from pathlib import Path

import pytest

from differing import BODY, HEAD, record
from undertrim.derive.procedure import planning
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner
from undertrim.publish.facts import blockers, openings, plans, targets
from undertrim.publish.facts.photos import Shown
from undertrim.publish.facts.visit import visit
from undertrim.record.photo_files import album
from undertrim.words import say

NOWHERE = Path("nowhere.yaml")
BODIES = HEAD.replace("  drive_side: left\n", "  drive_side: left\n  bodies: [estate, hatchback]\n")


@pytest.mark.parametrize(("head", "own", "beside"), [(HEAD, "", ""), (BODIES, "    when: {body: estate}\n", "Estate")])
def test_a_label_stands_once_beside_the_name_that_has_it(head: str, own: str, beside: str) -> None:
    """What the name does not tell, such as the condition of the whole block, stands beside it."""
    known = record(head + BODY.replace("    kind: receiver\n", f"{own}    kind: receiver\n"))
    shown = {say(one.name): say(one.when) for one in targets.targets(known)}
    assert shown == {"Dash (Map radio)": beside, "Dash (Plain radio)": beside}
    assert {say(openings.opening(known, one).when) for one in known.openings.values()} == {beside}
    above = {say(one.when) for one in blockers.blockers(known) if one.openings and "Dash (" in say(one.title)}
    assert above == {beside}


def test_what_is_written_for_each_kind_of_car_by_itself_has_its_cars_beside_it() -> None:
    two = BODY.replace("  dash:\n", "  plain-dash:\n    when: {radio: plain}\n", 1)
    face = "face: [{when: {radio: map}, width: 182 mm, height: 146 mm}, {when: {radio: plain}, width: 182 mm, height: 112 mm}]"
    two = two.replace(face, "face: {width: 182 mm, height: 112 mm}").replace("openings/dash", "openings/plain-dash")
    assert [say(one.when) for one in targets.targets(record(HEAD + two))] == ["Plain radio"]


def test_a_step_titled_by_such_a_name_does_not_tell_its_cars_again() -> None:
    known = record(HEAD + BODY)
    made = choices(Planner(known))
    shown = {
        say(one.step.title): say(one.when)
        for one in plans.steps(known, made, Shown("", known, album(NOWHERE)))
        if one.step.part.startswith("dash")
    }
    assert set(shown.values()) == {""}
    assert all("Dash (Map radio)" in title or "Dash (Plain radio)" in title for title in shown)
    steps = visit(known, "brindleway/otter", planning.targets(known), {})["steps"]
    assert {step["title"]: step["when"] for step in steps if step["part"].startswith("dash")} == shown
    assert {
        say(one.when)
        for one in plans.steps(known, made, Shown("", known, album(NOWHERE)))
        if one.step.part.startswith("bezel")
    } == {
        "Map radio",
        "Plain radio",
    }
