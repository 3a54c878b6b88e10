"""Cars an opening is missing from, is twice in, or that name nothing; each rule says its own and no more."""

from fragments import findings, messages

from undertrim.check.rules import missing_coverage, not_in_overlaps, on_side_without_mirrors

PIECE = """
variants:
  sound:
    ask: Which sound?
    choices:
      plain: {{label: Plain, tell: A}}
      full: {{label: Full, tell: B}}
openings:
  shelf:
    name: Shelf speakers
    kind: speaker
    behind: [radio]
    hole: {{shape: round, diameter: 120 mm}}
    depth: {{clear: unknown}}
    {conditions}
"""


def piece(conditions: str) -> str:
    return PIECE.format(conditions=conditions)


def test_a_misspelt_choice_is_another_rules() -> None:
    for conditions in (
        "when: {sound: fulll}",
        "when: {tone: full}",
        "when: {sound: full}\n    not_in: [{sound: plian}]",
        "not_in: [{tone: full}]",
    ):
        assert messages(missing_coverage, piece(conditions)) == []
        assert messages(not_in_overlaps, piece(conditions)) == []


def test_the_state_of_every_car_is_said_once() -> None:
    cases = {
        "when: {sound: full}": (1, 0),
        "when: {sound: full}\n    not_in: [{sound: plain}]": (0, 0),
        "when: {sound: full}\n    not_in: [{sound: full}]": (1, 1),
        "not_in: [{sound: plain}]": (0, 1),
        "when: {sound: [plain, full]}": (0, 0),
    }
    for conditions, (missing, twice) in cases.items():
        assert len(messages(missing_coverage, piece(conditions))) == missing, conditions
        assert len(messages(not_in_overlaps, piece(conditions))) == twice, conditions


def test_places() -> None:
    (finding,) = findings(missing_coverage, piece("when: {sound: full}"))
    assert finding.pointer == ("openings", "shelf", "when")
    (finding,) = findings(not_in_overlaps, piece("when: {sound: full}\n    not_in: [{sound: plain}, {sound: full}]"))
    assert finding.pointer == ("openings", "shelf", "not_in", 1)


def test_a_side_in_one_drive_side_is_left_alone() -> None:
    part = "parts:\n  cover:\n    name: Cover\n    release: pull\n    on_side: left\n"
    both = "vehicle:\n  make: A\n  model: B\n  built: {from: 2014-01, to: 2018-01}\n  drive_side: [left, right]\n  high_voltage: no\n"
    assert messages(on_side_without_mirrors, part) == []
    assert len(messages(on_side_without_mirrors, both + part)) == 1
    assert messages(on_side_without_mirrors, f"{both}{part}    when: {{drive-side: left}}\n") == []
    assert messages(on_side_without_mirrors, f"{both}{part}    mirrors: unknown\n") == []
