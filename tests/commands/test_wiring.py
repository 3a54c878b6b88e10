"""The wiring command from the shell's side: plugs, joints, and how it refuses."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from undertrim.cli import main

ROOT = Path(__file__).parents[2]
VEHICLES = sorted(path.stem for path in (ROOT / "records" / "vehicles").rglob("*.yaml"))
GANT, SET = "gant-1998-2003", "skerrowe-lead-16"


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """The shipped records, free to be changed."""
    for folder in ("vehicles", "gear"):
        shutil.copytree(ROOT / "records" / folder, tmp_path / "records" / folder)
    return tmp_path


def run(workspace: Path, *arguments: str) -> int:
    return main(["wiring", *arguments, "--in", str(workspace)])


def data(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str) -> Any:
    assert run(workspace, *arguments, "--format", "json") == 0
    return json.loads(capsys.readouterr().out)


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_plugs_of_every_vehicle(workspace: Path, capsys: pytest.CaptureFixture[str], vehicle: str) -> None:
    found = data(workspace, capsys, vehicle)
    addresses = [pin["address"] for plug in found["plugs"] for pin in plug["pins"]]
    assert addresses
    assert len(addresses) == len(set(addresses))
    assert run(workspace, vehicle) == 0
    text = capsys.readouterr().out
    assert all(f"  {address} " in text for address in addresses)
    assert all(len(line) <= 100 for line in text.splitlines())


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_a_joint_for_every_vehicle(workspace: Path, capsys: pytest.CaptureFixture[str], vehicle: str) -> None:
    found = data(workspace, capsys, vehicle, SET)
    assert found["tables"]
    assert run(workspace, vehicle, SET) == 0
    text = capsys.readouterr().out
    assert all(len(line) <= 100 for line in text.splitlines())
    assert text.count("[ ] ") == sum(len(table["rows"]) for table in found["tables"])


def test_a_variant_leaves_one_kind_of_car(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    disc = data(workspace, capsys, GANT, "--variant", "radio=disc")
    assert "power-disc" in [plug["id"] for plug in disc["plugs"]]
    assert "power-tape" not in [plug["id"] for plug in disc["plugs"]]
    tables = data(workspace, capsys, GANT, SET, "--variant", "radio=disc")["tables"]
    assert [table["cars"] for table in tables] == [[]]


def test_a_harness_for_the_other_radio_is_refused_pin_by_pin(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The plug is the same and A4 and A7 are exchanged: the harness of the tape radio in the car with the disc radio."""
    file = workspace / "records/gear/harnesses/pellworth-plain-t.yaml"
    file.write_text(
        "format: 1\ndemo: yes\n\ngear:\n  kind: harness\n  maker: Pellworth\n  model: Plain T\n"
        "  suits:\n    - {vehicle: tolverne/gant-1998-2003, opening: dash, when: {radio: tape}}\n"
        "  plugs:\n    power-tape:\n      A4: {function: battery-feed}\n      A7: {function: switched-feed}\n",
        encoding="utf-8",
    )
    arguments = (GANT, SET, "--harness", "pellworth-plain-t", "--variant", "radio=disc")
    rows = {row["id"]: row for row in data(workspace, capsys, *arguments)["tables"][0]["rows"]}
    assert rows["lead-battery"]["reasons"][0]["name"] == "permanent-to-switched"
    assert rows["lead-switched"]["reasons"][0]["name"] == "switched-to-permanent"
    assert run(workspace, *arguments) == 0
    assert "NEVER connect (2)" in capsys.readouterr().out


def test_by_hand_there_is_no_harness(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert data(workspace, capsys, GANT, SET, "--variant", "radio=disc")["tables"][0]["harness"]
    tables = data(workspace, capsys, GANT, SET, "--harness", "none")["tables"]
    assert all(table["harness"] is None and table["contacts"]["extra"] == [] for table in tables)


def test_a_receiver_stands_for_its_lead_set(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/gear/receivers/pellworth-brae-10.yaml"
    text = "\n".join(line for line in file.read_text(encoding="utf-8").splitlines() if "lead_set" not in line)
    file.write_text(f"{text}\n  lead_set: {SET}\n", encoding="utf-8")
    found = data(workspace, capsys, GANT, "pellworth-brae-10")
    assert found["tables"][0]["rows"] == data(workspace, capsys, GANT, SET)["tables"][0]["rows"]
    file.write_text(f"{text}\n", encoding="utf-8")
    assert run(workspace, GANT, "pellworth-brae-10") == 2
    assert "names no lead set" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["gnat-1998-2003"], "did you mean 'gant-1998-2003'?"),
        ([GANT, "skerrowe-lead-61"], "did you mean 'skerrowe-lead-16'?"),
        ([GANT, "pellworth-cove-40"], "'pellworth-cove-40' is no receiver or lead set, but a speaker"),
        ([GANT, SET, "--harness", SET], f"'{SET}' is no harness, but a lead set"),
        ([GANT, SET, "--opening", "dahs"], "did you mean 'dash'?"),
        ([GANT, SET, "--opening", "front-door"], "no opening 'front-door' for a receiver"),
        ([GANT, "--harness", "none"], "name a receiver or a lead set after the vehicle"),
        ([GANT, "--variant", "radoi=disc"], "did you mean 'radio'?"),
        ([GANT, SET, "--variant", "radio=dics"], "did you mean 'disc'?"),
    ],
)
def test_unknown_names_exit_with_two(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], said: str
) -> None:
    assert run(workspace, *arguments) == 2
    assert said in capsys.readouterr().err


def test_a_vehicle_with_problems_is_refused(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/vehicles/tolverne/gant-1998-2003.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("draws: 250 mA", "draws: 250"), encoding="utf-8")
    assert run(workspace, GANT) == 1
    assert "undertrim check" in capsys.readouterr().err
