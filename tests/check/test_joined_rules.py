"""Gear held against vehicles: over a whole workspace, from single files, from the cache, and with files that cannot be read."""

from pathlib import Path

import pytest

from undertrim.check import joints, runner
from undertrim.check.cache import Cache
from undertrim.check.one_file import card as card_of
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
    record = card.details.record
    assert record
    assert list(record.connectors["radio-main"].pins) == ["4"]
