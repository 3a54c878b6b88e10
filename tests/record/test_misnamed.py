"""What lies among the records and is not read as one is named, and so is a name that some system cannot hold."""

import os
import subprocess
from pathlib import Path

import pytest

from undertrim.record import build
from undertrim.record.identity import vehicle_path
from undertrim.record.misnamed import misnamed
from undertrim.record.model import VehicleFacts
from undertrim.record.store import Workspace
from undertrim.words import sentence, way_out


def made(root: Path, *names: str, text: str = "format: 1\n") -> Workspace:
    for name in names:
        path = root / "records" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return Workspace(root)


def said(workspace: Workspace) -> list[str]:
    return [
        f"{item.path.relative_to(workspace.records).as_posix()}: {sentence(item.said)}" for item in misnamed(workspace)
    ]


@pytest.mark.parametrize(
    "name", ["finch.yaml.txt", "finch.YAML", "finch.Yml", "finch.yaml (1)", "finch.txt", "finch", "finch.json"]
)
def test_what_reads_like_a_record_under_another_name_is_named(tmp_path: Path, name: str) -> None:
    place = made(tmp_path, f"vehicles/kelbrook/{name}")
    assert said(place) == [
        f"vehicles/kelbrook/{name}: this is not read: a record's name ends in '.yaml', not as '{name}' does"
    ]
    assert not place.files()


def test_the_way_out_works_when_it_is_typed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place = made(tmp_path, "vehicles/kelbrook/my finch.yaml.txt", "gear/speakers/a.yaml~")
    monkeypatch.chdir(tmp_path)
    for item in list(misnamed(place)):
        subprocess.run(["/bin/sh", "-c", way_out(item.said).removeprefix("remove it: ")], check=True)
    assert said(place) == []
    assert [path.name for path in place.files()] == ["my finch.yaml"]


def test_no_file_is_lost_by_it(tmp_path: Path) -> None:
    (found,) = misnamed(made(tmp_path, "vehicles/kelbrook/finch.yaml.txt", "vehicles/kelbrook/finch.yaml"))
    assert way_out(found.said).endswith("finch.yaml' is there already: keep one of the two")


@pytest.mark.parametrize("name", ["finch.yaml~", "finch.yaml.orig", "finch.yaml.bak", "#finch.yaml#", "finch.yaml.rej"])
def test_what_an_editor_left_behind_is_a_warning(tmp_path: Path, name: str) -> None:
    (found,) = misnamed(made(tmp_path, f"gear/speakers/{name}"))
    assert found.left_behind
    assert sentence(found.said) == "an editor or git left this behind: it is not read"


def test_other_files_are_nobodys_business(tmp_path: Path) -> None:
    quiet = ["vehicles/README.md", "vehicles/kelbrook/dash.jpg", "vehicles/.finch.yaml.swp", "gear/.cache/x.yaml.txt"]
    assert said(made(tmp_path, *quiet, "handbook/format.txt", text="What stands here\n")) == []


@pytest.mark.parametrize("name", ["con", "AUX", "nul.yaml", "com1.md", "lpt\u00b2"])
@pytest.mark.parametrize("folder", ["vehicles", "gear", "handbook"])
def test_the_name_of_a_device_is_none(tmp_path: Path, folder: str, name: str) -> None:
    assert f"{folder}/{name}: '{name}' is the name of a device on Windows, and cannot be checked out there" in said(
        made(tmp_path, f"{folder}/{name}", text="")
    )


@pytest.mark.parametrize(
    ("name", "fault"), [("a.", "ends with a point"), ("a ", "ends with"), ("a:b", "holds ':'"), ("a?", "holds '?'")]
)
def test_signs_that_a_name_cannot_hold(tmp_path: Path, name: str, fault: str) -> None:
    assert fault in said(made(tmp_path, f"vehicles/{name}/x.yaml"))[0]


def test_names_that_differ_in_capitals_alone(tmp_path: Path) -> None:
    place = made(
        tmp_path, "handbook/Safety.md", "handbook/safety.md", "vehicles/Kelbrook/a.yaml", "vehicles/kelbrook/b.yaml"
    )
    assert said(place) == [
        "handbook/safety.md: 'safety.md' and 'Safety.md' are one name on some systems",
        "vehicles/kelbrook: 'kelbrook' and 'Kelbrook' are one name on some systems",
    ]


@pytest.mark.parametrize(("make", "folder"), [("Con", "con-make"), ("COM1", "com1-make"), ("Conway", "conway")])
def test_a_make_that_is_called_like_a_device_has_a_folder_of_its_own(make: str, folder: str) -> None:
    built = {"from": "2014-01", "to": "2015-01"}
    facts = {"make": make, "model": "Finch", "built": built, "drive_side": ["left"], "high_voltage": "no"}
    known = build.section("vehicle", facts)
    assert isinstance(known, VehicleFacts)
    assert vehicle_path(known).as_posix() == f"{folder}/finch-2014-2015.yaml"


def test_what_is_no_file_is_not_waited_for(tmp_path: Path) -> None:
    place = made(tmp_path, "vehicles/README.md", text="")
    os.mkfifo(place.records / "vehicles" / "pipe")
    assert said(place) == []
