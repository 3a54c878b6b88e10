"""The way back where it is not the reverse of the way in: `refit_after`, parts that are single-use as a whole."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from making import at_work, ids, plan, record, step
from undertrim.derive import cars
from undertrim.derive.procedure import tally
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.way_back import in_order, waits
from undertrim.derive.simulation import replay
from undertrim.words import say, sentence

CAR = {"drive-side": "left"}
PARTS = """
    parts:
      knee: {REFIT}
      glovebox: {}
      side: {after: [knee]}
      shelf: {after: [glovebox]}
    openings:
      door: {kind: speaker, behind: [knee, glovebox, side, shelf], crash_sensor: no}
"""


def about(refit: str = "") -> str:
    return PARTS.replace("REFIT", refit)


def refits(text: str) -> list[str]:
    return [name.removeprefix("refit:") for name in at_work(record(text), "door") if name.startswith("refit:")]


def test_without_it_parts_go_back_in_reverse() -> None:
    assert refits(about()) == ["shelf", "side", "glovebox", "knee"]


def test_a_part_waits_for_what_it_is_refitted_after_and_nothing_else_moves() -> None:
    text = about().replace("side: {after: [knee]}", "side: {after: [knee], refit_after: [glovebox]}")
    assert refits(text) == ["shelf", "glovebox", "side", "knee"]


def test_what_it_waits_for_brings_what_lies_behind_that() -> None:
    text = about().replace("shelf: {after: [glovebox]}", "shelf: {after: [glovebox], refit_after: [knee]}")
    assert refits(text) == ["side", "knee", "shelf", "glovebox"]


def test_the_replay_refuses_the_plain_reverse() -> None:
    text = about().replace("side: {after: [knee]}", "side: {after: [knee], refit_after: [glovebox]}")
    made = record(text)
    steps = list(plan(made, "door").steps)
    assert replay(made, CAR, steps) == []
    names = [item.id for item in steps]
    one, other = names.index("refit:glovebox"), names.index("refit:side")
    steps[one], steps[other] = steps[other], steps[one]
    faults = replay(made, CAR, steps)
    assert [fault.kind for fault in faults] == ["order"]
    assert "after which it is refitted" in sentence(faults[0].said)
    assert faults[0].pointer == ("parts", "side", "refit_after", 0)


def test_a_part_that_moves_over_cannot_wait_for_one_that_goes_back() -> None:
    made = record("""
        parts:
          switch: {goes_to: dash, refit_after: [bezel]}
          bezel: {}
          radio: {after: [bezel], replaced: yes}
        openings: {dash: {behind: [radio]}}
    """)
    faults = replay(made, CAR, plan(made, "dash").steps)
    assert [fault.pointer for fault in faults] == [("parts", "switch", "refit_after", 0)]


def test_it_may_hold_in_some_cars_and_on_the_same_side() -> None:
    made = record("""
        vehicle: {drive_side: [left, right]}
        parts:
          top: {each: [left, right], refit_after: [{part: foot, when: {drive-side: right}}]}
          foot: {each: [left, right]}
        openings: {door: {each: [left, right], behind: [top, foot], crash_sensor: no}}
    """)
    names = at_work(made, "door@left", drive_side="right")
    assert names.index("refit:foot@left") < names.index("refit:top@left")
    plain = record("""
        parts: {top: {each: [left, right], refit_after: [foot]}, foot: {each: [left, right]}}
        openings: {door: {each: [left, right], behind: [foot, top], crash_sensor: no}}
    """)
    order = [name for name in ids(plain, "door") if name.startswith("refit:")]
    assert order.index("refit:foot@left") < order.index("refit:top@left")


def test_a_restraint_plug_draws_what_its_part_waits_for_before_the_power() -> None:
    made = record("""
        restraint: {wait: 3 min}
        parts:
          trim: {refit_after: [shelf], tethers: {bag: {name: Bag plug, kind: plug, circuit: restraint, then: rejoin}}}
          shelf: {}
          radio: {replaced: yes}
        openings: {dash: {behind: [radio, trim, shelf]}}
    """)
    names = ids(made, "dash")
    assert names.index("refit:shelf") < names.index("refit:trim") < names.index("power:on")
    assert replay(made, CAR, plan(made, "dash").steps) == []


def test_a_page_lists_the_visits_whose_order_is_their_own() -> None:
    text = about().replace("side: {after: [knee]}", "side: {after: [knee], refit_after: [glovebox]}")
    made = record(text.replace("openings:", "openings:\n      low: {kind: speaker, behind: [side], crash_sensor: no}"))
    planner = Planner(made)
    shown = choices(planner)
    place = {item.id: number for number, item in enumerate(shown.steps)}
    for car in shown.cars:
        for ids_ in (*car.singles.values(), *car.sets.values()):
            steps = [item for item in shown.steps if item.id in ids_]
            assert len(steps) == len(ids_)
        assert list(car.singles["low"]) == sorted(car.singles["low"], key=place.__getitem__)
    assert all(replay(made, car, planner.plan(targets(made), car).steps) == [] for car in cars.assignments(made))


@given(st.data())
def test_the_order_obeys_every_wait_and_keeps_the_rest(data: st.DataObject) -> None:
    names = [f"n{number}" for number in range(data.draw(st.integers(1, 8)))]
    truth = data.draw(st.permutations(names))
    pairs = [(a, b) for i, a in enumerate(truth) for b in truth[i + 1 :]]
    before = data.draw(st.lists(st.sampled_from(pairs), unique=True)) if pairs else []
    waiting = waits(dict.fromkeys(names, ()), {b: [a for a, c in before if c == b] for _, b in before})
    found = in_order(names, waiting)
    assert sorted(found) == sorted(names)
    assert all(found.index(a) < found.index(b) for a, b in before)
    if all(names.index(a) < names.index(b) for a, b in before):
        assert found == names


def test_a_circle_stops_nothing() -> None:
    assert in_order(["a", "b", "c"], {"a": {"b"}, "b": {"a"}}) == ["c", "a", "b"]


SPOILT = """
    parts:
      membrane: {REUSE, seal: Butyl cord, tethers: {lead: {name: Lead, kind: plug}}}
    openings: {door: {behind: [membrane], crash_sensor: no}}
"""


def test_a_part_that_is_spoilt_is_bought_and_said() -> None:
    made = plan(record(SPOILT.replace("REUSE", "reuse: no")), "door")
    assert [(item.count, say(item.what)) for item in tally.purchases(made.steps)] == [
        (1, "Membrane"),
        (1, "Butyl cord"),
    ]
    assert "It is single-use: bin it. A new one goes in its place." in [
        say(part) for part in step(made, "remove:membrane").text
    ]
    assert "Fit a new one: the old one is single-use." in [say(part) for part in step(made, "refit:membrane").text]
    assert tally.purchases(plan(record(SPOILT.replace("REUSE", "reuse: yes")), "door").steps)[0].what == "Butyl cord"


@pytest.mark.parametrize(("reuse", "new"), [("no", False), ("yes", True)])
def test_the_replay_holds_the_new_part_against_the_record(reuse: str, new: bool) -> None:
    made = record(SPOILT.replace("REUSE", f"reuse: {reuse}"))
    steps = plan(made, "door").steps
    assert replay(made, CAR, steps) == []
    changed = [replace(item, new=new) if item.kind == "refit" else item for item in steps]
    assert [fault.kind for fault in replay(made, CAR, changed)] == ["single-use"]


RIVETS = record(
    """
    parts:
      speaker: {held_by: [{rivet: blind, diameter: 4.8 mm, count: 4}, {screw: T20, or_drive: hex 7 mm, count: 2}]}
      tray: {held_by: [{screw: PLAIN, count: 1}]}
    openings: {door: {behind: [speaker], crash_sensor: no}, low: {kind: speaker, behind: [speaker, tray], crash_sensor: no}}
""".replace("PLAIN", "hex 7 mm")
)


def test_rivets_are_drilled_out_and_new_ones_go_in() -> None:
    made = plan(RIVETS, "door")
    out, back = step(made, "remove:speaker").fasteners[0], step(made, "refit:speaker").fasteners[0]
    assert (out.fate, out.later, say(out.tool)) == ("out", "binned", "drill and bits")
    assert (back.fate, say(back.tool)) == ("new", "rivet tool")
    assert [(item.count, say(item.what)) for item in tally.purchases(made.steps)] == [
        (4, "blind rivet, 4.8 mm (0.189 in) thick")
    ]
    old = [
        replace(item, fasteners=tuple(replace(line, fate="back") if line.fate == "new" else line for line in item.fasteners))
        for item in made.steps
    ]  # fmt: skip
    assert [fault.kind for fault in replay(RIVETS, CAR, old)] == ["single-use"]


def test_either_tool_will_do_unless_one_is_needed_anyway() -> None:
    apart = [say(tool.name) for tool in tally.tools(plan(RIVETS, "door").steps)]
    assert [name for name in apart if "T20" in name] == ["T20 bit or socket 7 mm"]
    together = [say(tool.name) for tool in tally.tools(plan(RIVETS, "low").steps)]
    assert "socket 7 mm" in together
    assert "T20 bit or socket 7 mm" not in together


def test_what_waits_for_a_part_that_wants_the_battery_off_goes_back_after_it() -> None:
    """The zones of the way back follow the same waits as its order."""
    made = record("""
        restraint: {wait: 3 min}
        preps: {battery: {sets: {battery: off}, restore: Join it.}}
        parts:
          bezel: {tethers: {lamp: {name: Lamp plug, kind: plug, circuit: restraint, then: leave, serves: [airbag-lamp]}}}
          shelf: {refit_after: [bezel]}
          radio: {replaced: yes}
        openings: {dash: {behind: [bezel, shelf, radio]}}
    """)
    names = ids(made, "dash")
    wanted = ["power:off", "prepare:battery:again", "refit:bezel", "restore:battery:again", "refit:shelf"]
    assert [name for name in names if name in wanted] == wanted
    assert replay(made, CAR, plan(made, "dash").steps) == []
