"""States of the car: what pulls in which preparation, and what is done before a state is taken away."""

import pytest

from making import at_work, ids, record
from making import plan as planned
from undertrim.derive.procedure import states
from undertrim.derive.procedure.cycles import Unreachable

DOOR = """
    openings:
      door: {behind: [panel]}
"""


def prepared(names: list[str]) -> list[str]:
    return [name.removeprefix("prepare:") for name in names if name.startswith("prepare:")]


def test_a_need_pulls_in_the_usual_way_to_meet_it_with_what_that_needs() -> None:
    about = record("""
        parts:
          panel: {needs: {gear: lowest}}
        openings:
          door: {behind: [panel]}
    """)
    assert prepared(ids(about, "door")) == ["usual:parking-brake-on", "usual:gear-lowest", "usual:battery-off"]


def test_the_records_own_way_goes_before_the_usual_one() -> None:
    about = record(
        """
        preps:
          lever: {needs: {parking-brake: on}, sets: {gear: lowest}}
          battery: {sets: {battery: off}}
        parts:
          panel: {needs: {gear: lowest}}
        """,
        DOOR,
    )
    assert prepared(ids(about, "door")) == ["usual:parking-brake-on", "lever", "battery"]


def test_a_way_that_is_not_in_this_car_leaves_the_usual_one() -> None:
    about = record(
        """
        variants:
          box: {ask: Which one, choices: {manual: {label: Manual}, automatic: {label: Automatic}}}
        preps:
          release: {when: {box: automatic}, sets: {gear: lowest}}
        parts:
          panel: {needs: {gear: lowest}}
        """,
        DOOR,
    )
    assert "release" in prepared(ids(about, "door", box="automatic"))
    assert "usual:gear-lowest" in prepared(ids(about, "door", box="manual"))
    assert "usual:gear-lowest" not in prepared(ids(about, "door", box="automatic"))


def test_a_state_the_car_arrives_in_needs_nothing() -> None:
    about = record("parts: {panel: {needs: {seat: home, boot: closed}}}", DOOR)
    assert prepared(ids(about, "door")) == ["usual:battery-off"]


def test_the_first_value_in_the_file_is_used_up_before_the_second_is_set() -> None:
    text = """
        preps:
          FIRST
          SECOND
        parts:
          panel: {needs: {glass: up}}
          guide: {needs: {glass: down}}
        openings:
          door: {behind: [panel, guide]}
    """
    up, down = "up: {sets: {glass: up}}", "down: {sets: {glass: down}}"
    steps = [
        at_work(record(text.replace("FIRST", one).replace("SECOND", two)), "door")
        for one, two in ((up, down), (down, up))
    ]
    assert in_order(steps[0], "prepare:up", "remove:panel", "prepare:down", "remove:guide")
    assert in_order(steps[1], "prepare:down", "remove:guide", "prepare:up", "remove:panel")


def in_order(names: list[str], *wanted: str) -> bool:
    return [name for name in names if name in wanted] == list(wanted)


def test_two_usual_ways_are_ordered_too() -> None:
    about = record("""
        parts:
          guide: {needs: {glass: down}}
          panel: {needs: {glass: up}}
        openings:
          door: {behind: [guide, panel]}
    """)
    assert in_order(
        at_work(about, "door"),
        "prepare:usual:glass-up", "remove:panel", "prepare:usual:glass-down", "remove:guide",
    )  # fmt: skip


def test_needs_that_cannot_both_be_met_stop_the_job_and_say_which_way_they_go_round() -> None:
    about = record("""
        parts:
          radio: {replaced: yes, tethers: {main: {name: Main plug, kind: plug}}}
          lid: {needs: {battery: on}, after: [radio]}
        openings:
          dash: {behind: [radio]}
          box: {behind: [lid]}
    """)
    with pytest.raises(Unreachable) as caught:
        planned(about, "box")
    assert {"lid", "radio", "usual:battery-off"} <= set(caught.value.block.cycle)


def test_a_collision_stops_only_the_job_it_concerns() -> None:
    about = record("""
        parts:
          radio: {replaced: yes, tethers: {main: {name: Main plug, kind: plug}}}
          lid: {needs: {battery: on}, after: [radio]}
          cap: {each: [left, right]}
          speaker: {each: [left, right], replaced: yes, after: [cap]}
        openings:
          dash: {behind: [radio]}
          box: {behind: [lid]}
          door: {each: [left, right], behind: [speaker]}
    """)
    off = [name for name in ids(about, "dash", "door") if name.startswith("remove")]
    assert off == [
        "remove:radio", "remove:cap@left", "remove:speaker@left", "remove:cap@right", "remove:speaker@right",
    ]  # fmt: skip


def test_a_route_that_collides_gives_way_to_the_next_cheapest() -> None:
    about = record("""
        parts:
          radio: {replaced: yes, takes: 1 min, tethers: {main: {name: Main plug, kind: plug}}}
          lid: {needs: {battery: on}, takes: 1 min, after: [radio]}
          long: {takes: 20 min}
          longer: {takes: 30 min}
          box: {after_any: [{short: [lid], long: [long], longer: [longer]}]}
        openings:
          dash: {behind: [radio]}
          floor: {behind: [box]}
    """)
    made = planned(about, "floor")
    assert [item.id for item in made.steps if item.kind == "remove"] == ["remove:long", "remove:box"]
    assert made.selection.routes == {("box", 0): 1}


def test_every_state_that_something_can_need_has_a_usual_way_or_is_how_cars_arrive() -> None:
    reachable = {state for state, _ in states.usual()}
    assert reachable <= states.initial().keys()
    for prep in states.usual().values():
        for state, value in prep.needs.items():
            assert (state, value) in states.usual() or states.initial()[state] == value
