"""What a changed gear record costs: files on the shelf, and no page and no data."""

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from small_site import ROOT, held, quick, renamed, silent, tell_of_few_rules, workspace

from here import Here
from undertrim.publish.build.building import Builder, build
from undertrim.record.store import Workspace


@pytest.fixture(scope="module", autouse=True)
def few_rules() -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        tell_of_few_rules(patch)
        yield


@pytest.fixture
def folder() -> Iterator[Path]:
    with quick() as found:
        yield found


@pytest.fixture
def place(folder: Path) -> Workspace:
    return workspace(folder)


def changed(folder: Path, builder: Builder) -> set[str]:
    """The files that the next build makes anew, or away with."""
    before = held(folder)
    assert not builder.build(silent).report.errors
    after = held(folder)
    return {path for path in before.keys() | after.keys() if before.get(path) != after.get(path)}


GEAR = ("receivers/skerrowe-broadside", "leads/skerrowe-lead-16", "speakers/tidewrack-haven-65")


def test_a_changed_gear_record_costs_the_shelf_and_nothing_else(
    place: Workspace, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Sizes are on the shelf of all: no vehicle is worked out again, for a build from nothing or a preview, and no other file is written."""
    for name in GEAR:
        file = place.records / f"gear/{name}.yaml"
        file.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / f"records/gear/{name}.yaml", file)
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    assert not builder.build(silent).report.errors
    monkeypatch.setattr("undertrim.publish.facts.vehicle.in_each", lambda *_: pytest.fail("worked out again"))
    for name, old, new in (("receivers/skerrowe-broadside", "chassis_depth: ", "chassis_depth: 1"), ("speakers/tidewrack-haven-65", "depth: ", "depth: 1")):  # fmt: skip
        renamed(place.records / f"gear/{name}.yaml", old, new)
        assert changed(folder / "out", builder) == {
            "shelf/start.js",
            f"gear/{name.partition('/')[2]}.html",
            "keeper/list.json",  # which names it with its mark
        }
    assert build(place, folder / "anew", sheets=False, progress=silent).vehicles == 3


def one_of_each_kind(place: Workspace) -> dict[str, Path]:
    """The gear of this repository that is made for the vehicles that are there, or for any; the first of each kind."""
    present, kinds = vehicles(place), dict[str, Path]()
    for original in sorted((ROOT / "records/gear").rglob("*.yaml")):
        if set(re.findall(r"vehicle: ([\w/-]+)", original.read_text(encoding="utf-8"))) <= present:
            file = place.root / original.relative_to(ROOT)
            file.parent.mkdir(parents=True, exist_ok=True)
            kinds.setdefault(original.parent.name, Path(shutil.copy(original, file)))
    return kinds


def vehicles(place: Workspace) -> set[str]:
    return {f"{path.parent.name}/{path.stem}" for path in place.files([place.records / "vehicles"])}


def test_no_page_and_no_data_depends_on_any_kind_of_gear(
    place: Workspace, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One piece of each kind is changed, so that it says something else: what differs then stands on the shelf, and no vehicle is planned again."""
    kinds = one_of_each_kind(place)
    assert set(kinds) >= {"amplifiers", "converters", "crossovers", "harnesses", "kits", "leads", "receivers", "speakers", "tweeters"}  # fmt: skip
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    assert not builder.build(silent).report.errors
    monkeypatch.setattr("undertrim.publish.facts.vehicle.in_each", lambda *_: pytest.fail("worked out again"))
    for file in kinds.values():
        text = re.sub(r"^  fitting: .*\n", "", file.read_text(encoding="utf-8"), flags=re.MULTILINE)
        file.write_text(re.sub(r"^(  kind: .*)$", r"\1\n  fitting: 7 min", text, count=1, flags=re.MULTILINE))
    renamed(kinds["leads"], "colour: ", "colour: pink/")
    found = changed(folder / "out", builder)
    assert {path.split("/")[0] for path in found} == {"shelf", "keeper", "gear"}
    assert {path for path in found if path.startswith("shelf/")} == {"shelf/start.js", *(f"shelf/{one}.wiring.js" for one in vehicles(place))}  # fmt: skip
    build(place, folder / "anew", sheets=False, progress=silent)
    assert held(folder / "anew") == held(folder / "out")


def test_every_vehicle_keeps_its_file_on_the_shelf_with_its_pages(place: Workspace, folder: Path) -> None:
    """A device keeps both together: `keeper/<make>.json` names them in one list."""
    build(place, folder / "out", sheets=False, progress=silent)
    for vehicle in vehicles(place):
        kept = (folder / f"out/keeper/{vehicle.split('/')[0]}.json").read_text(encoding="utf-8")
        pages = json.loads(kept)["pages"]
        assert {f"vehicles/{vehicle}.html", f"shelf/{vehicle}.js", f"shelf/{vehicle}.wiring.js"} <= pages.keys()
