"""When the battery goes off and comes back: lists around it, buried batteries, open restraint plugs."""

from making import at_work, ids, plan, record
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
        (known, ["before:code"]),
    ):
        made = plan(record(SIMPLE, text), "door").steps
        assert [item.id for item in made if item.kind == "todo"] == expected
        assert all(item.unknown == item.id.endswith("unknown") for item in made)


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
    back = [name for name in names if name.split(":")[0] in ("refit", "restore", "power")]
    assert back == [
        "refit:frame", "refit:lamp-trim", "restore:usual:battery-off", "power:on", "power:off", "refit:cap",
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
        "refit:frame", "refit:lamp-trim", "power:on", "power:off",
    ]  # fmt: skip


def test_a_plug_left_joined_keeps_the_tests_before_the_refit() -> None:
    about = record(OPEN_PLUG.replace("rejoin", "leave"))
    names = ids(about, "dash")
    assert names.index("power:off") < names.index("refit:frame")


def test_a_job_that_leaves_the_plug_alone_is_tested_open() -> None:
    names = ids(record(OPEN_PLUG), "door")
    assert names.index("power:off") < names.index("refit:cap")
