"""Cable runs as data: words of the way, and cables held against ASTM B258, IEC 60228 and 33 CFR 183.425."""

import math
from typing import Any

import pint
import pytest

from making import record
from undertrim.publish.encoding import said
from undertrim.publish.facts.runs import RunCable, runs
from undertrim.words import say

Data = dict[str, Any]
_CAR = """
parts:
  factory-radio: {replaced: yes}
openings:
  dash: {behind: [factory-radio]}
variants:
  seat: {ask: Which, choices: {plain: {label: Plain seat, tell: No lever}, power: {label: Power seat, tell: A lever}}}
"""


def run(body: str) -> Data:
    made = runs(record(_CAR, f"runs:\n  way: {{name: To the back, from: Battery, to: Boot floor, {body}}}\n"))
    assert len(made) == 1
    return dict(said(made[0]))


def cables(body: str) -> dict[str, RunCable]:
    return {cable["current"]: RunCable(**cable) for cable in run(body)["cables"]}


def awg_resistance(gauge: int) -> float:
    """Ohm per metre at 20 °C of solid annealed copper, 58.0 MS/m (IACS), with the diameters of ASTM B258."""
    area = math.pi / 4 * (0.127e-3 * 92 ** ((36 - gauge) / 39)) ** 2
    return float(1 / (58.0e6 * area))


GAUGES = {"8": 8, "6": 6, "4": 4, "2": 2, "1": 1, "1/0": 0, "2/0": -1}
# IEC 60228, table 3 (class 5, plain copper), ohm/km at 20 °C.
IEC = {"6": 3.30, "10": 1.91, "16": 1.21, "25": 0.780, "35": 0.554, "50": 0.386, "70": 0.272, "95": 0.206}


@pytest.mark.parametrize("current", ["30", "60", "90"])
@pytest.mark.parametrize("metres", [3.0, 4.2, 5.9])
def test_a_long_cable_is_the_thinnest_that_loses_no_more_than_three_per_cent(metres: float, current: str) -> None:
    found = cables(f"length: {metres} m, engine: yes")[f"{current} A"]
    most = 0.03 * 13.8 / (float(current) * 2 * metres)
    awg = next(name for name, gauge in GAUGES.items() if awg_resistance(gauge) <= most)
    metric = next(name for name, ohm in IEC.items() if ohm / 1000 <= most)
    assert found.awg == f"{awg} AWG"
    assert found.metric == f"{metric} mm²"
    assert "the voltage lost" in say(found.why)


def test_a_short_cable_is_bound_by_what_its_fuse_lets_through() -> None:
    # 33 CFR 183.425, table 5, 80 °C: 8 AWG carries 70 A, 6 AWG 100 A. A fuse for 60 A loaded to 80 % is 75 A or more: 6 AWG.
    short = cables("length: 0.5 m, engine: no")["60 A"]
    assert (short.awg, short.fuse, short.why) == ("6 AWG", "80 A", "its fuse")


def test_an_engine_space_asks_for_insulation_that_bears_it() -> None:
    # Note 1 of the table: 105 °C keeps 0.85 in an engine space. 8 AWG: 80 A x 0.85 = 68 A, 6 AWG: 120 A x 0.85 = 102 A for the fuse of 80 A.
    hot = run("length: 0.5 m, engine: yes")
    assert {cable["current"]: cable["awg"] for cable in hot["cables"]}["60 A"] == "6 AWG"
    assert "insulation bears 105 °C" in hot["assumed"]
    assert "insulation bears 80 °C" in run("length: 0.5 m, engine: no")["assumed"]
    # 90 A, fuse 125 A: 4 AWG has 130 A in the cabin at 80 °C and 160 A x 0.85 = 136 A beside the engine at 105 °C.
    assert cables("length: 0.5 m, engine: no")["90 A"].awg == "4 AWG"
    assert cables("length: 0.5 m, engine: yes")["90 A"].awg == "4 AWG"


@pytest.mark.parametrize("length", ["16 mm", "900 m"])
def test_a_length_that_cannot_be_is_said_and_nothing_is_reckoned(length: str) -> None:
    """It passes the check with a warning; the page of the vehicle is made all the same."""
    made = run(f"length: {length}")
    assert made["cables"] == []
    assert "cannot be right" in made["assumed"]


def test_what_is_unknown_of_the_engine_space_is_taken_as_the_worse() -> None:
    unknown, hot = run("length: 5 m, engine: unknown"), run("length: 5 m, engine: yes")
    assert unknown["cables"] == hot["cables"]
    assert unknown["assumed"] == hot["assumed"]
    assert unknown["engine"] == "whether it passes the engine space is unknown: taken as if it does"


def test_without_a_length_nothing_is_named() -> None:
    made = run("length: unknown, engine: no")
    assert say(made["length"]) == "unknown"
    assert made["cables"] == []
    assert made["assumed"] == "The cable for an amplifier cannot be told without the length."


def test_the_way_back_and_the_share_are_said() -> None:
    said = run("length: 5 m, engine: no")["assumed"]
    assert "out and back by wire of the same length" in said
    assert "loses at most 3 % of 13.8 V" in said
    assert "within 0.45 m (17.72 in)" in said


def test_length_in_both_systems() -> None:
    feet = pint.UnitRegistry().Quantity(5.4, "meter").to("foot").magnitude
    assert run("length: 5.4 m, engine: no")["length"] == f"5.4 m ({feet:.1f} ft)"


def test_passes_stay_in_order_with_what_protects_the_cable() -> None:
    made = run(
        "length: 5 m, engine: no, passes: [{where: Bulkhead, through: edge}, {where: Below the sill, through: channel}, "
        "{where: Wall, through: grommet}, {where: Floor, through: unknown}]"
    )
    assert made["passes"] == [
        "Bulkhead: over a bare edge: fit a grommet",
        "Below the sill: in the channel of the trim",
        "Wall: through the grommet that is there",
        "Floor: what protects the cable there is unknown: look first",
    ]


def test_a_run_of_some_cars_says_so() -> None:
    made = run("length: 5 m, engine: no, when: {seat: power}")
    assert (say(made["when"]), made["clauses"]) == ("Power seat", {"seat": ["power"]})


def test_a_current_for_which_nothing_is_listed_says_so() -> None:
    # 99 m out and 99 m back at 90 A ask for 23 µohm/m: no cable on the list.
    long = cables("length: 99 m, engine: no")["90 A"]
    assert (long.awg, long.metric) == ("none listed will do", "none listed will do")
    assert long.why == "the voltage lost"
