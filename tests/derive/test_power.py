"""When the battery goes off and comes back: lists around it, buried batteries, open restraint plugs."""

import pytest

from making import at_work, ids, plan, record, step
from undertrim.derive.procedure.planning import Planner

SIMPLE = """
    parts:
      panel:
    openings:
      door: {behind: [panel]}
"""


def test_unknown_lists_are_said_and_lists_found_empty_are_not() -> None:
    known = "after_battery: {checked_none: [after], before: {code: {do: Ask for it.}}}"
    for text, expected in (
        ("after_battery: {source: e1}", ["before:unknown", "after:unknown"]),
        ("after_battery: {checked_none: [before]}", ["after:unknown"]),
        ("after_battery: {checked_none: [before, after]}", []),
        ("after_battery: {not_listed: unknown, checked_none: [before]}", ["after:unknown"]),
        (known, ["before:code"]),
    ):
        made = plan(record(SIMPLE, text), "door").steps
        assert [item.id for item in made if item.kind == "todo"] == expected
        assert all(item.unknown == item.id.endswith("unknown") for item in made if item.kind == "todo")


def test_lists_around_the_battery_are_for_visits_that_take_it_off() -> None:
    made = Planner(record(SIMPLE)).plan([], {})
    assert made.steps == ()


BURIED = """
    restraint: {fitted: no, wait: none}
    preps:
      battery: {after: [cover], sets: {battery: off}, restore: Join it.}
    parts:
      liner: {tethers: {lamp: {name: Lamp plug, kind: plug}}}
      cover: {after: [mat]}
      mat:
    openings:
      boot: {behind: [liner]}
"""


def test_a_battery_under_the_floor_is_dug_out_first_and_covered_once_it_is_back() -> None:
    assert at_work(record(BURIED), "boot") == [
        "remove:mat", "remove:cover", "prepare:battery", "remove:liner",
        "restore:battery", "refit:liner", "refit:cover", "refit:mat",
    ]  # fmt: skip
    sections = {item.id: item.section for item in plan(record(BURIED), "boot").steps}
    assert sections["remove:cover"] == sections["prepare:battery"] == "prepare"
    assert sections["remove:liner"] == "remove"


def test_nothing_else_is_taken_apart_before_what_needs_the_battery_on() -> None:
    about = record("""
        parts:
          trim:
          latch-cover: {needs: {battery: on}}
        openings:
          dash: {behind: [trim, latch-cover]}
    """)
    assert at_work(about, "dash")[:4] == [
        "remove:latch-cover", "prepare:usual:battery-off", "wait:usual:battery-off", "remove:trim",
    ]  # fmt: skip


def test_the_battery_goes_off_after_the_other_preparations() -> None:
    about = record("""
        preps:
          battery: {sets: {battery: off}}
          brake: {sets: {parking-brake: on}}
        parts:
          trim: {needs: {parking-brake: on}}
        openings:
          dash: {behind: [trim]}
    """)
    assert at_work(about, "dash")[:2] == ["prepare:brake", "prepare:battery"]


OPEN_PLUG = """
    parts:
      lamp-trim: {tethers: {lamp: {name: Airbag lamp, kind: plug, circuit: restraint, then: rejoin}}}
      frame: {after: [lamp-trim]}
      radio: {replaced: yes, after: [frame]}
      cap:
      speaker: {replaced: yes, after: [cap]}
    openings:
      dash: {behind: [radio]}
      door: {behind: [speaker]}
"""


def test_power_waits_for_every_restraint_plug_and_only_what_is_in_its_way_goes_back_before() -> None:
    names = ids(record(OPEN_PLUG), "dash", "door")
    back = [name for name in names if name.split(":")[0] in ("refit", "restore", "power", "try")]
    assert back == [
        "refit:frame", "refit:lamp-trim", "restore:usual:battery-off", "power:on", "power:off", "refit:cap",
        "power:on:try", "try:restraint", "power:off:try",
    ]  # fmt: skip


def test_what_came_off_by_way_of_the_part_with_the_plug_goes_back_before_it() -> None:
    about = record("""
        parts:
          lamp-trim: {takes: 1 min, tethers: {lamp: {name: Airbag lamp, kind: plug, circuit: restraint, then: rejoin}}}
          long-way: {takes: 30 min}
          frame: {after_any: [{above: [lamp-trim], below: [long-way]}]}
        openings:
          dash: {behind: [frame]}
    """)
    names = ids(about, "dash")
    assert [name for name in names if name.split(":")[0] in ("refit", "power")] == [
        "refit:frame", "refit:lamp-trim", "power:on", "power:off", "power:on:try", "power:off:try",
    ]  # fmt: skip


def test_a_lamp_left_joined_keeps_the_tests_before_the_refit_and_the_battery_goes_off_again_for_it() -> None:
    about = record(OPEN_PLUG.replace("rejoin", "leave, serves: [airbag-lamp]"), "restraint: {wait: 3 min}")
    names = ids(about, "dash", "door")
    first = names.index("power:off")
    assert names[first + 1 : names.index("power:on:try")] == [
        "refit:cap", "refit:frame",
        "prepare:usual:battery-off:again", "wait:usual:battery-off:again", "refit:lamp-trim", "restore:usual:battery-off:again",
    ]  # fmt: skip
    assert step(plan(about, "dash"), "refit:lamp-trim").state == {"battery": "off", "ignition": "off"}


@pytest.mark.parametrize(
    "serves", ["", ", serves: [airbag]", ", serves: [crash-sensor]", ", serves: [airbag-lamp, belt]"]
)
def test_what_may_fire_does_not_lie_about_under_power(serves: str) -> None:
    """Nor does that of which nobody has said what it is."""
    names = ids(record(OPEN_PLUG.replace("rejoin", f"leave{serves}")), "dash")
    assert names.index("refit:lamp-trim") < names.index("power:on")
    assert not [name for name in names if name.endswith(":again")]


def test_what_lies_in_front_of_the_part_follows_it_once_the_battery_is_on_again() -> None:
    about = record("""
        parts:
          strip:
          lamp-trim: {after: [strip], tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, serves: [airbag-lamp], then: leave}}}
          ring: {after: [lamp-trim]}
          low-trim: {after: [ring], tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, serves: [airbag-lamp], then: leave}}}
        openings:
          dash: {behind: [low-trim]}
    """)
    names = [name.removesuffix(":again") for name in ids(about, "dash")]
    assert names[names.index("power:off") + 1 : names.index("power:on:try")] == [
        "prepare:usual:battery-off", "wait:usual:battery-off", "refit:low-trim", "refit:ring", "refit:lamp-trim",
        "restore:usual:battery-off", "refit:strip",
    ]  # fmt: skip


def test_a_seat_is_bolted_before_power() -> None:
    text = """
        parts:
          seat: {area: seat, held_by: [{bolt: T50, count: 4, role: ROLE, torque: 45 N.m}]}
        openings:
          floor: {behind: [seat], area: floor}
    """
    seat, other = (ids(record(text.replace("ROLE", role)), "floor") for role in ("seat", "ordinary"))
    assert seat.index("refit:seat") < seat.index("power:on")
    assert other.index("refit:seat") > other.index("power:off")


TWO = """
    preps:
      front: {sets: {battery: off}, needs: {bonnet: open}, restore: Join it.}
      rear: {sets: {battery: off}, after: [cover], restore: Join it.}
    parts:
      cover:
      radio: {replaced: yes, tethers: {main: {name: Main plug, kind: plug, serves: [sound]}}}
    openings:
      dash: {behind: [radio]}
"""


def test_a_car_with_two_batteries_is_dead_with_both_off_and_fed_with_both_on() -> None:
    made = plan(record(TWO), "dash")
    names = [item.id for item in made.steps]
    first, second = names.index("prepare:front"), names.index("prepare:rear")
    assert names[second + 1] == "wait:rear"
    assert "wait:front" not in names
    assert [made.steps[place].state["battery"] for place in (first, second)] == ["partly off", "off"]
    assert names[names.index("restore:rear") + 1] == "restore:front"
    assert names.index("restore:front") < names.index("power:on")
    assert step(made, "restore:rear").state["battery"] == "partly off"


def test_an_own_wait_of_the_first_battery_is_kept() -> None:
    about = record(TWO.replace("bonnet: open}", "bonnet: open}, wait: {time: 5 min, why: Fan runs on}"))
    assert [name for name in ids(about, "dash") if name.startswith("wait")] == ["wait:front:own", "wait:rear"]


def test_a_job_that_leaves_the_plug_alone_is_tested_open() -> None:
    names = ids(record(OPEN_PLUG), "door")
    assert names.index("power:off") < names.index("refit:cap")
