"""Openings inside the high-voltage system: no steps, no gear, no template, and the reason in plain words; other openings still work."""

import json
import re
import shutil
from datetime import date
from pathlib import Path

import pytest

from making import plan, record
from undertrim.cli import main
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.closed import closed_in
from undertrim.derive.procedure.planning import Planner
from undertrim.publish.build.beside import printing
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts.blockers import blockers
from undertrim.publish.facts.vehicle import vehicle
from undertrim.publish.printed.sheet import view
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from vehicle_pages import all_pages

ROOT = Path(__file__).parents[2]
PLOVER = "plover-2017-2022"
DAY = date(2026, 5, 4)
NAMES = "trained for high voltage"


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """The shipped records, with the rear doors of one vehicle inside its high-voltage system."""
    for folder in ("vehicles", "gear"):
        shutil.copytree(ROOT / "records" / folder, tmp_path / "records" / folder)
    file = next(tmp_path.rglob(f"{PLOVER}.yaml"))
    text, count = re.subn(
        r"(\n  rear-door:\n(?:    .*\n)*?    kind: .*speaker.*\n)",
        r"\1    high_voltage: inside\n",
        file.read_text("utf-8"),
    )
    assert count == 1
    assert re.search(r"^  came_with: .*high_voltage: yes", text, re.MULTILINE)
    file.write_text(text, "utf-8")
    return tmp_path


def run(workspace: Path, *arguments: str) -> int:
    return main([*arguments, "--in", str(workspace)])


def test_a_plan_names_the_closed_opening_and_gives_the_others(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(workspace, "plan", PLOVER, "--job", "dash", "--job", "rear-door", "--format", "json") == 1
    found = capsys.readouterr()
    both = json.loads(found.out)
    assert both["closed"] == ["rear-door@left", "rear-door@right"]
    assert "'Rear door speakers, left' is inside the high-voltage system" in found.err
    assert any(item["weight"] == "stop" and NAMES in item["text"] for item in both["blockers"])
    assert run(workspace, "plan", PLOVER, "--job", "dash", "--format", "json") == 0
    alone = json.loads(capsys.readouterr().out)
    assert [step["id"] for step in both["steps"]] == [step["id"] for step in alone["steps"]]
    assert alone["closed"] == []


def test_a_plan_of_the_closed_opening_alone_has_no_step(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, "plan", PLOVER, "--job", "rear-door") == 1
    out = " ".join(capsys.readouterr().out.split())
    assert "STOP: Inside the high-voltage system: Rear door" in out
    assert NAMES in out
    assert "Take off" not in out


def test_fit_offers_nothing(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, "fit", PLOVER, "rear-door") == 0
    out = " ".join(capsys.readouterr().out.split())
    assert "INSIDE:" in out
    assert NAMES in out
    assert "fits" not in out.partition("INSIDE:")[2].replace("what fits", "").partition("The numbers behind")[0]
    assert run(workspace, "fit", PLOVER, "rear-door", "--format", "json") == 0
    (opening,) = json.loads(capsys.readouterr().out)["openings"]
    assert (opening["fits"], opening["takes"]) == ([], [])
    assert NAMES in opening["closed"]


def test_shop_orders_nothing_for_it(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    wanted = [
        "--job",
        "rear-door",
        "--job",
        "front-door",
        "--gear",
        "front-door=pellworth-lee-52",
        "--gear",
        "rear-door=pellworth-lee-52",
    ]
    assert run(workspace, "shop", PLOVER, *wanted, "--format", "json") == 1
    for entry in json.loads(capsys.readouterr().out)["lists"]:
        assert {item["opening"] for item in entry["order"]} == {"Front door speakers"}
        assert NAMES in entry["closed"][0]


def test_there_is_no_template(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, "template", PLOVER, "rear-door", "--output", str(workspace / "out.pdf")) == 1
    assert NAMES in capsys.readouterr().err
    assert not (workspace / "out.pdf").exists()


@pytest.fixture
def made(workspace: Path) -> tuple[VehicleRecord, Published]:
    """The record, and the facts of its page."""
    place = Workspace(workspace)
    entry = place.load(next(workspace.rglob(f"{PLOVER}.yaml")))
    assert isinstance(entry.record, VehicleRecord)
    return entry.record, vehicle(entry)


def test_page_sheet_and_files_say_inside(made: tuple[VehicleRecord, Published]) -> None:
    about, found = made
    assert not [step["id"] for step in found["steps"] if set(step["targets"]) & {"rear-door@left", "rear-door@right"}]
    page = all_pages(found)
    assert '<details class="ut-try" data-opening="rear-door">' not in page
    assert '<details class="ut-try" data-opening="front-door">' in page
    assert page.count(NAMES) >= 2
    shown = view(found, "https://undertrim.invalid/", "a4", DAY)
    assert any(NAMES in entry["closed"] for opening in shown["openings"] for entry in opening["limits"])
    assert any(NAMES in entry["text"] for entry in shown["blockers"])
    templates = printing(about, found, ["a4"]).downloads.templates
    assert "rear-door" not in templates
    assert "front-door" in templates


WAYS = """
    vehicle: {high_voltage: yes}
    variants: {sort: {ask: Which one, choices: {one: {label: One}, two: {label: Two}}}}
    areas: {boot: {high_voltage: inside}, dash: {high_voltage: clear}}
    preps: {battery: {sets: {battery: off}, area: dash, restore: Join it.}}
    parts:
      lid: {area: boot}
      short: {area: boot, takes: 1 min, when: {sort: two}}
      long: {area: dash, takes: 90 min}
      radio: {area: dash, replaced: yes, after_any: [{one: [lid], other: [long]}]}
      tray: {area: dash, after: [short]}
    openings:
      dash: {behind: [radio], area: dash}
      shelf: {behind: [lid], area: dash}
      pod: {behind: [tray], area: dash}
      nook: {behind: [tray], area: boot}
"""


def test_a_way_round_is_taken_however_long_it_is() -> None:
    ids = [item.id for item in plan(record(WAYS), "dash").steps]
    assert "remove:long" in ids
    assert "remove:lid" not in ids


def test_what_is_behind_a_closed_part_is_closed_in_the_cars_that_have_it() -> None:
    about = record(WAYS)
    closed = {name: [car["sort"] for car, _ in closed_in(about, opening)] for name, opening in about.openings.items()}
    assert closed == {"dash": [], "shelf": ["one", "two"], "pod": ["two"], "nook": ["one", "two"]}
    stops = {
        item["openings"][0]: item["when"]
        for item in said(blockers(about))
        if item["openings"] and item["weight"] == "stop"
    }
    assert stops == {"shelf": "", "pod": "Two", "nook": ""}
    assert [step.id for step in plan(about, "pod", sort="one").steps if step.kind == "remove"] == ["remove:tray"]
    assert plan(about, "pod", sort="two").steps == ()


def test_no_step_of_the_page_belongs_to_a_closed_opening() -> None:
    found = choices(Planner(record(WAYS)))
    assert [plans.singles["shelf"] for plans in found.cars] == [(), ()]
    assert not [step.id for step in found.steps if step.part in ("lid", "short", "shelf", "nook")]


def test_a_preparation_inside_closes_what_needs_it() -> None:
    about = record(WAYS.replace("area: dash, restore", "area: boot, restore"))
    assert [thing.id for _, by in closed_in(about, about.openings["dash"]) for thing in by] == ["battery"] * 2
