"""Tools, fasteners out and back, purchases and time, added up over a procedure."""

from dataclasses import replace
from pathlib import Path

import pytest

from making import plan, record
from undertrim.derive.procedure import tally
from undertrim.derive.procedure.planning import Procedure
from undertrim.derive.procedure.tally import Count, Purchase
from undertrim.publish.facts import words
from undertrim.record.store import Workspace
from undertrim.words import say

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])


def counts(procedure: Procedure) -> dict[str, Count]:
    return {f"{item.what} {item.kind}": item for item in map(said, tally.fasteners(procedure.steps))}


def said(item: Count) -> Count:
    """The count with its values in words."""
    return replace(item, what=say(item.what), detail=say(item.detail))


def bought(procedure: Procedure) -> tuple[Purchase, ...]:
    """What is bought, in words."""
    return tuple(Purchase(one.count, say(one.what), say(one.part)) for one in tally.purchases(procedure.steps))


PANEL = """
    openings:
      door: {behind: [panel]}
"""


def test_what_comes_out_goes_back() -> None:
    made = plan(record("""
        parts:
          panel:
            held_by: [{screw: T20, count: 3, length: 16 mm}, {clip: push, count: 7}, {hook: tab, count: 2}, {bond: butyl}]
    """, PANEL), "door")  # fmt: skip
    assert tuple(map(said, tally.fasteners(made.steps))) == (
        Count("screw", "T20", "16 mm (0.63 in)", out=3, back=3),
        Count("clip", "push", "", out=7, back=7),
    )


def test_look_alikes_that_stay_are_not_counted_and_need_no_tool() -> None:
    made = plan(record("""
        parts:
          panel: {held_by: [{screw: T20, count: 3}, {bolt: hex 10 mm, count: 2, leave: yes}]}
    """, PANEL), "door")  # fmt: skip
    assert counts(made).keys() == {"T20 screw"}
    assert "socket 10 mm" not in {say(tool.name) for tool in tally.tools(made.steps)}


def test_single_use_fasteners_are_thrown_away_and_bought() -> None:
    made = plan(record("""
        parts:
          panel: {held_by: [{scrivet: push-pin, count: 4, reuse: no}, {clip: push, count: 2}]}
    """, PANEL), "door")  # fmt: skip
    assert counts(made)["push-pin scrivet"] == Count("scrivet", "push-pin", "", out=4, binned=4, new=4)
    assert bought(made) == (Purchase(4, "push-pin scrivet", "Panel"),)


def test_clips_of_one_sort_are_told_apart_by_colour_and_number() -> None:
    clip = "{clip: push, count: 2, reuse: no, colour: yellow, part_number: KC-44}"
    made = record(f"parts: {{panel: {{held_by: [{clip}, {{clip: push, count: 3}}]}}}}", PANEL)
    procedure = plan(made, "door")
    assert {(one.what, one.part) for one in bought(procedure)} == {("push clip, yellow, part no. KC-44", "Panel")}
    lines = [said(one) for one in tally.fasteners(procedure.steps)]
    assert [(line.detail, line.out) for line in lines] == [("yellow, part no. KC-44", 2), ("", 3)]


def test_the_fasteners_of_a_factory_part_are_bagged_or_move_to_the_gear() -> None:
    made = plan(record("""
        parts:
          panel:
            replaced: yes
            held_by:
              - {screw: T20, count: 4, moves: yes}
              - {bolt: hex 8 mm, count: 1}
              - {clip: metal, count: 2, moves: yes, reuse: no}
    """, PANEL), "door")  # fmt: skip
    assert counts(made) == {
        "T20 screw": Count("screw", "T20", "", out=4, moved=4),
        "hex 8 mm bolt": Count("bolt", "hex 8 mm", "", out=1, bagged=1),
        "metal clip": Count("clip", "metal", "", out=2, binned=2),
    }
    assert bought(made) == ()


def test_a_part_that_moves_over_takes_its_fasteners_along() -> None:
    made = plan(record("""
        parts:
          panel: {replaced: yes}
          switch: {goes_to: door, held_by: [{screw: T15, count: 2}, {clip: push, count: 1, reuse: no}]}
    """, PANEL), "door")  # fmt: skip
    assert counts(made) == {
        "T15 screw": Count("screw", "T15", "", out=2, moved=2),
        "push clip": Count("clip", "push", "", out=1, binned=1, new=1),
    }


def test_unknown_counts_are_counted_as_unrecorded_once() -> None:
    made = plan(record("""
        parts:
          panel: {held_by: [{clip: push, count: unknown}, {clip: push, count: 2}, {screw: T20}]}
    """, PANEL), "door")  # fmt: skip
    assert counts(made)["push clip"] == Count("clip", "push", "", out=2, back=2, unrecorded=1)
    assert counts(made)["T20 screw"].unrecorded == 1


def test_an_unknown_number_of_single_use_ones_is_bought_as_unknown() -> None:
    made = plan(record("""
        parts:
          panel:
            held_by: [{clip: push, count: 2, reuse: no}, {clip: push, count: unknown, reuse: no, note: Behind the pull}]
    """, PANEL), "door")  # fmt: skip
    assert bought(made) == (Purchase(None, "push clip", "Panel"),)


def test_a_seal_is_bought_for_each_side() -> None:
    made = plan(record("""
        parts:
          liner: {each: [left, right], release: peel, seal: butyl cord 5 mm}
        openings:
          door: {each: [left, right], behind: [liner]}
    """), "door")  # fmt: skip
    assert bought(made) == (
        Purchase(1, "butyl cord 5 mm", "Liner, right"),
        Purchase(1, "butyl cord 5 mm", "Liner, left"),
    )


def test_counts_are_per_side() -> None:
    about = record("""
        parts:
          panel: {each: [left, right], held_by: [{clip: push, count: 9}]}
        openings:
          door: {each: [left, right], behind: [panel]}
    """)
    assert counts(plan(about, "door"))["push clip"].out == 18
    assert counts(plan(about, "door@left"))["push clip"].out == 9


def test_tools_come_in_the_order_of_first_use_with_what_will_do_instead() -> None:
    made = plan(record("""
        parts:
          panel: {held_by: [{bolt: hex 7/32 in, count: 1}, {screw: T20, count: 2}, {clip: push, count: 2}]}
    """, PANEL), "door")  # fmt: skip
    found = {say(tool.name): tuple(map(say, tool.instead)) for tool in tally.tools(made.steps)}
    # 7/32 in = 5.55625 mm by the definition of the inch (25.4 mm); a 5.5 mm socket is 0.06 mm smaller.
    assert found == {"socket 7/32 in": ("socket 5.5 mm",), "T20 bit": (), "plastic trim tool": (), "DC clamp meter": ()}


def test_recorded_minutes_add_up_and_the_rest_is_said() -> None:
    made = plan(record("""
        preps:
          battery: {sets: {battery: off}, takes: 3 min, wait: {time: 90 s, why: Reserve}, restore: Join it.}
        restraint: {fitted: no, wait: none}
        parts:
          panel: {takes: 5 min, refit_takes: 8 min, needs: {glass: up}}
          cap: {}
        openings:
          door: {behind: [panel, cap]}
    """), "door")  # fmt: skip
    spent = tally.time(made.steps)
    assert spent.minutes == 3 + 3 + 5 + 8
    assert spent.untimed == 2  # the cap, off and on; closing the windows is a usual way
    assert spent.waits == (90.0,)


def test_a_wait_nobody_recorded_is_none() -> None:
    made = plan(record("parts: {panel: {}}", PANEL), "door")
    assert tally.time(made.steps).waits == (None,)


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (0.25, "15 s"), (0.75, "45 s"), (0, "0 s"), (1, "1 min"), (1.5, "1 min 30 s"), (2.5, "2 min 30 s"),
        (59.4, "59 min 24 s"), (59.6, "59 min 36 s"), (59.995, "1 h"), (60, "1 h"), (61, "1 h 1 min"), (80, "1 h 20 min"), (120, "2 h"), (130, "2 h 10 min"),
        (0.5, "30 s"),
    ],
)  # fmt: skip
def test_minutes_in_words(value: float, said: str) -> None:
    assert say(words.minutes(value)) == said
