"""Parts that nothing needs."""

from fragments import messages, subject

from undertrim.check.rules import undeclared_variant, unused_part


def test_only_the_top_of_an_unused_stack_is_named() -> None:
    piece = (
        "parts:\n"
        "  lid: {name: Lid, release: lift, after: [mat]}\n"
        "  mat: {name: Mat, release: lift, held_by: [{screw: T20, count: 1, under: cap}]}\n"
        "  cap: {name: Cap, release: unclip}\n"
    )
    assert messages(unused_part, piece) == ["nothing needs 'lid' off"]


def test_a_part_at_one_side_needed_only_at_the_other_is_unused() -> None:
    piece = (
        "parts:\n"
        "  cap: {name: Cap, release: unclip, each: [left]}\n"
        "  cup: {name: Cup, release: slide, each: [right], after: [cap], goes_to: dash}\n"
    )
    assert messages(unused_part, piece) == ["nothing needs 'cap' off"]


def test_a_mistyped_choice_is_one_problem() -> None:
    piece = (
        "variants:\n  dash:\n    ask: Which?\n"
        "    choices: {early: {label: Early, tell: Round}, late: {label: Late, tell: Square}}\n"
        "parts:\n"
        "  brace: {name: Brace, release: unscrew}\n"
        "  radio: {name: Radio, release: slide, replaced: yes, after: [{part: brace, when: {dash: lat}}]}\n"
    )
    assert messages(undeclared_variant, piece) == ["'dash' has no choice 'lat'"]
    assert messages(unused_part, piece) == []


def test_where_the_schema_refused_a_prerequisite_nothing_is_called_unused() -> None:
    piece = (
        "parts:\n"
        "  cap: {name: Cap, release: unclip}\n"
        "  cup: {name: Cup, release: slide, requires: [cap], goes_to: dash}\n"
    )
    about = subject(piece)
    assert about.entry.problems
    assert list(unused_part.check(about)) == []


def test_a_part_that_goes_to_no_opening_is_left_to_the_rule_for_names() -> None:
    piece = "parts:\n  switch: {name: Switch, release: pull, goes_to: dahs}\n"
    assert messages(unused_part, piece) == []
    assert messages(unused_part, piece.replace("dahs", "dash")) == []
    assert messages(unused_part, piece.replace(", goes_to: dahs", "")) == ["nothing needs 'switch' off"]
