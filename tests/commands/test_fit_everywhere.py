"""`fit --everywhere` says of gear in all vehicles what `fit` says of it in each."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from undertrim.check.shelf import stock
from undertrim.cli import main
from undertrim.derive.fit.verdict import RANKED
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
SPACE = Workspace(ROOT)
TAKEN = [item.id for item in stock(SPACE).items if item.facts.kind in ("receiver", "speaker", "tweeter", "amplifier")]


def said(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0, root: Path = ROOT) -> str:
    assert main(["fit", *words, "--in", str(root)]) == code
    return capsys.readouterr().out


def test_it_says_what_each_vehicle_says(capsys: pytest.CaptureFixture[str]) -> None:
    names = [path.stem for path in SPACE.files([SPACE.records / "vehicles"])]
    each = [json.loads(said(capsys, name, "--format", "json")) for name in names]
    for gear in TAKEN[::3]:
        made: list[dict[str, Any]] = json.loads(said(capsys, "--everywhere", gear, "--format", "json"))["places"]
        expected = {
            (vehicle["vehicle"], opening["opening"], fit["verdict"], fit["headline"])
            for vehicle in each
            for opening in vehicle["openings"]
            for fit in opening["fits"]
            if fit["gear"] == gear
        }
        assert {(one["vehicle"], one["opening"], one["verdict"], one["headline"]) for one in made} == expected
        assert len(made) == len(expected)
        order = [RANKED.index(one["verdict"]) for one in made]
        assert order == sorted(order)


def test_cars_are_named_only_where_they_differ(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "--everywhere", "skerrowe-broadside").splitlines()
    assert "  Kelbrook Finch 2014–2018, Radio opening: fits with Sandmartin DK-F14 and Skerrowe H-F14" in lines
    assert any("Radio opening, for: Before October 2018: marginal" in line for line in lines)


def test_gear_that_no_opening_takes_goes_nowhere(capsys: pytest.CaptureFixture[str]) -> None:
    assert "No opening of these vehicles takes gear of its kind." in said(capsys, "--everywhere", "sandmartin-dk-f14")


def test_a_broken_record_is_named_and_the_others_are_answered(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    shutil.copytree(ROOT / "records", tmp_path / "records")
    broken = tmp_path / "records/vehicles/kelbrook/finch-2014-2018.yaml"
    broken.write_text(broken.read_text("utf-8").replace("format: 2", "format: two"), "utf-8")
    text = said(capsys, "--everywhere", "skerrowe-broadside", code=1, root=tmp_path)
    assert "Left out, its record cannot be relied on: kelbrook/finch-2014-2018" in text
    assert "Ashgrove Drover 2015–2020, Radio opening" in text


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ([], "say a VEHICLE, or with --everywhere a piece of gear"),
        (["finch-2014-2018", "--everywhere", "skerrowe-broadside"], "say a VEHICLE, or with --everywhere"),
        (["--everywhere", "skerowe-broadside"], "did you mean 'skerrowe-broadside'?"),
    ],
)
def test_what_it_cannot_be_asked(capsys: pytest.CaptureFixture[str], words: list[str], why: str) -> None:
    assert main(["fit", *words, "--in", str(ROOT)]) == 2
    assert why in capsys.readouterr().err
