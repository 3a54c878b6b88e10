"""The fit command from the shell's side: whole stock, one piece, kinds of car, and how it refuses."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from undertrim.cli import main

ROOT = Path(__file__).parents[2]
DROVER, FINCH = "drover-2015-2020", "finch-2014-2018"


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """The shipped records, free to be changed."""
    for folder in ("vehicles", "gear"):
        shutil.copytree(ROOT / "records" / folder, tmp_path / "records" / folder)
    return tmp_path


def run(workspace: Path, *arguments: str) -> int:
    return main(["fit", *arguments, "--in", str(workspace)])


def data(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str) -> Any:
    assert run(workspace, *arguments, "--format", "json") == 0
    return json.loads(capsys.readouterr().out)


def test_the_whole_stock_is_ranked_for_every_opening(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = data(workspace, capsys, FINCH, "--variant", "radio=map")
    assert [answer["opening"] for answer in found["openings"]] == [
        "dash",
        "front-door",
        "rear-door",
        "load-floor",
        "load-side",
    ]
    stock = {
        kind: len(list((workspace / "records/gear" / kind).glob("*.yaml")))
        for kind in ("amplifiers", "receivers", "speakers")
    }
    order = ("fits", "fits-with", "marginal", "unknown", "does-not-fit")
    for answer in found["openings"]:
        ranks = [order.index(fit["verdict"]) for fit in answer["fits"]]
        assert ranks == sorted(ranks)
        assert len(ranks) == stock[f"{answer['kind']}s"]


def test_one_piece_shows_every_number_in_both_systems(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, DROVER, "cab-rear", "sandmartin-bank-65") == 0
    text = capsys.readouterr().out
    assert "Sandmartin Bank 65: fits with Sandmartin Plank 69" in text
    assert "thickness of Sandmartin Plank 69 6 mm (0.236 in)" in " ".join(text.split())
    assert text.endswith("The maker's information, local codes and licensed practice come first.\n")


def test_a_plate_made_for_another_opening_stays_on_the_shelf(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = data(workspace, capsys, DROVER, "front-door")
    assert all("Sandmartin Plank 69" not in fit["parts"] for fit in found["openings"][0]["fits"])


def test_a_kit_for_one_kind_of_car_splits_the_answer(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/gear/kits/sandmartin-dk-f14.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("opening: dash}", "opening: dash, when: {radio: map}}"), encoding="utf-8")
    found = data(workspace, capsys, FINCH, "dash", "pellworth-brae-10")["openings"]
    said = {answer["cars"][0]["radio"]: answer["fits"][0]["headline"] for answer in found}
    assert said == {
        "map": "fits with Sandmartin DK-F14 and Skerrowe H-F14",
        "plain": "fits with Skerrowe H-F14, and with a kit: none of that in stock suits",
    }
    one = data(workspace, capsys, FINCH, "dash", "pellworth-brae-10", "--variant", "radio=map")["openings"]
    assert [answer["fits"][0]["parts"] for answer in one] == [["Sandmartin DK-F14", "Skerrowe H-F14"]]


def test_an_opening_that_some_cars_lack(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = data(workspace, capsys, "sedge-2016-2021", "dash-top")["openings"]
    assert {(answer["cars"][0]["sound"], answer["there"]) for answer in found} == {("doors", False), ("dash", True)}
    assert run(workspace, "sedge-2016-2021", "dash-top", "--variant", "sound=doors") == 0
    assert "not there" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("vehicle", "gear", "expected"),
    [
        (
            "plover-2017-2022",
            "skerrowe-broadside",
            {"ground": ("wire", "Knot P"), "reverse": ("data", "Tidewrack DI-P17")},
        ),
        ("bramble-2019-2023", "skerrowe-broadside", {"reverse": ("data", "Tidewrack DI-B19")}),
        (FINCH, "skerrowe-broadside", {"reverse": ("unknown", "look it up"), "parking-brake": ("wire", "brake lever")}),
    ],
)
def test_functions_of_the_receiver_in_this_car(
    workspace: Path,
    capsys: pytest.CaptureFixture[str],
    vehicle: str,
    gear: str,
    expected: dict[str, tuple[str, str]],
) -> None:
    fit = data(workspace, capsys, vehicle, "dash", gear)["openings"][0]["fits"][0]
    needs = {need["function"]: need for need in fit["functions"]}
    for function, (by, words) in expected.items():
        assert needs[function]["by"] == by
        assert words in needs[function]["words"]


def test_what_is_absent_wants_a_new_feed(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/gear/receivers/pellworth-brae-10.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("switched-feed, ground]", "amplifier-turn-on]"), encoding="utf-8")
    fit = data(workspace, capsys, FINCH, "dash", "pellworth-brae-10")["openings"][0]["fits"][0]
    need = next(need for need in fit["functions"] if need["function"] == "amplifier-turn-on")
    assert (need["by"], need["words"]) == (
        "absent",
        "absent: there is no factory amplifier to switch on: only a new one needs this lead",
    )


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["fnich-2014-2018"], "did you mean 'finch-2014-2018'?"),
        ([FINCH, "front-dor"], "did you mean 'front-door'?"),
        ([FINCH, "dash", "pellworth-bray-10"], "did you mean 'pellworth-brae-10'?"),
        ([FINCH, "dash", "pellworth-cove-40"], "'pellworth-cove-40' is no receiver, but a speaker"),
        ([FINCH, "--variant", "radoi=map"], "did you mean 'radio'?"),
        ([FINCH, "--variant", "radio"], "write NAME=CHOICE"),
        ([FINCH, "--variant", "radio=map", "--variant", "radio=plain"], "chosen twice"),
    ],
)
def test_unknown_names_exit_with_two(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], said: str
) -> None:
    assert run(workspace, *arguments) == 2
    assert said in capsys.readouterr().err


def test_gear_with_problems_is_left_out_and_said(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/gear/speakers/pellworth-cove-40.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("depth: 40 mm", "depth: 40"), encoding="utf-8")
    assert run(workspace, FINCH, "rear-door") == 0
    text = capsys.readouterr().out
    assert "Left out, its record has problems: speakers/pellworth-cove-40" in text
    assert "Pellworth Cove 40:" not in text


def test_a_vehicle_with_problems_is_refused(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/vehicles/kelbrook/finch-2014-2018.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("clear: 64 mm", "clear: 64"), encoding="utf-8")
    assert run(workspace, FINCH) == 1
    assert "undertrim check" in capsys.readouterr().err


def test_what_is_in_the_way_stands_above_what_fits(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The blockers of a visit are those of its plan; with no opening named they are those of all."""
    text = "plover-2017-2022?jobs=dash&dash=skerrowe-broadside"
    above = data(workspace, capsys, text)["blockers"]
    assert main(["plan", text, "--format", "json", "--in", str(workspace)]) == 0
    assert above == json.loads(capsys.readouterr().out)["blockers"] != []
    assert run(workspace, text) == 0
    shown = " ".join(capsys.readouterr().out.split())
    places = [shown.index(item["title"]) for item in above]
    assert places == sorted(places)
    assert places[-1] < shown.index("(dash)")
    every = {item["title"] for item in data(workspace, capsys, "plover-2017-2022")["blockers"]}
    assert {item["title"] for item in above} < every
