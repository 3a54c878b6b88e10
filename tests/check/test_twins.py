"""Before a record is written: whether the collection has it already, under another name or as a copy."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.check.register import COLLECTION_RULES
from undertrim.check.twins import RULES, twins
from undertrim.cli import main
from undertrim.record.source import read_text
from undertrim.record.store import Entry, Workspace
from undertrim.resources import inside

GEAR = inside("commands", "collection", "all", "records/gear/speakers/pebblerun-tern-60.yaml").read_text(
    encoding="utf-8"
)
OTHERS = "  bezel: {name: Bezel, release: lift}\n"


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    for name, text in {"vehicles/brindleway/otter-2014-2018": BASE, "gear/speakers/pebblerun-tern-60": GEAR}.items():
        file = tmp_path / "records" / f"{name}.yaml"
        file.parent.mkdir(parents=True)
        file.write_text(text, encoding="utf-8")
    return Workspace(tmp_path)


def fresh(place: Workspace, name: str, text: str) -> Entry:
    path = place.records / f"{name}.yaml"
    return place.entry(path, read_text(text, place.shown(path)))


def rules(place: Workspace, name: str, text: str) -> set[str]:
    return {problem.rule for problem in twins(place, fresh(place, name, text))}


def test_each_sort_of_twin_is_found(place: Workspace) -> None:
    other = BASE.replace("parts:\n", f"parts:\n{OTHERS}")
    assert "vehicle-twice" in rules(
        place, "vehicles/brindleway/otters-2014-2018", other.replace("model: Otter", "model: Otters")
    )
    later = BASE.replace("2018-01", "2021-01").replace("2014-01", "2018-01")
    assert {"phases-alike", "record-copied"} & rules(place, "vehicles/brindleway/otter-2018-2021", later)
    assert "overlapping-records" in rules(place, "vehicles/brindleway/otter-2014-2018-b", other)
    assert rules(place, "gear/speakers/pebblerun-tern.60", GEAR.replace("Tern 60", "TERN-60.")) == {"gear-twice"}


def test_what_is_there_anyway_is_not_told(place: Workspace) -> None:
    """Neither of other records, nor of the same record in another version."""
    twin = place.records / "gear/speakers/pebblerun-tern60.yaml"
    twin.write_text(GEAR.replace("Tern 60", "Tern60"), encoding="utf-8")
    assert rules(place, "vehicles/brindleway/otter-2014-2018", BASE.replace("T20", "T25")) == set()
    before = twins(place, fresh(place, "gear/speakers/pebblerun-tern-60", GEAR.replace("45 mm", "46 mm")))
    assert before == []
    assert set(COLLECTION_RULES) >= RULES


def test_copy_says_so_and_writes(place: Workspace, capsys: pytest.CaptureFixture[str]) -> None:
    assert (
        main(["copy", "otter-2014-2018", "Brindlway/Otter", "--built", "2019-01..2020-01", "--in", str(place.root)])
        == 0
    )
    assert "the make 'Brindlway' is spelt nearly like 'Brindleway'" in capsys.readouterr().err
    assert (place.records / "vehicles/brindlway/otter-2019-2020.yaml").is_file()
