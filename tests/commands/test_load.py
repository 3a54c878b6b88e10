"""The load command from the shell's side."""

import json

import pytest

from undertrim.cli import main


# 1/sum(1/Z), the sum, and two series pairs in parallel
@pytest.mark.parametrize(
    ("typed", "ohms"),
    [
        (["4", "4", "--wired", "parallel"], 2),
        (["4 ohm", "4.0", "--wired", "series"], 8),
        (["4+4 | 4+4"], 4),
        (["2.7"], 2.7),
    ],
)
def test_adds_up(capsys: pytest.CaptureFixture[str], typed: list[str], ohms: float) -> None:
    assert main(["load", *typed, "--format", "json"]) == 0
    assert json.loads(capsys.readouterr().out)["load"]["ohms"] == pytest.approx(ohms)


def test_a_low_load_is_noted_and_the_limit_is_the_users(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["load", "4", "4", "--wired", "parallel"]) == 0
    assert "below the 4 ohm that outputs usually allow (common practice)" in capsys.readouterr().out
    assert main(["load", "4", "4", "--wired", "parallel", "--least", "2 ohm"]) == 0
    assert "below" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (["4", "4"], "say how the speakers are wired: --wired parallel or --wired series"),
        (["4+"], "a speaker is missing at the end; write ohms with + for series"),
        (["4", "four", "--wired", "series"], "a speaker: 'four' cannot be read as a number and a unit"),
        (["4", "0", "--wired", "series"], "the speaker 2 '0 mohm' cannot be right"),
        (["4", "--least", "4 V"], "--least: '4 V' is a voltage, not a resistance"),
    ],
)
def test_slips_say_the_way_out(capsys: pytest.CaptureFixture[str], typed: list[str], said: str) -> None:
    assert main(["load", *typed]) == 2
    assert said in capsys.readouterr().err
