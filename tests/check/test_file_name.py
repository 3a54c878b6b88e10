"""The name of a record's file, from wherever it is checked."""

from dataclasses import replace
from pathlib import Path

import pytest
from fragments import subject

from undertrim.check.findings import Subject
from undertrim.check.rules import file_name

VEHICLE = """
vehicle:
  make: {make}
  model: Otter
  built: {{from: 2014-01, to: 2018-01}}
  drive_side: [left]
  high_voltage: no
"""


def at(path: Path, make: str = "Brindleway") -> Subject:
    about = subject(VEHICLE.format(make=make))
    return Subject(replace(about.entry, path=path), about.record)


def test_a_path_seen_from_its_own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "records" / "vehicles" / "brindleway"
    folder.mkdir(parents=True)
    monkeypatch.chdir(folder)
    assert list(file_name.check(at(Path("otter-2014-2018.yaml")))) == []
    (found,) = file_name.check(at(Path("otter 14.yaml")))
    assert found.hint == "mv 'otter 14.yaml' otter-2014-2018.yaml"


def test_a_path_elsewhere_is_given_in_full(tmp_path: Path) -> None:
    wrong = tmp_path / "records" / "vehicles" / "otter" / "otter-2014-2018.yaml"
    (found,) = file_name.check(at(wrong))
    right = tmp_path / "records" / "vehicles" / "brindleway"
    assert found.hint == f"mkdir -p {right} && mv {wrong} {right}/otter-2014-2018.yaml"


def test_one_name_in_two_spellings_of_the_same_letters() -> None:
    composed = "\N{HANGUL SYLLABLE GA}"
    assert list(file_name.check(at(Path(f"records/vehicles/{composed}/otter-2014-2018.yaml"), composed))) == []
    other = "\N{HANGUL SYLLABLE NA}"
    assert list(file_name.check(at(Path(f"records/vehicles/{other}/otter-2014-2018.yaml"), composed)))


def test_letter_case_counts() -> None:
    assert list(file_name.check(at(Path("records/vehicles/Brindleway/otter-2014-2018.yaml"))))
