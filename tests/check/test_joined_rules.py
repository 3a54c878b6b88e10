"""Gear held against vehicles: over a whole workspace, from single files, from the cache, and with files that cannot be read."""

from pathlib import Path

import pytest
from rule_pages import Example, compose, say

from undertrim.check import joints, runner
from undertrim.check.cache import Cache
from undertrim.check.one_file import card as card_of
from undertrim.check.register import COLLECTION_RULES
from undertrim.record.store import Workspace

VEHICLE = """format: 1
demo: yes
vehicle:
  make: Kelbrook
  model: Finch
  built: {{from: 2014-01, to: 2018-01}}
  drive_side: [left]
  high_voltage: no
evidence:
  e1: {{how: measured, on: 2026-03-02, by: rk}}
parts:
  radio: {{name: Factory radio, release: slide, held_by: [{{screw: T20, count: 4}}], tethers: {{main: {{name: Main plug, kind: plug}}}}, replaced: yes}}
openings:
  dash:
    name: Radio opening
    kind: receiver
    behind: [radio]
    kit: not-needed
    face: {{width: 182 mm, height: 53 mm}}
    depth: {{clear: 170 mm, to: Cross-beam}}
    source: e1
connectors:
  radio-main:
    name: Main radio plug
    at: radio/main
    view: wires
    rows: 2
    columns: 4
    pins:
      4: {{function: {function}}}
functions:
  reverse: {{by: data, source: e1}}
"""

HARNESS = """format: 1
demo: yes
gear:
  kind: harness
  maker: Skerrowe
  model: H-F14
  suits: [{{vehicle: {vehicle}, opening: dash}}]
  plugs:
    radio-main:
      4: {{function: ground, colour: black}}
"""

RECEIVER = """format: 1
demo: yes
gear:
  kind: receiver
  maker: Skerrowe
  model: Cairn 1
  body: {width: 180 mm, height: 50 mm}
  chassis_depth: 100 mm
  outputs: [speaker]
  needs: [ground, reverse]
"""

INTERFACE = """format: 1
demo: yes
gear:
  kind: interface
  maker: Tidewrack
  model: DI-F14
  suits: [{vehicle: kelbrook/finch-2014-2018, opening: dash}]
  provides: [reverse]
"""

FINCH = "vehicles/kelbrook/finch-2014-2018.yaml"
H_F14 = "gear/harnesses/skerrowe-h-f14.yaml"
NEW = frozenset(("gear-names-absent", "harness-mismatch", "interface-missing", "crash"))


def workspace(root: Path, files: dict[str, str]) -> Workspace:
    for name, text in files.items():
        path = root / "records" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return Workspace(root)


def said(space: Workspace, *names: str, cache: Cache | None = None) -> list[tuple[str, int, str]]:
    report = runner.check(space, [space.records / name for name in names], cache=cache)
    return [(p.file.name, p.position.line, p.rule) for p in report.problems if p.rule in NEW]


@pytest.fixture
def shop(tmp_path: Path) -> Workspace:
    """A car with ground against a parking brake, and a function as data with no interface for it."""
    return workspace(
        tmp_path,
        {
            FINCH: VEHICLE.format(function="parking-brake"),
            H_F14: HARNESS.format(vehicle="kelbrook/finch-2014-2018"),
            "gear/receivers/skerrowe-cairn-1.yaml": RECEIVER,
        },
    )


MISMATCH = ("skerrowe-h-f14.yaml", 10, "harness-mismatch")
MISSING = ("finch-2014-2018.yaml", 32, "interface-missing")


@pytest.mark.parametrize("name", [H_F14, FINCH])
def test_the_whole_workspace_and_single_files_say_the_same(shop: Workspace, name: str) -> None:
    assert said(shop) == said(shop, name) == [MISMATCH, MISSING]


def test_a_vehicle_checked_alone_is_held_against_the_interfaces(shop: Workspace) -> None:
    space = workspace(shop.root, {"gear/interfaces/tidewrack-di-f14.yaml": INTERFACE})
    assert said(space, FINCH) == [MISMATCH]


def test_gear_checked_alone_finds_its_vehicle_or_that_there_is_none(shop: Workspace) -> None:
    space = workspace(shop.root, {H_F14: HARNESS.format(vehicle="kelbrook/finch-2014-2019")})
    assert sorted(said(space, H_F14)) == [MISSING, ("skerrowe-h-f14.yaml", 7, "gear-names-absent")]


def test_what_is_kept_says_the_same(shop: Workspace) -> None:
    first = said(shop, cache=Cache(shop))
    assert list((shop.root / ".undertrim" / "cache" / "check").iterdir())
    assert said(shop, cache=Cache(shop)) == first == [MISMATCH, MISSING]


def test_an_edit_of_the_vehicle_is_seen_at_the_gear(shop: Workspace) -> None:
    assert MISMATCH in said(shop, cache=Cache(shop))
    space = workspace(shop.root, {FINCH: VEHICLE.format(function="ground")})
    assert said(space, H_F14, cache=Cache(space)) == [MISSING]


def test_a_vehicle_that_cannot_be_read_in_full_is_left_alone(shop: Workspace) -> None:
    text = VEHICLE.format(function="parking-brake").replace("rows: 2", "rows: many")
    space = workspace(shop.root, {FINCH: text})
    assert said(space) == []


def test_a_card_of_gear_carries_no_joints(shop: Workspace) -> None:
    entry = shop.load(shop.records / H_F14)
    assert joints.cut(entry) is None


def test_a_card_carries_no_more_of_a_vehicle_than_gear_meets(shop: Workspace) -> None:
    entry = shop.load(shop.records / FINCH)
    cut = joints.cut(entry)
    assert isinstance(cut, dict)
    assert set(cut["parts"]["radio"]) == {"name", "release", "tethers"}
    assert "evidence" not in cut
    card = card_of(entry)
    assert card
    record = joints.Vehicle(card).record
    assert record
    assert list(record.connectors["radio-main"].pins) == ["4"]


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
