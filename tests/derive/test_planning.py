"""The procedure from before the first screw to after the last, and the way back."""

import pickle

import pytest

from making import ids, plan, record, step
from undertrim.derive.jobs import wanted
from undertrim.derive.procedure import cheapest
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.words import say

SIMPLE = """
    preps:
      battery:
        sets: {battery: off}
        restore: Join it.
        wait: {time: 3 min, why: Reserve power}
    parts:
      trim: {held_by: [{clip: push, count: 4}]}
      panel: {needs: {glass: down}, after: [trim], tethers: {rod: {name: Handle rod, kind: rod}}}
      speaker: {replaced: yes, after: [panel]}
    openings:
      door: {area: front-door, behind: [speaker]}
"""


def test_a_whole_visit_in_its_order() -> None:
    # Long because a whole visit stands in it, a step a line.
    about = record(SIMPLE, """
        after_battery:
          before: {code: {do: Ask for the code.}}
          after: {clock: {do: Set the clock.}}
    """)  # fmt: skip
    assert ids(about, "door") == [
        "before:code",
        "prepare:usual:glass-down",
        "prepare:battery",
        "wait:battery",
        "remove:trim",
        "remove:panel",
        "remove:speaker",
        "install:door:offer",
        "install:door:join",
        "install:door:fasten",
        "restore:battery",
        "power:on",
        "test:door:sound",
        "test:door:window-if-any",
        "power:off",
        "refit:panel",
        "test:panel:rod",
        "refit:trim",
        "restore:usual:glass-down",
        "after:clock",
        "measure:rest",
    ]
    assert [item.section for item in plan(about, "door").steps] == [
        "before", "prepare", "prepare", "prepare", "remove", "remove", "remove", "install", "install", "install",
        "test", "test", "test", "test", "test", "refit", "refit", "refit", "restore", "after", "after",
    ]  # fmt: skip


def test_the_factory_part_is_not_refitted() -> None:
    assert "refit:speaker" not in ids(record(SIMPLE), "door")


def test_a_rod_is_tested_right_after_its_refit_and_a_strap_is_not() -> None:
    about = record("""
        parts:
          lid: {tethers: {a: {name: Bowden cable, kind: cable}, b: {name: Strap, kind: strap}, c: {name: Hose, kind: hose, test: Look.}}}
        openings:
          box: {behind: [lid]}
    """)
    names = ids(about, "box")
    start = names.index("refit:lid")
    assert names[start : start + 3] == ["refit:lid", "test:lid:a", "test:lid:c"]
    assert step(plan(about, "box"), "test:lid:c").text == ("Look.",)


def test_a_peeled_covering_is_sealed_again_with_its_refit() -> None:
    about = record("""
        parts:
          liner: {release: peel, seal: butyl cord 5 mm}
        openings:
          door: {behind: [liner]}
    """)
    assert "Seal it again: butyl cord 5 mm." in [say(part) for part in step(plan(about, "door"), "refit:liner").text]


def test_a_record_whose_cars_differ_in_order_is_still_planned_car_by_car() -> None:
    about = record("""
        variants:
          dash: {ask: Which one, choices: {early: {label: Early}, late: {label: Late}}}
        parts:
          bezel: {after: [{part: tray, when: {dash: early}}]}
          tray: {after: [{part: bezel, when: {dash: late}}]}
        openings:
          dash: {behind: [bezel, tray]}
    """)
    assert not Planner(about).ordered
    orders = [
        [name for name in ids(about, "dash", dash=which) if name.startswith("remove")] for which in ("early", "late")
    ]
    assert orders == [["remove:tray", "remove:bezel"], ["remove:bezel", "remove:tray"]]
    assert {"remove:tray", "refit:bezel"} <= {item.id for item in Planner(about).catalogue()}


def test_routes_that_interlock_too_much_are_refused_by_name(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cheapest, "MOST_STATES", 1)
    about = record("""
        parts:
          one:
          two:
          three:
          four: {after_any: [{a: [one], b: [two]}, {a: [two], b: [three]}]}
        openings:
          dash: {behind: [four]}
    """)
    with pytest.raises(TooTangled, match="open:dash") as caught:
        Planner(about).plan(wanted(about, ["dash"]), {})
    assert str(pickle.loads(pickle.dumps(caught.value))) == str(caught.value)  # noqa: S301 - our own


def test_a_job_out_of_reach_can_be_told_by_a_worker_process() -> None:
    about = record("""
        parts: {one: {after: [two]}, two: {after: [one]}}
        openings: {dash: {behind: [one]}}
    """)
    with pytest.raises(Unreachable) as caught:
        Planner(about).plan(wanted(about, ["dash"]), {})
    back = pickle.loads(pickle.dumps(caught.value))  # noqa: S301 - our own
    assert (str(back), back.block) == (str(caught.value), caught.value.block)


def test_an_opening_that_the_car_does_not_have_is_passed_over() -> None:
    about = record("""
        variants:
          sound: {ask: Which one, choices: {plain: {label: Plain}, rich: {label: Rich}}}
        parts:
          panel:
          grille:
        openings:
          door: {behind: [panel]}
          top: {behind: [grille], when: {sound: rich}}
    """)
    made = Planner(about).plan(targets(about), {"sound": "plain"})
    assert made.targets == (Target("door"),)
    assert "remove:grille" not in [item.id for item in made.steps]


def test_the_main_fuse_goes_in_once_all_gear_of_the_visit_is_in() -> None:
    about = record("""
        parts:
          cover:
        openings:
          bay: {kind: amplifier, behind: [cover]}
          shelf: {kind: amplifier, behind: [cover], run: to-shelf}
        """)
    fitting = [name for name in ids(about, "bay", "shelf") if name.startswith("install")]
    assert fitting[-2:] == ["install:bay:fuse", "install:shelf:fuse"]
    assert "install:shelf:join" in fitting[:-2]
