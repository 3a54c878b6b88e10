"""What the replay refuses of the ends of tethers, and of parts that go back or are left off."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from making import plan, record
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import replay
from undertrim.words import sentence

SPOILED = record("""
    restraint: {wait: 3 min}
    preps: {battery: {sets: {battery: off}, restore: Join it., wait: {time: 3 min, why: Reserve}}}
    parts:
      bezel:
        laid: On the dash
        tethers:
          flap: {name: Flap cable, kind: cable, then: goes-with}
          switch: {name: Switch plug, kind: plug, serves: [hazard]}
          sound: {name: Sound plug, kind: plug, serves: [sound]}
          lamp: {name: Lamp plug, kind: plug, circuit: restraint, then: rejoin}
      radio:
        after: [bezel]
        replaced: yes
        tethers:
          main: {name: Main plug, kind: plug}
          usb: {name: USB plug, kind: plug, then: park, serves: [media]}
          ring: {name: Ring, kind: fibre, then: bridge}
    openings: {dash: {behind: [radio]}}
""")
CAR = {"drive-side": "left"}

Change = Callable[[TetherLine], TetherLine | None]


def spoiled(name: str, tether: str, change: Change) -> list[Step]:
    steps = list(plan(SPOILED, "dash").steps)
    for number, item in enumerate(steps):
        if item.id == name:
            lines = (change(line) if line.tether.id == tether else line for line in item.tethers)
            steps[number] = replace(item, tethers=tuple(line for line in lines if line))
    return steps


def test_the_unspoiled_one_is_safe() -> None:
    assert replay(SPOILED, CAR, plan(SPOILED, "dash").steps) == []


def act(what: str) -> Change:
    return lambda line: replace(line, act=what)


FAULTS: dict[str, tuple[str, str, Change, str, str]] = {
    "a plug for the gear is forgotten": ("install:dash:seat", "main", lambda _: None, "test-unjoined", "undone since"),
    "a parked one is forgotten": ("install:dash:seat", "usb", lambda _: None, "tether-open", "never joined again"),
    "a bridged one is forgotten": ("install:dash:seat", "ring", lambda _: None, "test-unjoined", "undone since"),
    "a parked one is joined": ("install:dash:seat", "usb", act("to-gear"), "tether-fate", "not what the record says"),
    "one for the gear is parked": ("install:dash:seat", "main", act("park"), "tether-fate", "not what the record says"),
    "a ring is parked": ("install:dash:seat", "ring", act("park"), "tether-fate", "not what the record says"),
    "a refitted one is parked": ("refit:bezel", "switch", act("park"), "tether-fate", "not what the record says"),
    "one that a test uses is parked": ("join:bezel", "sound", act("park"), "tether-fate", "not what the record says"),
    "a restraint plug is parked": ("refit:bezel", "lamp", act("park"), "restraint-open", "restraint wiring"),
    "a restraint plug is bridged": ("refit:bezel", "lamp", act("bridge"), "restraint-open", "restraint wiring"),
    "the removal says something else": (
        "remove:radio", "main", lambda line: replace(line, later=("park",)), "tether-fate", "said something else",
    ),
    "a plug is left joined": ("remove:bezel", "switch", act("leave"), "tether-missed", "still joined"),
    "a captive cable is left as if it were no matter": ("remove:bezel", "flap", act("leave"), "tether-missed", "still joined"),
    "a captive cable is not laid back": ("refit:bezel", "flap", lambda _: None, "tether-open", "never laid back"),
    "one is joined that was never undone": (
        "remove:bezel", "switch", act("goes-with"), "tether-missed", "still joined",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FAULTS)
def test_a_wrong_end_is_refused(name: str) -> None:
    where, tether, change, kind, said = FAULTS[name]
    faults = replay(SPOILED, CAR, spoiled(where, tether, change))
    assert [fault.kind for fault in faults] == [kind]
    assert said in sentence(faults[0].said)
    assert faults[0].pointer[-1] == tether


def test_one_that_ends_twice_is_refused() -> None:
    steps = list(plan(SPOILED, "dash").steps)
    seat = next(item for item in steps if item.id == "install:dash:seat")
    faults = replay(SPOILED, CAR, [*steps[: steps.index(seat)], seat, *steps[steps.index(seat) :]])
    assert {fault.kind for fault in faults} == {"tether-extra"}


def test_a_captive_cable_is_tried_once_its_part_is_back() -> None:
    steps = plan(SPOILED, "dash").steps
    assert "test:bezel:flap" in [item.id for item in steps]
    faults = replay(SPOILED, CAR, [item for item in steps if item.id != "test:bezel:flap"])
    assert [fault.kind for fault in faults] == ["untested"]


COVER = record("""
    parts:
      lid: {tethers: {lamp: {name: Lamp plug, kind: plug}}}
      tweeter: {after: [lid], replaced: yes}
      panel: {after: [tweeter]}
    openings:
      dash: {behind: [panel]}
      top: {kind: speaker, behind: [tweeter], crash_sensor: no}
""")


def moved_before(steps: tuple[Step, ...], what: str, before: str) -> list[Step]:
    kept = [item for item in steps if item.id != what]
    place = [item.id for item in kept].index(before)
    return [*kept[:place], next(item for item in steps if item.id == what), *kept[place:]]


def test_a_replaced_part_that_goes_back_is_not_shut_in() -> None:
    """It was taken for gone as soon as it came off, so that a lid could go on before it."""
    steps = plan(COVER, "dash").steps
    assert replay(COVER, CAR, steps) == []
    faults = replay(COVER, CAR, moved_before(steps, "refit:lid", "refit:panel"))
    assert [fault.kind for fault in faults][:1] == ["order"]
    shut_in = [*moved_before(steps, "refit:lid", "refit:tweeter")]
    assert [fault.kind for fault in replay(COVER, CAR, shut_in)] == ["order"]


def test_a_replaced_part_that_neither_goes_back_nor_makes_room_is_left_off() -> None:
    about = record("""
        parts: {tweeter: {replaced: yes}, panel: {after: [tweeter]}}
        openings: {dash: {behind: [panel]}, top: {kind: speaker, behind: [tweeter], crash_sensor: no}}
    """)
    steps = [item for item in plan(about, "dash").steps if item.id != "refit:tweeter"]
    assert [fault.kind for fault in replay(about, CAR, steps)] == ["left-off"]


def test_gear_deals_with_nothing_of_a_part_that_makes_no_room_there() -> None:
    about = record("""
        preps: {battery: {sets: {battery: off}, after: [lid], restore: Join it.}}
        parts:
          lid: {replaced: yes, tethers: {vent: {name: Vent hose, kind: hose}}}
          radio: {replaced: yes}
        openings: {dash: {behind: [radio]}}
    """)
    faults = replay(about, CAR, plan(about, "dash").steps)
    assert [(fault.kind, fault.pointer) for fault in faults] == [("tether-fate", ("parts", "lid", "tethers", "vent"))]
