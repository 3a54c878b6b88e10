"""Whether a door holds a pressure sensor: the worst answer of the door, by area, side and car."""

from dataclasses import replace

import pytest

from making import record
from undertrim.derive.doors import contradictions, doors_of, sensor
from undertrim.derive.evidence.obstacles import obstacles
from undertrim.derive.fit import disputed
from undertrim.publish.facts.blockers import blockers
from undertrim.record.model import VehicleRecord

TWO = """
    variants:
      bags: {{ask: Which bags, choices: {{side: {{label: Side airbags}}, none: {{label: None}}}}}}
    parts:
      panel: {{area: front-door}}
      bare: {{}}
      rear-panel: {{area: rear-door}}
    openings:
      woofer: {{behind: [panel, bare], {}}}
      tweeter: {{behind: [panel], {}}}
"""


def two(one: str, other: str) -> VehicleRecord:
    return record(TWO.format(one, other))


FRONT = "area: front-door"


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [
        (f"{FRONT}, crash_sensor: yes", f"{FRONT}, crash_sensor: no", "yes"),
        (f"{FRONT}, crash_sensor: unknown", f"{FRONT}, crash_sensor: no", "unknown"),
        (f"{FRONT}, crash_sensor: yes", f"{FRONT}, crash_sensor: unknown", "yes"),
        (f"{FRONT}, crash_sensor: no", FRONT, "no"),
        (FRONT, FRONT, "unknown"),
        (f"{FRONT}, crash_sensor: yes", "area: rear-door, crash_sensor: no", "no"),
        (f"{FRONT}, crash_sensor: yes", "area: boot", "no"),
        # By side
        (f"{FRONT}, each: [left], crash_sensor: yes", f"{FRONT}, each: [right], crash_sensor: no", "no"),
        (f"{FRONT}, on_side: left, crash_sensor: yes", f"{FRONT}, each: [left, right], crash_sensor: no", "yes"),
        (f"{FRONT}, each: [left], crash_sensor: no", f"{FRONT}, each: [left, right]", "unknown"),
        # By car
        (f"{FRONT}, when: {{bags: side}}, crash_sensor: yes", f"{FRONT}, when: {{bags: none}}, crash_sensor: no", "no"),
        (f"{FRONT}, when: {{bags: side}}, crash_sensor: yes", f"{FRONT}, crash_sensor: no", "yes"),
    ],
)
def test_the_worst_answer_of_the_door_counts(one: str, other: str, said: str) -> None:
    about = two(one, other)
    assert sensor(about, about.openings["tweeter"]) == said


def test_parts_have_the_answer_of_their_door() -> None:
    about = two(f"{FRONT}, crash_sensor: no", "area: boot")
    answers = {name: sensor(about, part) for name, part in about.parts.items()}
    # Nobody has said anything of the rear door; a part without an area is where the openings behind it are.
    assert answers == {"panel": "no", "bare": "no", "rear-panel": "unknown"}


def test_a_name_decides_nothing_and_no_area_may_be_any_door() -> None:
    """An opening called after a door is in none by that; one without an area may be in any, and says 'no' only for itself."""
    about = record("""
        parts: {panel: {}}
        openings:
          door-pocket: {behind: [panel], area: console}
          shelf: {behind: [panel], crash_sensor: no}
          front: {behind: [panel], area: front-door}
    """)
    openings = {**about.openings, "shelf": replace(about.openings["shelf"], area="")}
    about = replace(about, openings=openings)
    assert not doors_of(about, openings["door-pocket"])
    assert len(doors_of(about, openings["shelf"])) == 4
    answers = {name: sensor(about, opening) for name, opening in openings.items()}
    assert answers == {"door-pocket": "no", "shelf": "no", "front": "unknown"}


@pytest.mark.parametrize(
    ("one", "other", "found"),
    [
        (f"{FRONT}, crash_sensor: yes", f"{FRONT}, crash_sensor: no", 1),
        (f"{FRONT}, crash_sensor: unknown", f"{FRONT}, crash_sensor: no", 1),
        (f"{FRONT}, crash_sensor: yes", FRONT, 0),
        (f"{FRONT}, each: [left], crash_sensor: yes", f"{FRONT}, each: [right], crash_sensor: no", 0),
        (f"{FRONT}, when: {{bags: side}}, crash_sensor: yes", f"{FRONT}, when: {{bags: none}}, crash_sensor: no", 0),
    ],
)
def test_two_answers_for_one_door_contradict(one: str, other: str, found: int) -> None:
    assert len(list(contradictions(two(one, other)))) == found


def test_everything_that_asks_gets_the_answer_of_the_door() -> None:
    about = two(f"{FRONT}, crash_sensor: unknown", FRONT)
    tweeter = about.openings["tweeter"]
    assert disputed.cautious(about, tweeter)[0].crash_sensor == "unknown"
    assert ("openings", "tweeter", "crash_sensor") in {item.pointer for item in obstacles(about)}
    known = two(f"{FRONT}, crash_sensor: yes", FRONT)
    assert not [item for item in obstacles(known) if "crash_sensor" in item.pointer]
    assert {"tweeter", "woofer"} <= {name for item in blockers(known) if item.weight == "stop" for name in item.openings}  # fmt: skip
