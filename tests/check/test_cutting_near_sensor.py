"""Orders to cut or drill in a door, and words that only look like one."""

import pytest
from fragments import messages

from undertrim.check.alterations import find
from undertrim.check.rules import cutting_near_sensor

OPENING = """openings:
  {id}: {{name: Door, kind: speaker, behind: [{behind}], hole: {{shape: round, diameter: 146 mm}}, depth: {{clear: 62 mm, datum: skin}}{more}}}
"""
PART = "parts:\n  panel: {{name: Panel, release: lift, how: Drill two holes.{}}}\n"


def opening(more: str = "", name: str = "front-door", behind: str = "radio") -> str:
    return OPENING.format(id=name, behind=behind, more=more)


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("Drill four holes.", "Drill"),
        ("Mark and drill four holes.", "drill"),
        ("Carefully cut the bracket.", "cut"),
        ("Then enlarge the hole.", "enlarge"),
        ("File the edge.", "File"),
        ("Take the ring out, grind the edge.", "grind"),
        ("Make room by drilling.", "drilling"),
        ("Blow the door out.", "Blow"),
        ("Clean it with compressed air.", "compressed air"),
        ("Use a hole saw.", "hole saw"),
        ("You have to cut the metal.", "cut"),
        ("If it does not fit, cut the bracket.", "cut"),
    ],
)
def test_orders(text: str, word: str) -> None:
    assert list(find(text)) == [word]


@pytest.mark.parametrize(
    "text",
    [
        "Do not drill.",
        "Never cut, drill or blow out this door.",
        "No compressed air.",
        "Use the drill holes that are there.",
        "Cut the cable tie.",
        "Cut 50 mm off the foam.",
        "Fit it without drilling.",
        "Keep the drill away.",
        "The edge is cut.",
        "A cut in the liner lets water in.",
        "Drilling is forbidden here.",
        "The cut-out is round.",
        "Lift the panel and put it on the saw horse.",
    ],
)
def test_no_orders(text: str) -> None:
    assert list(find(text)) == []


@pytest.mark.parametrize(
    ("more", "count"),
    [
        (", area: front-door, crash_sensor: yes, alters: [drill]", 1),
        (", area: front-door, crash_sensor: unknown, alters: [drill]", 1),
        (", area: front-door, alters: [drill]", 1),
        (", alters: [drill]", 1),
        (", area: front-door, crash_sensor: no, alters: [drill]", 0),
        (", area: cab-rear, alters: [drill]", 0),
        (", area: cab-rear, crash_sensor: unknown, alters: [drill]", 1),
        (", area: cab-rear, crash_sensor: no, alters: [drill]", 0),
        (", area: front-door, crash_sensor: yes", 0),
    ],
)
def test_openings(more: str, count: int) -> None:
    assert len(messages(cutting_near_sensor, opening(more))) == count


@pytest.mark.parametrize(
    ("part", "more", "count"),
    [
        (", area: front-door", ", area: front-door, crash_sensor: yes", 1),
        (", area: front-door", ", area: front-door, crash_sensor: no", 0),
        (", area: front-door", ", area: front-door", 1),
        # Nobody has said anything of the rear door, and an unknown is no "no"
        (", area: rear-door", ", area: front-door, crash_sensor: no", 1),
        (", area: boot", ", area: front-door, crash_sensor: yes", 0),
        (", area: front-door", ", crash_sensor: yes", 1),
        ("", ", area: front-door, crash_sensor: yes", 1),
        (", area: front-door", ", area: cab-rear, crash_sensor: no", 1),
    ],
)
def test_parts_count_by_their_door(part: str, more: str, count: int) -> None:
    assert len(messages(cutting_near_sensor, PART.format(part) + opening(more, behind="panel"))) == count


def test_the_worst_that_any_opening_of_a_door_says_counts() -> None:
    two = opening(", area: front-door, crash_sensor: no, alters: [drill]") + opening(
        ", area: front-door, crash_sensor: yes", "front-door-tweeter"
    ).removeprefix("openings:\n")
    assert len(messages(cutting_near_sensor, two)) == 1
