"""`undertrim find`: what the finder of the site says, on a terminal."""

import json
from pathlib import Path

import pytest

from undertrim.cli import main

ROOT = Path(__file__).parents[2]


def run(*words: str) -> int:
    return main(["find", *words, "--in", str(ROOT)])


def test_a_car_with_its_job(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("finch", "16", "radio", "rhd") == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[:3] == ["Is this your car?", "", "  Kelbrook Finch 2014–2018  (kelbrook/finch-2014-2018)"]
    assert '      undertrim plan "finch-2014-2018?jobs=dash&drive-side=right"' in lines


def test_two_that_may_be_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("sedge 2016", "--format", "json") == 0
    found = json.loads(capsys.readouterr().out)
    assert found["said"] == ["Two may be it. Was it built before 2016-07?"]
    assert [(one["address"], one["answer"]) for one in found["vehicles"]] == [
        ("harrowby/sedge-2011-2016", "Yes: built before 2016-07"),
        ("harrowby/sedge-2016-2021", "No: built in 2016-07 or later"),
    ]


def test_a_number(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("00KFN1M20GX000001", "--format", "json") == 0
    found = json.loads(capsys.readouterr().out)
    assert found["vehicles"][0]["car"] == "Map radio"
    assert found["vehicles"][0]["visit"] == "finch-2014-2018?radio=map"
    assert found["said"][1] == "VIN: model year 2016."


def test_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("finch 2022") == 1
    assert capsys.readouterr().out == "No Kelbrook Finch of 2022; recorded: 2014 to 2018.\n"
