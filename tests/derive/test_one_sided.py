"""What only one side of the car has: the steps of that side show it, count it and try it, and those of the other do not."""

from dataclasses import replace

from making import plan, record, step
from undertrim.derive.procedure import tally
from undertrim.derive.procedure.planning import Procedure
from undertrim.derive.simulation import replay
from undertrim.record.model import VehicleRecord
from undertrim.words import say

DOORS = """
    parts:
      cap: {each: [left, right]}
      panel:
        each: [left, right]
        held_by: [{screw: T30, count: 1, side: right, under: cap}, {clip: push, count: 6}, {screw: T20, count: 2, side: left}]
        tethers:
          windows: {name: Window switch plug, kind: plug, serves: [windows]}
          mirrors: {name: Mirror switch plug, kind: plug, serves: [mirrors], side: left}
    openings:
      door: {each: [left, right], behind: [panel]}
"""


def fasteners(made: Procedure, name: str) -> list[str]:
    return [line.fastener.what for line in step(made, name).fasteners]


def tethers(made: Procedure, name: str) -> list[str]:
    return [line.tether.id for line in step(made, name).tethers]


def test_each_side_shows_what_it_has() -> None:
    made = plan(record(DOORS), "door")
    assert (fasteners(made, "remove:panel@left"), tethers(made, "remove:panel@left")) == (
        ["push", "T20"],
        ["windows", "mirrors"],
    )
    assert (fasteners(made, "remove:panel@right"), tethers(made, "remove:panel@right")) == (
        ["T30", "push"],
        ["windows"],
    )
    assert fasteners(made, "refit:panel@right") == ["T30", "push"]
    tried = [item for item in made.steps if item.kind == "try"]
    assert {item.node.id: [line.tether.id for line in item.tethers] for item in tried if item.node} == {
        "panel@left": ["windows", "mirrors"],
        "panel@right": ["windows"],
    }


def test_they_are_counted_on_their_side_alone() -> None:
    made = plan(record(DOORS), "door")
    counted = {say(item.what): (item.out, item.back) for item in tally.fasteners(made.steps)}
    assert counted == {"push": (12, 12), "T20": (2, 2), "T30": (1, 1)}


def test_what_hides_them_comes_off_on_their_side_alone() -> None:
    made = plan(record(DOORS), "door")
    removed = [item.node.id for item in made.steps if item.kind == "remove" and item.node]
    assert sorted(removed) == ["cap@right", "panel@left", "panel@right"]


def spoilt(about: VehicleRecord, made: Procedure, name: str, kept: int) -> list[tuple[str, object]]:
    """What the replay says of a procedure in which one step has only some of its fasteners."""
    steps = tuple(replace(one, fasteners=one.fasteners[:kept]) if one.id == name else one for one in made.steps)
    return [(fault.kind, fault.pointer) for fault in replay(about, made.car, steps)]


def test_the_replay_agrees_and_says_which_of_the_record_is_missed() -> None:
    about = record(DOORS)
    made = plan(about, "door")
    assert list(replay(about, made.car, made.steps)) == []
    pointer = ("parts", "panel", "held_by", 2)
    assert ("fastener-missed", pointer) in spoilt(about, made, "remove:panel@left", 1)
    assert ("fastener-left-over", pointer) in spoilt(about, made, "refit:panel@left", 1)


def test_a_side_that_differs_between_cars() -> None:
    about = record("""
        vehicle: {drive_side: [left, right]}
    """, DOORS.replace("side: left}\n    openings", "side: left, when: {drive-side: left}}\n          mirrors-right: {name: Mirror switch plug, kind: plug, serves: [mirrors], side: right, when: {drive-side: right}}\n    openings"))  # fmt: skip
    for side, other in (("left", "right"), ("right", "left")):
        made = plan(about, "door", **{"drive-side": side})
        assert any(name.startswith("mirrors") for name in tethers(made, f"remove:panel@{side}"))
        assert tethers(made, f"remove:panel@{other}") == ["windows"]
        assert list(replay(about, made.car, made.steps)) == []
