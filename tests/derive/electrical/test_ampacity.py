"""What cables carry, against 33 CFR 183.425, Table 5 and its note on engine spaces."""

import math

import pytest

from refusing import refused
from undertrim.derive.electrical.ampacity import Surroundings, ampacity, remembered
from undertrim.derive.electrical.conductors import size

# 33 CFR 183.425, Table 5, A, for insulation of 60, 75, 80, 90, 105, 125 and 200 °C
TABLE_5 = """
18  10 10 15 20 20 25 25
16  15 15 20 25 25 30 35
14  20 20 25 30 35 40 45
12  25 25 35 40 45 50 55
10  40 40 50 55 60 70 70
8   55 65 70 70 80 90 100
6   80 95 100 100 120 125 135
4   105 125 130 135 160 170 180
2   140 170 175 180 210 225 240
1   165 195 210 210 245 265 280
1/0 195 230 245 245 285 305 325
2/0 225 265 285 285 330 355 370
3/0 260 310 330 330 385 410 430
4/0 300 360 385 385 445 475 510
"""
COLUMNS = (60, 75, 80, 90, 105, 125, 200)
ROWS = [line.split() for line in TABLE_5.strip().splitlines()]


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_every_cell_of_the_table(row: list[str]) -> None:
    found = [ampacity(size("awg", row[0]), Surroundings(bears, "cabin")) for bears in COLUMNS]
    assert found == [float(amps) for amps in row[1:]]


def test_an_engine_space_takes_15_percent_of_105_degree_cable() -> None:
    """8 AWG of 105 °C: 80 A x 0.85 = 68 A (33 CFR 183.425, note 1, secondary)."""
    assert ampacity(size("awg", "8"), Surroundings(105, "engine")) == pytest.approx(68)
    assert not remembered(Surroundings(105, "engine"))


def test_other_factors_of_an_engine_space_say_that_they_are_from_memory() -> None:
    assert remembered(Surroundings(80, "engine"))
    assert not remembered(Surroundings(80, "cabin"))
    for bears in COLUMNS:
        hot, cool = (ampacity(size("awg", "8"), Surroundings(bears, place)) for place in ("engine", "cabin"))
        assert hot is not None
        assert cool is not None
        assert hot <= cool


def test_a_metal_that_resists_more_carries_less_for_the_same_heat() -> None:
    """I^2 R is the same: 1.6 times the resistance at 1/sqrt(1.6) of the current."""
    copper, clad = (ampacity(size("awg", "4"), Surroundings(105, "cabin", times)) for times in (1.0, 1.6))
    assert copper is not None
    assert clad is not None
    assert clad**2 * 1.6 == pytest.approx(copper**2)
    assert clad == pytest.approx(160 / math.sqrt(1.6))


def test_a_cable_too_thin_for_the_table_is_not_known() -> None:
    assert ampacity(size("awg", "20"), Surroundings(105, "cabin")) is None
    assert ampacity(size("metric", "0.75"), Surroundings(105, "cabin")) is None


def test_metric_and_sae_take_their_rows() -> None:
    assert ampacity(size("metric", "4"), Surroundings(105, "cabin")) == 45  # 12 AWG
    assert ampacity(size("sae", "10"), Surroundings(105, "cabin")) == 60


def test_refuses_insulation_without_a_column() -> None:
    with refused("no table for insulation of '100' °C"):
        ampacity(size("awg", "8"), Surroundings(100, "cabin"))
    with refused("no place 'boot' for a cable"):
        ampacity(size("awg", "8"), Surroundings(105, "boot"))
