"""The cable command from the shell's side."""

import json
from typing import Any

import pytest

from undertrim.cli import main
from undertrim.record.units import parse


def data(capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 0) -> Any:
    assert main(["cable", *arguments, "--format", "json"]) == code
    return json.loads(capsys.readouterr().out)


def test_chooses_for_a_power_and_shows_the_supply_current(capsys: pytest.CaptureFixture[str]) -> None:
    """1000 W / (0.8 x 13.8 V) is 90.6 A; worked by hand."""
    found = data(capsys, "--power", "1000 W", "--efficiency", "0.8", "--length", "5 m", "--insulation", "105")
    assert found["supply"]["current"] == pytest.approx(90.6, abs=0.05)
    assert found["cable"]["numbers"][0]["value"] == found["supply"]["current"]
    assert found == data(capsys, "--power", "1 kW", "--efficiency", "80 %", "--length", "500 cm", "--insulation", "105")


def test_every_option_reaches_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    typed = (
        "--current 60A --length 16ft --return body --body 0.5mohm --voltage 14.4V --limit 4% --cable sae --metal copper-clad "
        "--times 1.5 --insulation 90 --where engine --conductor 140°F --fuse 80A --share 75%"
    )
    found = {one["label"]: one["value"] for one in data(capsys, *typed.split())["cable"]["numbers"]}
    expected = {
        "current": 60,
        "length out": 16 * 0.3048,
        "resistance of the body": 0.0005,
        "voltage": 14.4,
        "drop at most": 0.04,
        "resistance against copper": 1.5,
        "insulation bears": 90,
        "factor for the engine space": 0.82,
        "temperature of the conductor": 60,
        "fuse": 80,
        "load of the fuse at most": 0.75,
    }
    assert {name: found[name] for name in expected} == pytest.approx(expected)


def test_the_text_says_what_decides_and_where_the_numbers_come_from(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cable", "--current", "80 A", "--length", "5 m", "--insulation", "105"]) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert text.startswith("2 AWG, fuse 100 A: 0.4101 V lost, 2.972 % of 13.8 V; the drop decides")
    assert "- carry 80 A: 8 AWG or thicker" in text
    assert "length back 5 m (16.4 ft) (usual)" in text
    assert "the cable carries 210 A (33 CFR 183.425, Table 5)" in text
    assert text.endswith("The maker's information, local codes and licensed practice come first.")


def test_a_size_at_hand_is_shown_as_well(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, "--current", "60 A", "--length", "5 m", "--size", "4")
    assert found["drop"]["volts"] == pytest.approx(0.489, abs=5e-4)
    assert "cable" in found


def test_no_cable_is_a_problem_found(capsys: pytest.CaptureFixture[str]) -> None:
    assert data(capsys, "--current", "300 A", "--length", "20 m", code=1)["cable"]["size"] is None


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (["--current", "60", "--length", "5 m"], "undertrim: --current: '60' has no unit; write '60 mA' or '60 A'\n"),
        (["--current", "60 A", "--length", "5 V"], "--length: '5 V' is a voltage, not a length"),
        (["--current", "5000 A", "--length", "5 m"], "the current '5000 A' cannot be right; it must be from 1 mA to 1000 A"),
        (["--current", "60 A", "--length", "5 m", "--efficiency", "0.8"], "--efficiency goes with --power"),
        (["--current", "60 A", "--length", "5 m", "--body", "1 mohm"], "--body goes with --return body"),
        (["--current", "60 A", "--length", "5 m", "--size", "41"], "no awg cable of size '41'; write one of 22, 20,"),
        (["--power", "60 W", "--length", "5 m", "--efficiency", "good"], "--efficiency: 'good' cannot be read"),
        (["--power", "60 W", "--length", "5 m", "--efficiency", "nan"], "--efficiency: 'nan' cannot be read"),
        (["--power", "60 W", "--length", "5 m", "--efficiency", "80"], "--efficiency: '80' has no unit; write '80 %'"),
        (["--current", "60 A", "--length", "5 m", "--share", "0.8"], "--share: '0.8' has no unit; write '80 %' for 0.8 of the whole"),
        (["--current", "60 A", "--length", "5 m", "--limit", "0.03"], "--limit: '0.03' has no unit; write '3 %' for 0.03 of the whole"),
    ],
)  # fmt: skip
def test_slips_say_the_way_out(capsys: pytest.CaptureFixture[str], typed: list[str], said: str) -> None:
    assert main(["cable", *typed]) == 2
    assert said in capsys.readouterr().err


def test_new_kinds_of_quantity_keep_milli_and_mega_apart() -> None:
    assert parse("220 uF", "capacitance").value == pytest.approx(220e-6)
    assert parse("0.5 mH", "inductance").value == pytest.approx(0.5e-3)
    with pytest.raises(ValueError, match="unit 'MF' in '1 MF' is not known"):
        parse("1 MF", "capacitance")
