"""What the rules on gear and vehicles find: by kinds of car, entries of gear, plugs and duties."""

from pathlib import Path

import pytest
from rule_pages import Example, compose, say

from undertrim.check.register import COLLECTION_RULES

CAMERA = """variants:
  camera:
    ask: Is there a reversing camera?
    choices:
      fitted: {label: Camera, tell: A lens above the plate}
      none: {label: No camera, tell: No lens}
"""


def gear(kind: str, rest: str, vehicle: str = "kelbrook/finch-2014-2018", when: str = "") -> str:
    condition = f", when: {{{when}}}" if when else ""
    suits = "" if kind == "receiver" else f"  suits: [{{vehicle: {vehicle}, opening: dash{condition}}}]\n"
    return f"gear:\n  kind: {kind}\n  maker: Tidewrack\n  model: Test\n{suits}{rest}"


def found(rule: str, *pieces: str) -> list[str]:
    """What a rule says of some pieces: vehicles are the Finch and the Wren in turn, gear is filed by number."""
    names = iter(("kelbrook/finch-2014-2018.yaml", "kelbrook/wren-2014-2018.yaml"))
    files = {
        (f"gear/g-{n}.yaml" if piece.startswith("gear") else next(names)): compose(piece)
        for n, piece in enumerate(pieces)
    }
    return [text for _, _, text in say(Example(files, ()), COLLECTION_RULES[rule])]


NEEDS_REVERSE = gear(
    "receiver",
    "  body: {width: 180 mm, height: 50 mm}\n  chassis_depth: 90 mm\n  outputs: [speaker]\n  needs: [reverse]\n",
)
BY_DATA = "functions:\n  reverse: {by: data}\n"


def test_a_choice_that_a_vehicle_does_not_have_is_found() -> None:
    kit = gear("kit", "  opening: {width: 182 mm, height: 104 mm}\n", when="camera: [fitted, fited]")
    assert found("gear-names-absent", CAMERA, kit) == [
        "error: no choice 'fited' in 'kelbrook/finch-2014-2018/camera' (did you mean 'fitted'?)"
    ]


def test_what_one_of_two_vehicles_may_still_have_is_not_called_absent() -> None:
    kit = gear("kit", "  opening: {width: 182 mm, height: 104 mm}\n  assembly: [{do: Clip it in., part: flap}]\n")
    both = kit.replace("opening: dash}]", "opening: dash}, {vehicle: kelbrook/wren-2014-2018, opening: dash}]")
    absent = "error: no vehicle record 'kelbrook/wren-2014-2018' (write make/id, as its file stands below 'records/vehicles')"
    assert found("gear-names-absent", CAMERA, both) == [absent]


def test_a_step_of_a_kit_need_not_name_a_part() -> None:
    kit = gear("kit", "  opening: {width: 182 mm, height: 104 mm}\n  assembly: [{do: Clip the halves together.}]\n")
    assert found("gear-names-absent", CAMERA, kit) == []


def test_gear_that_suits_nothing_names_nothing() -> None:
    spacer = gear("spacer", "  thickness: 6 mm\n  hole: {shape: round, diameter: 128 mm}\n")
    alone = "".join(line for line in spacer.splitlines(keepends=True) if "suits" not in line)
    assert found("gear-names-absent", CAMERA, alone) == []


PLUG = """connectors:
  {name}:
    name: Main radio plug
    at: radio/main
    {when}
    view: wires
    rows: 2
    columns: 4
    pins:
      3: {{function: {function}}}
"""


def plug(name: str, function: str, when: str = "") -> str:
    text = PLUG.format(name=name, function=function, when=when)
    return "\n".join(line for line in text.splitlines() if line.strip()) + "\n"


def test_a_contact_is_held_against_the_vehicle_of_its_own_entry() -> None:
    harness = gear("harness", "  plugs: {main: {3: {function: speed}}}\n", when="camera: fitted")
    both = harness.replace("suits: [", "suits: [{vehicle: kelbrook/wren-2014-2018, opening: dash}, ")
    finch, wren = CAMERA + plug("main", "mute", "when: {camera: none}"), plug("main", "speed")
    assert found("harness-mismatch", finch, wren, both) == []


def test_a_contact_made_for_another_map_is_shown_at_its_own_plug(tmp_path: Path) -> None:
    late = plug("late", "mute", "when: {camera: none}").removeprefix("connectors:\n")
    finch = CAMERA + plug("main", "speed", "when: {camera: fitted}") + late
    harness = gear("harness", "  plugs:\n    main:\n      1: {function: ground}\n      3: {function: speed}\n")
    files = {"kelbrook/finch-2014-2018.yaml": compose(finch), "harnesses/tidewrack-test.yaml": compose(harness)}
    ((_, line, text),) = say(Example(files, ()), COLLECTION_RULES["harness-mismatch"])
    assert "pin 3 of 'late' in 'kelbrook/finch-2014-2018' is 'mute' where camera=none" in text
    assert files["harnesses/tidewrack-test.yaml"].splitlines()[line - 1].strip() == "3: {function: speed}"


def test_a_harness_is_no_interface() -> None:
    harness = gear("harness", "  plugs: {main: {3: {function: reverse}}}\n")
    assert len(found("interface-missing", BY_DATA, NEEDS_REVERSE, harness)) == 1


def test_a_duty_alone_is_enough_to_look() -> None:
    assert len(found("interface-missing", "duties:\n  chime: {kept_by: interface}\n", NEEDS_REVERSE)) == 1


def test_a_duty_of_other_cars_needs_nothing() -> None:
    keeps = gear("interface", "  provides: [speed]\n  keeps: [chime]\n", when="camera: fitted")
    duty = "duties:\n  chime: {{kept_by: interface, when: {{camera: {}}}}}\n"
    assert found("interface-missing", CAMERA + duty.format("fitted"), NEEDS_REVERSE, keeps) == []
    assert len(found("interface-missing", CAMERA + duty.format("none"), NEEDS_REVERSE, keeps)) == 1


@pytest.mark.parametrize("by", ["wire", "absent", "unknown"])
def test_what_is_no_data_needs_no_interface(by: str) -> None:
    piece = f"functions:\n  reverse: {{by: {by}, note: At the lamp.}}\n  speed: {{by: data}}\n"
    assert found("interface-missing", piece, NEEDS_REVERSE) == []


def test_only_openings_for_receivers_in_the_cars_that_have_them_are_asked_of() -> None:
    opening = """openings:
  dash:
    name: Radio opening
    kind: {kind}
    behind: [radio]
    when: {{camera: fitted}}
"""
    receiver = "    kit: needed\n    face: {width: 182 mm, height: 112 mm}\n    depth: {clear: 170 mm}\n"
    speaker = "    hole: {shape: round, diameter: 146 mm}\n    depth: {clear: 64 mm, datum: skin}\n"
    provides = gear("interface", "  provides: [reverse]\n", when="camera: fitted")
    asked = CAMERA + BY_DATA + opening.format(kind="receiver") + receiver
    assert found("interface-missing", asked, NEEDS_REVERSE, provides) == []
    assert found("interface-missing", CAMERA + BY_DATA + opening.format(kind="speaker") + speaker, NEEDS_REVERSE) == []


def test_cars_that_only_the_gear_tells_apart_are_told_apart() -> None:
    provides = gear("interface", "  provides: [reverse]\n", when="camera: fitted")
    (message,) = found("interface-missing", CAMERA + BY_DATA, NEEDS_REVERSE, provides)
    assert "brings it to 'dash' where camera=none" in message
    harness = gear("harness", "  plugs: {main: {3: {function: speed}}}\n", when="camera: fitted")
    (message,) = found("harness-mismatch", CAMERA + plug("main", "mute"), harness)
    assert "is 'mute' where camera=fitted" in message
