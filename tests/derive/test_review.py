"""What changed in a record is told by its effect: the riskiest first, steps by their ids, things that are called otherwise as the same things."""

import copy
from collections.abc import Callable
from typing import Any

import pytest

from making import made, plan
from undertrim.derive.fit.stock import NOTHING
from undertrim.derive.fit.verdict import Fit, Kind
from undertrim.derive.review.change import FactChange, Side, Sort, Weight
from undertrim.derive.review.outcome import VehicleChange
from undertrim.derive.review.steps import differing
from undertrim.derive.review.vehicle import vehicle
from undertrim.derive.review.verdicts import became_yes
from undertrim.record.model import VehicleRecord
from undertrim.words import say

# Long because it is a table of changes, each with how closely to look at it, over one record.
Data = dict[str, Any]

BASE: Data = {
    "vehicle": {"high_voltage": "yes", "forty_eight_volt": "yes", "source": "seen"},
    "evidence": {
        "seen": {"how": "seen", "on": "2026-03-02", "by": "rk", "car": "2016"},
        "maker": {"how": "maker", "on": "2026-03-09", "by": "tw"},
    },
    "restraint": {
        "wait": "10 min",
        "fitted": "yes",
        "memory_keeper": "forbidden",
        "read_faults_first": "yes",
        "source": "seen",
    },
    "areas": {"dash": {"restraints": ["Driver airbag", "Knee airbag"], "high_voltage": "near", "source": "seen"}, "boot": {"restraints": ["unknown"], "source": "seen"}},
    "preps": {"battery": {"sets": {"battery": "off"}, "wait": {"time": "2 min", "why": "It cools down."}}},
    "parts": {
        "trim": {
            "area": "dash",
            "held_by": [{"clip": "push", "count": "4"}],
            "tethers": {"lamp": {"name": "Airbag lamp plug", "kind": "plug", "circuit": "restraint"}},
            "cautions": [{"signal": "WARNING", "hazard": "The edge is sharp.", "consequence": "It cuts.", "avoid": "Wear gloves."}],
            "takes": "3 min",
            "source": "seen",
        },
        "seat": {"held_by": [{"bolt": "T50", "count": "4", "role": "seat", "torque": "40 Nm"}], "source": "seen"},
        "cover": {"held_by": [{"screw": "PH2", "count": "1"}], "how": "Lift it at the notch."},
        "heater": {"held_by": [{"clip": "push", "count": "1"}], "tethers": {"feed": {"name": "Heater plug", "kind": "plug", "circuit": "high-voltage"}}, "source": "seen"},
        "radio": {"after": ["trim"], "area": "dash", "needs": {"battery": "off"}, "source": "seen"},
    },
    "openings": {
        "dash": {"behind": ["radio"]},
        "front-door": {"behind": ["cover"], "crash_sensor": "yes", "source": "seen"},
    },
    "duties": {"chime": {"kept_by": "none", "source": "seen"}, "map": {"kept_by": "none", "source": "seen"}},
    "after_battery": {
        "before": {"faults": {"do": "Read the faults."}},
        "after": {"windows": {"do": "Teach the windows."}},
        "source": "seen",
    },
}  # fmt: skip

Edit = Callable[[Data], object]


def side(data: Data) -> Side:
    entry = made(copy.deepcopy(data))
    assert isinstance(entry.record, VehicleRecord)
    return Side(entry.record, entry.address, entry.source.data)


def edited(*edits: Edit) -> VehicleChange:
    after = copy.deepcopy(BASE)
    for edit in edits:
        edit(after)
    return vehicle(side(BASE), side(after), (NOTHING, NOTHING))


def heavy(found: VehicleChange) -> list[tuple[str, FactChange]]:
    return [("/".join(map(str, one.pointer)), one) for one in found.facts if one.weight is not Weight.PLAIN]


def set_(*path: str, to: object) -> Edit:
    def edit(data: Data) -> None:
        for step in path[:-1]:
            data = data[step]
        data[path[-1]] = to

    return edit


def drop(*path: str | int) -> Edit:
    def edit(data: Any) -> None:
        for step in path[:-1]:
            data = data[step]
        del data[path[-1]]

    return edit


WEAKER: dict[str, tuple[str, Edit]] = {
    "a wait cut": ("restraint/wait", set_("restraint", "wait", to="1 min")),
    "a wait of a preparation dropped": ("preps/battery/wait/time", drop("preps", "battery", "wait")),
    "a sensor denied": ("openings/front-door/crash_sensor", set_("openings", "front-door", "crash_sensor", to="no")),
    "a sensor no longer known": ("openings/front-door/crash_sensor", drop("openings", "front-door", "crash_sensor")),
    "high voltage denied": ("vehicle/high_voltage", set_("vehicle", "high_voltage", to="no")),
    "48 V denied": ("vehicle/forty_eight_volt", set_("vehicle", "forty_eight_volt", to="no")),
    "high voltage of an area denied": ("areas/dash/high_voltage", set_("areas", "dash", "high_voltage", to="clear")),
    "an airbag dropped": ("areas/dash/restraints", set_("areas", "dash", "restraints", to=["Driver airbag"])),
    "airbags denied": ("areas/dash/restraints", set_("areas", "dash", "restraints", to=["none"])),
    "airbags that nobody looked for denied": ("areas/boot/restraints", set_("areas", "boot", "restraints", to=["none"])),
    "a memory keeper allowed": ("restraint/memory_keeper", set_("restraint", "memory_keeper", to="allowed")),
    "faults not to be read": ("restraint/read_faults_first", set_("restraint", "read_faults_first", to="no")),
    "a restraint plug called ordinary": (
        "parts/trim/tethers/lamp/circuit",
        set_("parts", "trim", "tethers", "lamp", "circuit", to="ordinary"),
    ),
    "a restraint plug dropped": ("parts/trim/tethers/lamp", drop("parts", "trim", "tethers", "lamp")),
    "a high-voltage plug dropped": ("parts/heater/tethers/feed", drop("parts", "heater", "tethers")),
    "a part with high-voltage wiring dropped": ("parts/heater", drop("parts", "heater")),
    "a seat bolt dropped": ("parts/seat/held_by/0", drop("parts", "seat", "held_by")),
    "a word that is softer by one": ("parts/trim/cautions/0/signal", lambda data: set_("signal", to="CAUTION")(data["parts"]["trim"]["cautions"][0])),
    "a caution dropped": ("parts/trim/cautions/0", drop("parts", "trim", "cautions")),
    "a softer word": ("parts/trim/cautions/0/signal", lambda data: set_("signal", to="NOTICE")(data["parts"]["trim"]["cautions"][0])),
    "a seat bolt called ordinary": ("parts/seat/held_by/0/role", lambda data: drop("role")(data["parts"]["seat"]["held_by"][0])),
    "after-care dropped": ("after_battery/after/windows", lambda data: set_("after_battery", to={"before": data["after_battery"]["before"], "checked_none": ["after"], "source": "seen"})(data)),
    "a duty that stays": ("duties/chime/kept_by", set_("duties", "chime", "kept_by", to="stays")),
    "a duty dropped": ("duties/chime", drop("duties", "chime")),
}  # fmt: skip


@pytest.mark.parametrize("name", WEAKER)
def test_a_safety_fact_that_became_weaker_with_the_same_source_is_red(name: str) -> None:
    about, edit = WEAKER[name]
    found = edited(edit)
    assert found.weight is Weight.WEAKER
    assert next(place for place, one in heavy(found) if one.weight is Weight.WEAKER and one.why) == about


SAFER: dict[str, Edit] = {
    "a longer wait": set_("restraint", "wait", to="12 min"),
    "the same wait in seconds": set_("restraint", "wait", to="600 s"),
    "another airbag": set_("areas", "dash", "restraints", to=["Driver airbag", "Knee airbag", "Side airbag"]),
    "a graver word": lambda data: set_("signal", to="DANGER")(data["parts"]["trim"]["cautions"][0]),
    "a new caution": lambda data: data["parts"]["radio"].update(
        cautions=[{"signal": "CAUTION", "hazard": "It is heavy.", "consequence": "It falls.", "avoid": "Hold it."}]
    ),
    "a duty that is kept by an interface": set_("duties", "map", "kept_by", to="interface"),
}


@pytest.mark.parametrize("name", SAFER)
def test_what_became_safer_or_only_better_is_not_red(name: str) -> None:
    assert edited(SAFER[name]).weight is not Weight.WEAKER


@pytest.mark.parametrize("name", ["a wait cut", "high voltage of an area denied", "a duty that stays"])
def test_somebody_new_who_says_so_is_to_be_asked_and_not_red(name: str) -> None:
    about, edit = WEAKER[name]
    found = edited(edit, set_(*about.split("/")[: 1 if about.startswith("restraint") else 2], "source", to="maker"))
    assert found.weight is Weight.CARE
    (fact,) = [one for place, one in heavy(found) if place == about]
    assert (fact.same_source, [one.id for one in fact.said_after]) == (False, ["maker"])


def test_lists_around_the_battery_that_are_now_said_to_be_empty_are_red() -> None:
    before, after = copy.deepcopy(BASE), copy.deepcopy(BASE)
    del before["after_battery"]["after"]
    after["after_battery"] = {**before["after_battery"], "checked_none": ["after"]}
    found = vehicle(side(before), side(after), (NOTHING, NOTHING))
    assert [(place, one.weight) for place, one in heavy(found)] == [("after_battery/checked_none", Weight.WEAKER)]


DEPTH = {"clear": "60 mm", "datum": "skin", "over": "whole-travel", "obstruction": "glass", "to": "Window glass"}
CAREFUL: dict[str, tuple[str, str, Edit, Edit]] = {
    "what a preparation needs of the power": (
        "preps/battery/needs/ignition", "power or battery",
        lambda data: None, set_("preps", "battery", "needs", to={"ignition": "off"}),
    ),
    "where the glass is": (
        "openings/front-door/depth/to", "the window glass",
        set_("openings", "front-door", "depth", to=DEPTH), set_("openings", "front-door", "depth", to={**DEPTH, "to": "The glass"}),
    ),
    "a wait that is longer": ("restraint/wait", "a safety fact", lambda data: None, set_("restraint", "wait", to="12 min")),
}  # fmt: skip


@pytest.mark.parametrize("name", CAREFUL)
def test_power_glass_and_safety_want_care(name: str) -> None:
    about, why, first, then = CAREFUL[name]
    before, after = copy.deepcopy(BASE), copy.deepcopy(BASE)
    first(before)
    then(after)
    found = vehicle(side(before), side(after), (NOTHING, NOTHING))
    assert (about, Weight.CARE, why) in [(place, one.weight, say(one.why)) for place, one in heavy(found)]


@pytest.mark.parametrize(
    ("was", "now", "weight"),
    [
        ("unknown", "10 min", Weight.WEAKER),  # a tech looks up what is unknown, and trusts what is there
        ("10 min", "9 min", Weight.WEAKER),
        ("10 min", "unknown", Weight.CARE),
        ("10 min", "12 min", Weight.CARE),
    ],
)
def test_a_wait_of_a_step_that_is_cut_is_red(was: str, now: str, weight: Weight) -> None:
    plans = []
    for time in (was, now):
        data = copy.deepcopy(BASE)
        data["restraint"]["wait"] = time
        del data["preps"]["battery"]["wait"]
        plans.append(plan(side(data).record, "dash").steps)
    found = {one.id: one for one in differing(plans[0], plans[1], {})}
    (wait,) = [one for one in found["wait:battery"].details if one.what == "wait"]
    assert wait.weight is weight


def test_a_source_that_only_says_something_else_now_is_not_the_same_source() -> None:
    found = edited(set_("restraint", "wait", to="1 min"), set_("evidence", "seen", "on", to="2026-04-01"))
    assert found.weight is Weight.CARE
    assert [(one.what, say(one.before), say(one.after)) for one in found.evidence] == [
        ("seen", "seen: seen 2026-03-02 by rk", "seen: seen 2026-04-01 by rk")
    ]


def test_a_step_that_only_got_another_number_is_no_change() -> None:
    found = edited(set_("parts", "radio", "after", to=["trim", "cover"]))
    (visit,) = found.visits
    assert visit.jobs == ("dash",)
    assert [(one.id, one.sort) for one in visit.steps] == [("remove:cover", Sort.ADDED), ("refit:cover", Sort.ADDED)]
    assert visit.more == 2


def test_a_step_that_stands_elsewhere_is_moved_and_the_others_are_not() -> None:
    before = copy.deepcopy(BASE)
    before["parts"]["radio"]["after"] = ["trim", "cover"]
    after = copy.deepcopy(before)
    after["parts"]["trim"]["after"] = ["cover"]
    (visit, *_) = vehicle(side(before), side(after), (NOTHING, NOTHING)).visits
    moved = {one.id.partition(":")[2] for one in visit.steps if one.sort is Sort.MOVED}
    assert len(moved) == 1
    assert moved <= {"trim", "cover"}


def test_a_part_under_another_id_and_name_is_the_same_part() -> None:
    def rename(data: Data) -> None:
        parts = data["parts"]
        parts["upper-trim"] = {**parts.pop("trim"), "name": "Upper trim"}
        parts["radio"]["after"] = ["upper-trim"]

    found = edited(rename)
    assert [(one.sort, "/".join(map(str, one.pointer)), one.before, one.after) for one in found.facts] == [
        (Sort.RENAMED, "parts/upper-trim", "trim", "upper-trim"),
        (Sort.CHANGED, "parts/upper-trim/name", "Trim", "Upper trim"),
    ]
    assert found.visits == ()


def test_what_a_step_says_is_told_by_what_differs() -> None:
    found = edited(
        set_("parts", "cover", "how", to="Slide it back."),
        lambda data: data["parts"]["cover"]["held_by"].append({"clip": "push", "count": "2"}),
    )
    (visit,) = found.visits
    (off, *_) = visit.steps
    told = {one.what: (say(one.before), say(one.after)) for one in off.details}
    assert told["text"] == ("Lift it at the notch.", "Slide it back.")
    assert told["fasteners"] == ("", "2 × push clips: out")


def test_a_caution_that_goes_without_any_fact_that_says_why_is_red() -> None:
    found = edited(set_("parts", "radio", "area", to="boot"))
    (visit,) = found.visits
    assert [one.weight for one in visit.steps if one.id == "remove:radio"] == [Weight.WEAKER]


def test_a_wait_or_after_care_that_goes_with_its_step_is_red_and_a_battery_step_wants_care() -> None:
    steps = plan(side(BASE).record, "dash").steps
    risky = {one.id: differing(steps, [other for other in steps if other is not one], {})[0].weight for one in steps}
    assert {name for name, weight in risky.items() if weight is Weight.WEAKER} == {"wait:battery", "after:windows"}
    assert risky["prepare:battery"] is Weight.CARE


def test_known_unknown_and_disputed_are_three_things() -> None:
    def dispute(data: Data) -> None:
        claims = [{"says": "10 min", "source": "seen"}, {"says": "5 min", "source": "maker"}]
        data["conflicts"] = {"the-wait": {"about": "restraint/wait", "claims": claims}}

    found = edited(dispute, set_("areas", "dash", "restraints", to=["unknown"]))
    assert [(one.sort, "/".join(map(str, one.pointer))) for one in found.conflicts] == [(Sort.ADDED, "restraint/wait")]
    assert Sort.UNKNOWN in {one.sort for one in found.facts}


def test_nothing_is_nothing() -> None:
    assert edited(lambda data: None).empty


def test_the_order_of_a_list_of_fasteners_is_no_change() -> None:
    before, after = copy.deepcopy(BASE), copy.deepcopy(BASE)
    two = [{"screw": "PH2", "count": "1"}, {"clip": "push", "count": "2"}]
    before["parts"]["cover"]["held_by"], after["parts"]["cover"]["held_by"] = two, two[::-1]
    assert vehicle(side(before), side(after), (NOTHING, NOTHING)).empty


@pytest.mark.parametrize(
    ("was", "now", "asks"),
    [
        ("does-not-fit", "fits", True),
        ("measure", "fits-with", True),
        ("stop", "measure", True),  # nobody is told to stop any more
        ("stop", "stop", False),
        ("fits-with", "fits", False),
        ("fits", "does-not-fit", False),
        ("does-not-fit", "measure", False),
    ],
)
def test_a_verdict_that_became_yes_or_no_longer_says_stop_wants_care(was: Kind, now: Kind, asks: bool) -> None:
    assert became_yes(Fit("x", "X", was, ()), Fit("x", "X", now, ())) is asks
    assert not became_yes(None, Fit("x", "X", now, ()))
