"""The shop command: what to order and to bring, for which kinds of car, and how it refuses."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from undertrim.cli import main

ROOT = Path(__file__).parents[2]
FINCH = "finch-2014-2018"


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """The shipped records, free to be changed."""
    for folder in ("vehicles", "gear"):
        shutil.copytree(ROOT / "records" / folder, tmp_path / "records" / folder)
    return tmp_path


def run(workspace: Path, *arguments: str) -> int:
    return main(["shop", *arguments, "--in", str(workspace)])


def lists(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 0) -> list[dict[str, Any]]:
    assert run(workspace, *arguments, "--format", "json") == code
    found: list[dict[str, Any]] = json.loads(capsys.readouterr().out)["lists"]
    return found


def test_gear_counts_once_for_each_side(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    wanted = ["--job", "dash", "--job", "front-door", "--gear", "skerrowe-broadside", "--gear", "pellworth-shallows-65"]
    (found,) = lists(workspace, capsys, FINCH, *wanted, "--variant", "radio=map")
    counted = {item["what"]: item["count"] for item in found["order"]}
    assert counted["Skerrowe Broadside"] == counted["Sandmartin DK-F14"] == 1
    assert counted["Pellworth Shallows 65"] == 2
    (one,) = lists(workspace, capsys, FINCH, "--job", "front-door@left", "--gear", "pellworth-shallows-65")
    assert {item["what"]: item["count"] for item in one["order"]}["Pellworth Shallows 65"] == 1


def test_cars_that_differ_have_lists_of_their_own(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = workspace / "records/gear/kits/sandmartin-dk-f14.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("opening: dash}", "opening: dash, when: {radio: map}}"), encoding="utf-8")
    found = lists(workspace, capsys, FINCH, "--job", "dash", "--gear", "skerrowe-broadside")
    kits = {car["radio"]: [item["what"] for item in entry["to_get"]] for entry in found for car in entry["cars"]}
    assert kits == {"map": [], "plain": ["a kit"]}


def test_what_is_lost_with_the_factory_unit_is_said(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, FINCH, "--job", "dash", "--gear", "skerrowe-broadside") == 0
    assert "position antenna [Map radio]: LOST with the factory unit" in capsys.readouterr().out
    assert run(workspace, FINCH, "--job", "front-door", "--gear", "pellworth-shallows-65") == 0
    assert "LOST" not in capsys.readouterr().out


def test_single_use_parts_tools_and_what_is_used_up_are_listed(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = workspace / "records/vehicles/kelbrook/finch-2014-2018.yaml"
    text = file.read_text(encoding="utf-8")
    edges = "at: {bottom: 3, left: 3, right: 3}}"
    assert text.count(edges) == 1
    file.write_text(text.replace(edges, f"reuse: no, {edges}"), encoding="utf-8")
    found = lists(workspace, capsys, FINCH, "--job", "front-door", "--gear", "pellworth-shallows-65")[0]
    assert sum(item["count"] for item in found["single_use"]) == 18
    assert "T30 bit" in [tool["name"] for tool in found["tools"]]
    assert "closed-cell foam tape for the rim" in found["used_up"]


def test_the_fuses_of_the_lead_set_are_on_the_list(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = lists(workspace, capsys, FINCH, "--job", "dash", "--gear", "skerrowe-broadside")[0]
    assert [thing for thing in found["used_up"] if thing.startswith("fuse")] == ["fuse 15 A for the lead 'battery'"]


def test_what_does_not_fit_exits_with_one(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, FINCH, "--job", "dash", "--gear", "sandmartin-burrow-1") == 1
    text = " ".join(capsys.readouterr().out.split())
    assert "does not fit" in text
    assert "nearest in stock that fits: Pellworth Brae 10" in text


def test_a_receiver_that_may_not_drive_the_new_speakers_is_said(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """2 ohm speakers on outputs that allow 4 ohm."""
    for name, old, new in (
        ("speakers/pellworth-shallows-65", "impedance: 4 ohm", "impedance: 2 ohm"),
        ("receivers/skerrowe-broadside", "outputs:", "least_load: 4 ohm\n  outputs:"),
    ):
        file = workspace / f"records/gear/{name}.yaml"
        lines = [line for line in file.read_text(encoding="utf-8").splitlines() if "least_load" not in line]
        file.write_text("\n".join(lines).replace(old, new) + "\n", encoding="utf-8")
    wanted = ["--job", "dash", "--job", "front-door", "--gear", "skerrowe-broadside", "--gear", "pellworth-shallows-65"]
    found = lists(workspace, capsys, FINCH, *wanted, code=1)
    said = [
        verdict["headline"] for entry in found for verdict in entry["verdicts"] if verdict["opening"] == "front-door"
    ]
    assert said
    assert all("Load on Skerrowe Broadside: 2 Ω, 4 Ω at least" in headline for headline in said)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--job", "front-dor"], "did you mean 'front-door'?"),
        (["--job", "dash", "--gear", "skerrowe-brodside"], "did you mean 'skerrowe-broadside'?"),
        (["--job", "dash", "--gear", "pellworth-shallows-65"], "no opening of these jobs takes a speaker"),
        (
            ["--job", "front-door", "--job", "rear-door", "--gear", "pellworth-shallows-65"],
            "write --gear 'front-door=pellworth-shallows-65' or 'rear-door=pellworth-shallows-65'",
        ),
        (
            ["--job", "front-door", "--gear", "rear-door=pellworth-shallows-65"],
            "'rear-door' is no opening of these jobs",
        ),
    ],
)
def test_what_cannot_be_followed_exits_with_two(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], said: str
) -> None:
    assert run(workspace, FINCH, *arguments) == 2
    assert said in capsys.readouterr().err
