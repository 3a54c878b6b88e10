"""The meter command from the shell's side: a pin, a wire on no plug, a ladder, and how it refuses."""

import argparse
import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from undertrim.cli import main
from undertrim.commands import meter
from undertrim.publish.facts.ladders import ladders
from undertrim.record.model import Blank, Ladder, VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.record.units import Quantity, parse

OTTER = "otter-2014-2018"
RECORD = "records/vehicles/brindleway/otter-2014-2018.yaml"
TEXT = """\
format: 1
demo: yes
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  drive_side: [left]
  high_voltage: no
variants:
  radio:
    ask: Which radio is in the dash?
    choices:
      plain: {label: Plain radio, tell: Six number keys}
      map: {label: Map radio, tell: A key marked MAP}
parts:
  radio:
    name: Radio
    release: pull
    tethers:
      radio-main: {name: Main radio plug, kind: plug}
openings:
  dash:
    name: Dash
    kind: receiver
    behind: [radio]
    kit: needed
    face: {width: 182 mm, height: 112 mm}
    depth: {clear: 170 mm}
connectors:
  radio-main:
    name: Main radio plug
    at: radio/radio-main
    view: wires
    rows: 2
    columns: 8
    blanks: ["14"]
    pins:
      3: {colour: white, function: front-left-plus}
      4: {colour: yellow, function: battery-feed}
      5: {colour: blue, function: antenna-feed, supply: 8 V}
      13: {colour: pink, function: switched-feed}
      15: {colour: light green, function: wheel-buttons, when: {radio: map}}
after_battery: {checked_none: [before, after]}
"""


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """One record, free to be changed."""
    file = tmp_path / RECORD
    file.parent.mkdir(parents=True)
    file.write_text(TEXT, encoding="utf-8")
    return tmp_path


def run(workspace: Path, *arguments: str, readings: tuple[str, ...] = ()) -> int:
    typed = [part for text in readings for part in ("--reading", text)]
    return main(["meter", *arguments, *typed, "--in", str(workspace)])


def text(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str, readings: tuple[str, ...] = ()) -> str:
    assert run(workspace, *arguments, readings=readings) == 0
    return " ".join(capsys.readouterr().out.split())


def data(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str, readings: tuple[str, ...] = ()) -> Any:
    assert run(workspace, *arguments, "--format", "json", readings=readings) == 0
    return json.loads(capsys.readouterr().out)


def edit(workspace: Path, old: str, new: str) -> None:
    file = workspace / RECORD
    before = file.read_text(encoding="utf-8")
    assert old in before
    file.write_text(before.replace(old, new, 1), encoding="utf-8")


def test_readings_that_agree(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = text(workspace, capsys, OTTER, "radio-main/4", readings=("12.6 V key off", "12.4 V key on"))
    assert "radio-main/4, yellow" in said
    assert "By the record: battery feed (live at all times); the readings agree with it" in said
    assert (
        "agrees 12.6 V key off: volts to ground, key off: battery voltage, 11.4 V to 13.2 V (common practice, no source)"
        in said
    )
    assert said.endswith("The maker's information, local codes and licensed practice come first.")
    assert "safe" not in said


def test_readings_that_disagree(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = data(workspace, capsys, OTTER, "radio-main/13", readings=("12.6 V key off", "12.4 V key on"))
    assert found["record"]["function"] == "switched-feed"
    assert found["record"]["standing"] == "disagrees"
    assert [one["verdict"] for one in found["record"]["findings"]] == ["disagrees", "agrees"]
    assert found["candidates"][0]["function"] == "battery-feed"
    said = text(workspace, capsys, OTTER, "radio-main/13", readings=("12.6 V key off", "12.4 V key on"))
    assert "the readings DISAGREE with it" in said
    assert "The readings agree with battery feed: live at all times" in said
    agreed = text(workspace, capsys, OTTER, "radio-main/4", readings=("12.6 V key off",))
    assert "The readings also agree with hazard" in agreed


def test_what_to_measure_next_with_what_it_would_mean(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = text(workspace, capsys, OTTER, "radio-main/13", readings=("0 V key off",))
    assert (
        "Measure next: volts to ground, key on, engine off 11.4 V to 13.2 V: switched feed −0.3 V to 0.5 V: ground"
        in said
    )


def test_without_a_reading_what_to_expect(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = text(workspace, capsys, OTTER, "radio-main/3")
    assert "ohms across the pair: a speaker's coil, 1.2 ohm to 9 ohm: key off" in said
    assert "agree with it" not in said


def test_an_igniter_is_named_first_and_the_speaker_second(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    readings = ("2.1 ohm across the pair",)
    said = text(workspace, capsys, OTTER, readings=readings)
    assert said.startswith("STOP: 2.1 ohm across the pair may be an igniter of an airbag or belt tensioner")
    assert "Do not measure further, do not join." in said
    assert said.index("igniter") < said.index("any speaker wire") < said.index("a heater")
    assert "Measure nothing more on this wire" in said
    assert "Measure next" not in said
    found = data(workspace, capsys, OTTER, readings=readings)
    assert found["stop"] is True
    assert found["next"] is None
    assert found["suspects"][0]["id"] == "igniter"
    known = data(workspace, capsys, OTTER, "radio-main/3", readings=readings)
    assert (known["stop"], known["suspects"]) == (False, [])


def test_a_dead_feed_or_its_fuse(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = text(workspace, capsys, OTTER, "radio-main/4", readings=("0 V key off", "0 V key on"))
    assert "a feed that is dead: or its fuse is out (0 V key off, 0 V key on)" in said


def test_no_function_agrees(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = text(workspace, capsys, OTTER, readings=("12.6 V key off", "0 V key on", "7 V running"))
    assert "No function agrees with every reading: take them again." in said


@pytest.mark.parametrize(
    ("wire", "said"),
    [("radio-main/16", "radio-main/16, not in the record"), (None, "a wire on no recorded plug")],
)
def test_a_wire_that_is_not_recorded(
    workspace: Path, capsys: pytest.CaptureFixture[str], wire: str | None, said: str
) -> None:
    found = data(workspace, capsys, OTTER, *([wire] if wire else []), readings=("12.4 V key on", "0 V key off"))
    assert found["wire"] == said
    assert found["record"] is None
    assert found["candidates"][0]["function"] == "switched-feed"


def test_a_position_that_holds_no_contact(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "the record says it holds no contact" in text(workspace, capsys, OTTER, "radio-main/14")


def test_a_pin_that_some_cars_lack(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "radio-main/15, light green, in cars with: Map radio" in text(workspace, capsys, OTTER, "radio-main/15")
    one = text(workspace, capsys, OTTER, "radio-main/15", "--variant", "radio=map")
    assert "By the record: wheel buttons" in one
    assert "in cars with" not in one
    other = text(workspace, capsys, OTTER, "radio-main/15", "--variant", "radio=plain")
    assert "not there in this car by the record" in other
    assert "By the record" not in other


def test_a_supply_of_its_own(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = text(workspace, capsys, OTTER, "radio-main/5", readings=("8.1 V radio on",))
    assert "its supply of 8 V, 6.8 V to 8.8 V" in said
    assert "the readings agree with it" in said


def test_cautions_stand_in_every_answer(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = data(workspace, capsys, OTTER, "radio-main/15")["cautions"]
    for words in ("high impedance", "restraint wiring", "power off", "No test lamp on this wire", "steering wheel"):
        assert any(words in one for one in found), words
    said = text(workspace, capsys, OTTER, "radio-main/15")
    assert said.index("restraint wiring") < said.index("Measure next")


@pytest.mark.parametrize("circuit", ["restraint", "high-voltage", "48-volt"])
def test_nobody_meters_a_restraint_plug(workspace: Path, capsys: pytest.CaptureFixture[str], circuit: str) -> None:
    edit(workspace, "name: Main radio plug, kind: plug", f"name: Main radio plug, kind: plug, circuit: {circuit}")
    assert run(workspace, OTTER, "radio-main/4", readings=("12.6 V key off",)) == 1
    caught = capsys.readouterr()
    assert f"'Main radio plug' is {circuit} wiring: nobody puts a meter or a lamp on it" in caught.err
    assert not caught.out


@pytest.mark.usefixtures("wheel")
def test_nobody_meters_a_ladder_on_a_restraint_plug(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(workspace, "name: Main radio plug, kind: plug", "name: Main radio plug, kind: plug, circuit: restraint")
    assert run(workspace, OTTER, "--ladder", "wheel", readings=("330 ohm",)) == 1
    assert "'Main radio plug' is restraint wiring" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "readings", "said"),
    [
        (["ottre-2014-2018"], (), "did you mean 'otter-2014-2018'?"),
        ([OTTER, "radio-mian/4"], (), "did you mean 'radio-main'?"),
        ([OTTER, "radio-main"], (), "write it as plug/pin, for example 'radio-main/1'"),
        ([OTTER, "radio-main/4"], ("12,6 V key off",), "write a decimal point"),
        ([OTTER, "radio-main/4"], ("12.6 V",), "add one of these: key off"),
        ([OTTER, "radio-main/4", "--variant", "radoi=map"], (), "did you mean 'radio'?"),
        ([OTTER, "radio-main/4", "--ladder", "wheel"], (), "ask one of them"),
        ([OTTER, "--ladder", "wheel"], (), "this record has no button ladder"),
    ],
)
def test_what_it_cannot_follow_exits_with_two(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], readings: tuple[str, ...], said: str
) -> None:
    assert run(workspace, *arguments, readings=readings) == 2
    assert said in capsys.readouterr().err


def test_a_vehicle_with_problems_is_refused(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(workspace, "clear: 170 mm", "clear: 170")
    assert run(workspace, OTTER, "radio-main/4") == 1
    assert "undertrim check" in capsys.readouterr().err


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
