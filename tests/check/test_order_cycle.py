"""Circles of prerequisites: each once, with its path, its cars and its place."""

from fragments import findings, messages, subject

from undertrim.check.rules import order_cycle
from undertrim.derive.procedure.planning import targets

STACK = """
parts:
  bezel: {{name: Bezel, release: pull, after: [vent-screws, shifter-trim{more}]}}
  radio: {{name: Radio, release: slide, replaced: yes, after: [bezel]}}
  vent-screws: {{name: Vent screws, release: unscrew}}
  shifter-trim: {{name: Shifter trim, release: lift, after: [knob]}}
  knob: {{name: Knob, release: turn, needs: {{parking-brake: on}}}}
"""


def test_a_stack_of_trims_has_an_order() -> None:
    assert messages(order_cycle, STACK.format(more="")) == []
    about = subject(STACK.format(more=""))
    steps = about.planner.plan(targets(about.record), {}).steps
    order = [step.part for step in steps if step.kind in ("prepare", "remove") and step.part != "battery"]
    assert order.index("usual:parking-brake-on") < order.index("knob") < order.index("shifter-trim")
    assert order.index("shifter-trim") < order.index("bezel")
    assert order.index("vent-screws") < order.index("bezel")
    assert order[-2:] == ["bezel", "radio"]


def test_a_bezel_after_the_radio_it_holds_is_a_circle() -> None:
    (found,) = findings(order_cycle, STACK.format(more=", radio"))
    assert found.message == "'bezel' waits for itself: bezel -> radio -> bezel"
    assert found.pointer == ("parts", "bezel", "after", 2)


VARIANTS = """
variants:
  dash:
    ask: Which dash?
    choices: {early: {label: Early, tell: Round vents}, late: {label: Late, tell: Square vents}}
"""


def test_one_circle_on_two_sides_and_in_some_cars_is_one_problem() -> None:
    piece = VARIANTS + (
        "parts:\n"
        "  cap: {name: Cap, release: unclip, each: [left, right], after: [{part: cup, when: {dash: late}}]}\n"
        "  cup: {name: Cup, release: slide, each: [left, right],"
        " held_by: [{screw: PH2, count: 1, under: cap}]}\n"
    )
    (found,) = findings(order_cycle, piece)
    assert found.message == "'cap' waits for itself where dash=late: cap -> cup -> cap"
    assert found.pointer == ("parts", "cap", "after", 0)
    assert "a screw of 'cup' is under 'cap'" in found.hint


def test_a_circle_over_both_sides_of_one_part_shows_the_sides() -> None:
    piece = (
        "parts:\n"
        "  left-lid: {name: Lid, release: lift, after: [{part: trim, side: right}]}\n"
        "  trim: {name: Trim, release: pull, each: [left, right], after: [{part: strip, side: left}]}\n"
        "  strip: {name: Strip, release: pull, each: [left, right], after: [{part: trim, side: right}]}\n"
    )
    assert messages(order_cycle, piece) == ["'trim' waits for itself: trim -> strip -> trim"]


def test_two_circles_are_two_problems() -> None:
    piece = (
        "parts:\n"
        "  a: {name: A, release: pull, after: [b]}\n"
        "  b: {name: B, release: pull, after: [a]}\n"
        "  c: {name: C, release: pull, goes_to: dash, after: [c]}\n"
    )
    assert messages(order_cycle, piece) == [
        "'a' waits for itself: a -> b -> a",
        "'c' waits for itself: c -> c",
    ]


def test_a_condition_the_schema_refused_makes_no_circle() -> None:
    piece = VARIANTS + (
        "parts:\n"
        "  a: {name: A, release: pull, after: [{part: b, when: [late]}]}\n"
        "  b: {name: B, release: pull, after: [a]}\n"
    )
    about = subject(piece)
    assert about.entry.problems
    assert list(order_cycle.check(about)) == []
    typo = subject(piece.replace("when: [late]", "when: {dash: late}").replace("name: B", "takes: soon, name: B"))
    assert typo.entry.problems
    assert len(list(order_cycle.check(typo))) == 1


def test_the_place_is_the_reference_that_holds() -> None:
    piece = (
        "parts:\n"
        "  strip: {name: Strip, release: pull,"
        " after: [{part: trim, side: left}, {part: trim, side: right}]}\n"
        "  trim: {name: Trim, release: pull, each: [left, right], after: [brace]}\n"
        "  brace: {name: Brace, release: unscrew, each: [right], after: [strip]}\n"
    )
    (found,) = findings(order_cycle, piece)
    assert found.message == "'strip' waits for itself: strip -> trim -> brace -> strip"
    assert found.pointer == ("parts", "strip", "after", 1)


def test_a_fastener_that_is_left_alone_is_not_the_place() -> None:
    piece = (
        "parts:\n"
        "  cup: {name: Cup, release: slide, held_by:"
        " [{screw: T20, count: 1, leave: yes, under: cap}, {screw: PH2, count: 1, under: cap}]}\n"
        "  cap: {name: Cap, release: unclip, after: [cup]}\n"
    )
    (found,) = findings(order_cycle, piece)
    assert found.pointer == ("parts", "cup", "held_by", 1, "under")
