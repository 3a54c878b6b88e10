"""Openings without a way to them, apart from plain circles."""

from fragments import messages

from undertrim.check.rules import order_cycle, unreachable_opening

DOORS = """
parts:
  front-panel: {{name: Panel, release: lift, each: [left, right]{panel}}}
  cup: {{name: Cup, release: slide, each: [left, right], after_any: [{{cap: [cap], strip: [strip]}}]}}
  cap: {{name: Cap, release: unclip, each: [left, right], after: [{cap}]}}
  strip: {{name: Strip, release: pull, each: [left, right], after: [{strip}]}}
openings:
  door:
    name: Door speakers
    kind: speaker
    each: [left, right]
    behind: [front-panel]
    hole: {{shape: round, diameter: 146 mm}}
    depth: {{clear: 62 mm, datum: skin}}
"""


def test_a_closed_choice_is_reported_once_for_both_sides() -> None:
    piece = DOORS.format(panel=", after: [cup]", cap="cup", strip="cup")
    assert messages(unreachable_opening, piece) == ["'door' cannot be reached: every route of 'cup' is closed"]
    assert messages(order_cycle, piece) == []


def test_one_open_route_is_enough() -> None:
    piece = DOORS.format(panel=", after: [cup]", cap="cup", strip="radio")
    assert messages(unreachable_opening, piece) == []


def test_a_choice_no_opening_needs_is_no_matter_here() -> None:
    assert messages(unreachable_opening, DOORS.format(panel="", cap="cup", strip="cup")) == []


def test_routes_blocked_by_plain_circles_are_left_to_the_other_rule() -> None:
    piece = DOORS.format(panel=", after: [cup]", cap="cap", strip="strip")
    assert messages(unreachable_opening, piece) == []
    assert len(messages(order_cycle, piece)) == 2


def test_a_plain_circle_elsewhere_does_not_hide_a_closed_choice() -> None:
    piece = DOORS.format(panel=", after: [cup, front-panel]", cap="cup", strip="cup")
    assert messages(unreachable_opening, piece) == ["'door' cannot be reached: every route of 'cup' is closed"]
    assert messages(order_cycle, piece) == ["'front-panel' waits for itself: front-panel -> front-panel"]


def test_a_part_that_no_choice_ever_fits_is_left_to_the_rule_for_choices() -> None:
    variant = (
        "variants:\n  dash:\n    ask: Which?\n    choices:\n"
        "      early: {label: Early, tell: Round}\n      late: {label: Late, tell: Square}\n"
    )

    def said(choice: str) -> list[str]:
        panel = f", when: {{dash: {choice}}}"
        return messages(unreachable_opening, variant + DOORS.format(panel=panel, cap="radio", strip="radio"))

    assert said("latte") == []
    assert said("late") == ["'door' has nothing in front of it where dash=early: no part in 'behind' is fitted there"]
