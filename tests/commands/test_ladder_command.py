"""`undertrim meter --ladder`: which button a reading agrees with, and by which name a ladder is asked for."""

import argparse
from dataclasses import replace
from pathlib import Path

import pytest

from metering import OTTER, data, edit, laid_down, run, text
from undertrim.commands import meter
from undertrim.publish.facts.ladders import ladders
from undertrim.record.model import Blank, Ladder, VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.record.units import Quantity, parse


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    return laid_down(tmp_path)


@pytest.mark.usefixtures("wheel")
def test_nobody_meters_a_ladder_on_a_restraint_plug(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(workspace, "name: Main radio plug, kind: plug", "name: Main radio plug, kind: plug, circuit: restraint")
    assert run(workspace, OTTER, "--ladder", "wheel", readings=("330 ohm",)) == 1
    assert "'Main radio plug' is restraint wiring" in capsys.readouterr().err


@pytest.fixture
def wheel(monkeypatch: pytest.MonkeyPatch) -> None:
    """The record as if it had a ladder."""
    nominal = {"volume-up": "330 ohm", "volume-down": "680 ohm", "mute": "700 ohm"}
    buttons: dict[str, Quantity | Blank] = {name: parse(typed, "resistance") for name, typed in nominal.items()}
    made = Ladder("wheel", "radio-main/15", parse("5 %", "share"), buttons, idle=Blank.NONE)
    load = meter._entry

    def with_ladder(options: argparse.Namespace) -> Entry:
        entry = load(options)
        assert isinstance(entry.record, VehicleRecord)
        return replace(entry, record=replace(entry.record, ladders={"wheel": made}))

    monkeypatch.setattr(meter, "_entry", with_ladder)


@pytest.mark.usefixtures("wheel")
def test_a_ladder(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    readings = ("330 ohm", "500 ohm", "0.69 kohm", "open", "5 ohm")
    said = text(workspace, capsys, OTTER, "--ladder", "wheel", readings=readings)
    assert "ladder wheel on radio-main/15 against ground, within 5 %" in said
    assert "volume-up: 313.5 ohm to 346.5 ohm" in said
    assert "OVERLAP: volume-down and mute share 665 ohm to 714 ohm, a reading there tells neither" in said
    assert "330 ohm: agrees with volume-up" in said
    assert "500 ohm: none of them: above volume-up (to 346.5 ohm) and below volume-down (from 646 ohm)" in said
    assert "0.69 kohm: ambiguous: volume-down or mute" in said
    assert "open: agrees with idle" in said
    assert said.count("Hold the meter's leads together first") == 1
    assert "restraint wiring" in said


@pytest.mark.usefixtures("wheel")
def test_a_ladder_as_data(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = data(workspace, capsys, OTTER, "--ladder", "wheel", readings=("330 ohm", "690 ohm"))
    assert found["overlaps"] == [{"of": ["volume-down", "mute"], "low": 665.0, "high": 714.0}]
    assert [(one["is"], one["rungs"]) for one in found["readings"]] == [
        ("button", ["volume-up"]),
        ("ambiguous", ["volume-down", "mute"]),
    ]
    assert found["rungs"][-1] == {"name": "idle", "low": 1e6, "high": None, "idle": True}


@pytest.mark.usefixtures("wheel")
@pytest.mark.parametrize(
    ("ladder", "reading", "said"),
    [
        ("whele", "330 ohm", "did you mean 'wheel'?"),
        ("wheel", "5 V key on", "like '330 ohm'"),
        ("wheel", "330 ohm key on", "with the power on"),
    ],
)
def test_a_ladder_that_cannot_be_asked(
    workspace: Path, capsys: pytest.CaptureFixture[str], ladder: str, reading: str, said: str
) -> None:
    assert run(workspace, OTTER, "--ladder", ladder, readings=(reading,)) == 2
    assert said in capsys.readouterr().err


SEDGE = "sedge-2016-2021"
SHIPPED = Path(__file__).parents[2]


def test_a_ladder_that_differs_between_cars_is_called_by_the_id_it_is_written_under() -> None:
    found = Workspace(SHIPPED).load(SHIPPED / "records" / "vehicles" / "harrowby" / f"{SEDGE}.yaml").record
    assert isinstance(found, VehicleRecord)
    assert [(one.id, one.name) for one in ladders(found)] == [("wheel-early", "wheel"), ("wheel-late", "wheel")]


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        ((SEDGE, "radio-main/4", "--variant", "plug=late"), 0, "radio-main/4"),
        ((SEDGE, "radio-main-early/4"), 0, "radio-main-early/4"),
        ((SEDGE, "radio-main/4"), 2, "name 'radio-main-early' (Before October 2018) or 'radio-main-late'"),
        ((SEDGE, "radoi-main/4"), 2, "did you mean 'radio-main'?"),
        ((SEDGE, "--ladder", "wheel", "--variant", "plug=late"), 0, "ladder wheel-late on radio-main-late/12"),
        ((SEDGE, "--ladder", "wheel"), 2, "or say with --variant which car it is"),
        ((SEDGE, "--ladder", "weel"), 2, "did you mean 'wheel'?"),
        (
            (SEDGE, "--ladder", "wheel-late", "--variant", "plug=early"),
            2,
            "it is in cars with October 2018 or later",
        ),
    ],
)
def test_what_differs_between_cars_goes_by_the_id_it_is_written_under(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], code: int, said: str
) -> None:
    assert run(SHIPPED, *arguments) == code
    printed = capsys.readouterr()
    assert said in " ".join((printed.out + printed.err).split())
