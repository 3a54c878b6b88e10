"""The meter command from the shell's side: a pin, a wire on no plug, and how it refuses."""

from pathlib import Path

import pytest

from metering import OTTER, data, edit, laid_down, run, text


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    return laid_down(tmp_path)


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
