"""The reckon command from the shell's side; the numbers are those of tests/derive/electrical."""

import json

import pytest

from undertrim.cli import main


@pytest.mark.parametrize(
    ("typed", "field", "value"),
    [
        (["gain", "100 W", "4 ohm"], "volts", 20),
        (["gain", "500 W", "1"], "volts", 22.36),
        (["level", "-5"], "voltage", 0.5623),
        (["level", "-5 dB"], "voltage", 0.5623),
        (["level", "1 V", "2 V"], "decibels", -6.0206),
        (["filter", "100 Hz", "4"], "capacitance", 397.9e-6),
        (["filter", "10 uF", "8"], "frequency", 1989),
        (["filter", "6.366 mH", "4"], "frequency", 100),
        (["crossover", "3 kHz", "4"], "capacitance", 9.378e-6),
        (["crossover", "3000 Hz", "4 ohm", "--kind", "linkwitz-riley"], "inductance", 424.4e-6),
        (["pad", "3", "4"], "across", 9.697),
        (["pad", "6 dB", "8", "--power", "50 W"], "series", 3.990),
        (["delay", "2 m", "1 m", "--air", "68 °F"], "speed", 343.2),
        (["rest", "60 Ah", "50 mA"], "days", 25),
        (["rest", "60 Ah", "50 mA", "--share", "25 %"], "days", 12.5),
    ],
)
def test_reckons(capsys: pytest.CaptureFixture[str], typed: list[str], field: str, value: float) -> None:
    assert main(["reckon", *typed, "--format", "json"]) == 0
    assert json.loads(capsys.readouterr().out)[typed[0]][field] == pytest.approx(value, rel=5e-4)


def test_the_colour_of_a_fuse_in_each_family(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["reckon", "fuse", "red"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("red: medium blade 10 A; miniature blade 10 A; high-current blade 50 A\n")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (["level", "loud"], "DB: 'loud' is not a number; write one such as 0.8"),
        (["filter", "10", "8"], "VALUE: '10' has no unit; write '10 Hz' or '10 kHz'"),
        (["delay", "2 m"], "1 distance makes no delay; give from 2 to 32"),
        (["rest", "60 A", "50 mA"], "CAPACITY: '60 A' is a current, not a charge"),
        (["pad", "0", "4"], "the level taken off '0 dB' cannot be right; it must be from 0.1 dB to 40 dB"),
        (["crossover", "3", "4"], "CORNER: '3' has no unit"),
        (["fuse", "mauve"], "no fuse is 'mauve'; colours: black,"),
    ],
)
def test_slips_say_the_way_out(capsys: pytest.CaptureFixture[str], typed: list[str], said: str) -> None:
    assert main(["reckon", *typed]) == 2
    assert said in capsys.readouterr().err
