"""Sizes of cable against published tables and GNU units."""

import shutil
import subprocess

import pytest

from undertrim.derive.electrical import metals
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.conductors import SCHEMES, diameter, size, sizes
from undertrim.words import sentence, way_out


# ASTM B258: 36 AWG is 0.0050 in and 4/0 is 0.4600 in exactly; 10 and 4 from GNU units 2.22, wiregauge()
@pytest.mark.parametrize(("gauge", "mm"), [(36, 0.127), (-3, 11.684), (10, 2.5881867), (4, 5.18940)])
def test_diameters_of_the_standard(gauge: int, mm: float) -> None:
    assert diameter(gauge) == pytest.approx(mm, rel=1e-6)


@pytest.mark.skipif(not shutil.which("units"), reason="GNU units is not installed")
@pytest.mark.parametrize("gauge", [0, 1, 4, 10, 18, 22, 36, 40])
def test_diameters_agree_with_gnu_units(gauge: int) -> None:
    said = subprocess.run(
        ["units", "--terse", "--digits", "12", f"wiregauge({gauge})", "mm"], capture_output=True, text=True, check=True
    )
    assert diameter(gauge) == pytest.approx(float(said.stdout), rel=1e-9)


# ohm per 1000 ft at 20 °C of solid copper, NBS-style wire table (NBS Handbook 100; values from a secondary text)
@pytest.mark.parametrize(
    ("name", "per_1000_ft"),
    [("12", 1.588), ("14", 2.525), ("16", 4.016), ("18", 6.385), ("20", 10.15), ("22", 16.14)],
)
def test_resistance_agrees_with_the_copper_wire_table(name: str, per_1000_ft: float) -> None:
    assert size("awg", name).resistance * 304.8 == pytest.approx(per_1000_ft, rel=1e-3)


# circular mils: SAE J1127/J1128 as in marine tables (secondary) beside AWG of the same number
@pytest.mark.parametrize(
    ("name", "sae", "awg"),
    [
        ("18", 1537, 1624), ("16", 2336, 2583), ("14", 3702, 4107), ("12", 5833, 6530), ("10", 9343, 10383),
        ("8", 14810, 16510), ("6", 24538, 26251), ("4", 37360, 41741), ("2", 62450, 66371), ("1/0", 98980, 105535),
        ("2/0", 125100, 133077), ("4/0", 205500, 211600),
    ],
)  # fmt: skip
def test_sae_has_less_copper_than_awg(name: str, sae: float, awg: float) -> None:
    to_cmil = 1973.525241  # 1 mm2; a circular mil is pi/4 x (0.0254 mm)^2
    assert size("sae", name).area * to_cmil == pytest.approx(sae, rel=1e-6)
    assert size("awg", name).area * to_cmil == pytest.approx(awg, rel=5e-4)
    assert size("sae", name).resistance / size("awg", name).resistance == pytest.approx(awg / sae, rel=5e-4)


# greatest ohm/km at 20 °C, IEC 60228 class 5 (two secondary tables agree)
IEC = {
    "0.5": 39.0, "0.75": 26.0, "1": 19.5, "1.5": 13.3, "2.5": 7.98, "4": 4.95, "6": 3.30, "10": 1.91, "16": 1.21,
    "25": 0.780, "35": 0.554, "50": 0.386,
}  # fmt: skip


def test_metric_sizes_are_those_of_the_standard() -> None:
    assert {one.name: one.resistance * 1000 for one in sizes("metric")} == pytest.approx(IEC)


@pytest.mark.parametrize("name", IEC)
def test_the_greatest_allowed_is_above_solid_copper(name: str) -> None:
    """The class-5 maximum lies 11 to 16 % above resistivity over area."""
    assert 1.10 < IEC[name] / (0.017241 / float(name) * 1000) < 1.17


# R20 (1 + 0.00393 (t - 20)), IACS copper
@pytest.mark.parametrize(("celsius", "times"), [(20, 1), (60, 1.1572), (105, 1.33405)])
def test_warm_copper_resists_more(celsius: float, times: float) -> None:
    ten = size("awg", "10")
    assert metals.resistance(ten, celsius) / ten.resistance == pytest.approx(times, rel=1e-6)


def test_clad_aluminium_is_a_default_that_can_be_changed() -> None:
    assert (metals.factor("copper-clad").value, metals.factor("copper-clad").origin) == (1.6, "usual")
    assert (metals.factor("copper-clad", 1.5).value, metals.factor("copper-clad", 1.5).origin) == (1.5, "given")
    ten = size("awg", "10")
    assert metals.resistance(ten, 20, 1.6) == pytest.approx(1.6 * ten.resistance)


@pytest.mark.parametrize("scheme", SCHEMES)
def test_sizes_go_from_thin_to_thick(scheme: str) -> None:
    areas = [one.area for one in sizes(scheme)]
    assert areas == sorted(areas)
    resisted = [one.resistance for one in sizes(scheme)]
    assert resisted == sorted(resisted, reverse=True)


# the AWG row with no more copper: 4 mm2 lies between 12 AWG (3.31) and 10 AWG (5.26), 50 between 1 (42.4) and 1/0 (53.5)
@pytest.mark.parametrize(("metric", "gauge"), [("0.75", ""), ("1", "18"), ("4", "12"), ("6", "10"), ("50", "1")])
def test_metric_sizes_take_the_row_of_the_next_thinner_gauge(metric: str, gauge: str) -> None:
    assert size("metric", metric).gauge == gauge


@pytest.mark.parametrize(
    ("scheme", "name"), [("awg", "41"), ("awg", "0"), ("awg", "5/0"), ("awg", "04"), ("sae", "22"), ("metric", "3")]
)
def test_a_size_that_does_not_exist_is_refused_with_those_that_do(scheme: str, name: str) -> None:
    with pytest.raises(Refused) as error:
        size(scheme, name)
    assert sentence(error.value.said) == f"no {scheme} cable of size '{name}'"
    assert f", {sizes(scheme)[3].name}, " in way_out(error.value.said)
