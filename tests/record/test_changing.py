"""Single facts put into the text of a record, in whichever of its ways of saying them: just that changes, and no comment moves."""

from pathlib import Path

import pytest

from undertrim.record.changing import CannotPut, Change, put
from undertrim.record.source import Data, Source, read_text
from undertrim.record.spreading import spread

HEAD = "format: 2\nvehicle: {make: A, model: B}\n"
PARTS = """parts:
  # all of them
  dash:
    source: e1
    parts:
      trim:  # the upper one
        release: [pull, 2 min]
        held_by: {clip: push, count: 2}
        # looked at twice
      panel: {release: lift, takes: 1 min}
"""


def source(text: str) -> Source:
    return spread(read_text(text, Path("records/vehicles/a/b.yaml")))


def changed(text: str, place: str, value: Data, *, follow: str = "", unknown: str = "") -> str:
    keys = tuple(int(key) if key.isdecimal() else key for key in place.split("/"))
    may = (tuple(follow.split("/")),) if follow else ()
    blank = (tuple(unknown.split("/")),) if unknown else ()
    wanted = Change(keys, value, may_follow=may, may_be_unknown=blank)
    return put(source(HEAD + text), wanted, source).as_typed.text.removeprefix(HEAD)


@pytest.mark.parametrize(
    ("place", "value", "line"),
    [
        ("parts/trim/takes", "3 min", "        release: [pull, 3 min]"),
        ("parts/trim/held_by/0/count", "3", "        held_by: {clip: push, count: 3}"),
        ("parts/trim/held_by/0/reuse", "no", "        held_by: {clip: push, count: 2, reuse: no}"),
        ("parts/trim/direction", "up", "        direction: up"),
        ("parts/panel/takes", "2 min", "      panel: {release: lift, takes: 2 min}"),
        (
            "parts/panel/how",
            "Lift it, then turn: so.",
            '      panel: {release: lift, takes: 1 min, how: "Lift it, then turn: so."}',
        ),
        ("parts/trim/source", ["e1", "e2"], "        source: [e1, e2]"),
    ],
)
def test_a_thing_of_a_group(place: str, value: Data, line: str) -> None:
    made = changed(PARTS, place, value)
    assert line in made.splitlines()
    assert len(made.splitlines()) - len(PARTS.splitlines()) in (0, 1)


def test_comments_speak_of_what_they_spoke_of() -> None:
    made = changed(PARTS, "parts/trim/direction", "up")
    assert made.index("looked at twice") < made.index("panel:")
    assert "      trim:  # the upper one\n" in made


SHORT = """openings:
  front:
    kind: [speaker, front, 4 ohm]
    behind: panel
    sizes: {hole: [round, 146 mm], bolts: [circle, 4, 160 mm]}
    depth: {clear: unknown}
"""


@pytest.mark.parametrize(
    ("place", "value", "line"),
    [
        ("openings/front/impedance", "2 ohm", "    kind: [speaker, front, 2 ohm]"),
        ("openings/front/hole/diameter", "144 mm", "    sizes: {hole: [round, 144 mm], bolts: [circle, 4, 160 mm]}"),
        (
            "openings/front/bolts/angle",
            "45 deg",
            "    sizes: {hole: [round, 146 mm], bolts: {pattern: circle, count: 4, diameter: 160 mm, angle: 45 deg}}",
        ),
        (
            "openings/front/room_to_grille",
            "22 mm",
            "    sizes: {hole: [round, 146 mm], bolts: [circle, 4, 160 mm], room_to_grille: 22 mm}",
        ),
        ("openings/front/depth/clear", "62 mm", "    depth: {clear: 62 mm}"),
        (
            "openings/front/panel/width",
            "180 mm",
            "    sizes: {hole: [round, 146 mm], bolts: [circle, 4, 160 mm], panel: {width: 180 mm}}",
        ),
        ("openings/front/alters", ["drill", "cut"], "    alters: [drill, cut]"),
        ("openings/front/crash_sensor", "no", "    crash_sensor: no"),
    ],
)
def test_a_field_of_an_opening(place: str, value: Data, line: str) -> None:
    assert line in changed(SHORT, place, value).splitlines()


NAMES = "functions:\n  # nobody knows\n  unknown: {functions: [reverse, speed, mute]}\n  illumination: [wire, e1]\n"


@pytest.mark.parametrize(
    ("name", "left"), [("reverse", "[speed, mute]"), ("speed", "[reverse, mute]"), ("mute", "[reverse, speed]")]
)
def test_a_name_goes_out_of_its_group(name: str, left: str) -> None:
    made = changed(NAMES, f"functions/{name}/by", "data")
    assert f"  unknown: {{functions: {left}}}\n" in made
    assert f"  {name}: {{by: data}}\n" in made


def test_a_group_of_one_goes_with_it() -> None:
    made = changed(
        "functions:\n  illumination: [wire, e1]\n  unknown: {functions: [speed]}\n", "functions/speed/by", "data"
    )
    assert made == "functions:\n  illumination: [wire, e1]\n  speed: {by: data}\n"


FORMS = """openings:
  dash:
    kind: [receiver, kit needed]
    behind: radio
    depth: [{when: {radio: map}, is: {clear: 165 mm}}, {when: {radio: plain}, is: {clear: unknown}}]
    face: [{when: {radio: map}, is: [180 mm, 110 mm]}, {when: {radio: plain}, is: [182 mm, 53 mm]}]
    source: e1
variants: {radio: {ask: "Which?", choices: {plain: [Plain, Keys], map: [Map, A key]}}}
"""


@pytest.mark.parametrize(
    ("place", "value", "said"),
    [
        ("openings/dash-plain/depth/clear", "140 mm", "{when: {radio: plain}, is: {clear: 140 mm}}"),
        ("openings/dash-map/depth/datum", "face", "{when: {radio: map}, is: {clear: 165 mm, datum: face}}"),
        ("openings/dash-map/face/width", "181 mm", "{when: {radio: map}, is: [181 mm, 110 mm]}"),
    ],
)
def test_a_form_gets_its_value_alone(place: str, value: Data, said: str) -> None:
    assert said in changed(FORMS, place, value)


def test_what_nobody_said_is_unknown_for_the_other_cars() -> None:
    made = changed(FORMS, "openings/dash-map/crash_sensor", "no", unknown="openings/dash-plain/crash_sensor")
    assert "    crash_sensor: [{when: {radio: map}, is: no}, {when: {radio: plain}, is: unknown}]\n" in made
    with pytest.raises(CannotPut):
        changed(FORMS, "openings/dash-map/install_how", "Turn it.", unknown="openings/dash-plain/install_how")


def test_what_all_forms_share_changes_only_where_that_is_meant() -> None:
    with pytest.raises(CannotPut, match="openings/dash-map/kit"):
        changed(FORMS, "openings/dash-map/kit", "none")
    made = changed(FORMS, "openings/dash-map/source", ["e1", "e2"], follow="openings/dash-plain/source")
    assert "    source: [e1, e2]\n" in made


def test_a_section_that_is_not_there_begins() -> None:
    assert changed("areas: {dash: {source: e1}}\n", "restraint/wait", "3 min").endswith("restraint: {wait: 3 min}\n")


def test_comments_in_the_way_are_said() -> None:
    with pytest.raises(CannotPut, match="cannot be written without changing something else"):
        changed(
            "openings:\n  front:\n    hole: [round,  # of course\n      146 mm]\n", "openings/front/hole/source", "e1"
        )


def test_what_is_typed_elsewhere_is_not_touched() -> None:
    """A value of the group is everybody's: the thing says its own."""
    made = changed(PARTS, "parts/panel/source", "e2")
    assert "      panel: {release: lift, takes: 1 min, source: e2}\n" in made
    assert "    source: e1\n" in made
