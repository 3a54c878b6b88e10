"""Drops, with the numbers of I x (out + back) x R' worked by hand; resistances as in test_conductors."""

from typing import Any

import pytest

from refusing import lines
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.drop import Path, drop
from undertrim.derive.electrical.supply import supply
from undertrim.words import say, sentence, way_out


@pytest.mark.parametrize(
    ("scheme", "name", "metres", "amps", "volts"),
    [
        ("awg", "4", 5, 60, 0.489),
        ("awg", "8", 5, 30, 0.618),
        ("awg", "16", 4, 5, 0.527),
        ("awg", "18", 3, 2, 0.251),
        ("metric", "4", 5, 20, 0.990),
        ("metric", "16", 5, 60, 0.726),
        ("awg", "8", 5, 80, 1.649),
        ("awg", "4", 5, 80, 0.652),
        ("awg", "2", 5, 80, 0.410),
        ("awg", "1/0", 5, 80, 0.258),
    ],
)
def test_out_and_back_by_wire(scheme: str, name: str, metres: float, amps: float, volts: float) -> None:
    found = drop(Path(current=amps, out=metres), scheme, name)
    assert found.volts == pytest.approx(volts, abs=6e-4)
    assert found.share == pytest.approx(volts / 13.8, abs=6e-5)
    assert "back by wire" in say(found.headline)
    assert drop(Path(current=amps, out=metres, back=metres), scheme, name).volts == found.volts


def test_forgetting_the_way_back_halves_it() -> None:
    """By the body with next to no resistance, 4 AWG over 5 m at 60 A loses 0.245 V and not 0.489 V."""
    found = drop(Path(current=60, out=5, back="body", body=1e-5), "awg", "4")
    assert found.volts == pytest.approx(0.2446 + 60 * 1e-5, abs=6e-5)


def test_the_body_adds_what_it_resists_and_says_so() -> None:
    found = drop(Path(current=60, out=5, back="body"), "awg", "4")
    assert found.volts == pytest.approx(0.2446 + 60 * 0.001, abs=6e-5)
    assert say(found.headline).endswith("5 m (16.4 ft) out and back by the body of the car")
    body = next(one for one in found.numbers if say(one.label) == "resistance of the body")
    assert (say(body.text), body.origin) == ("1 mohm", "usual")
    assert any("common practice" in note for note in lines(found.notes))
    own = drop(Path(current=60, out=5, back="body", body=0.0005), "awg", "4")
    assert own.volts == pytest.approx(0.2446 + 0.03, abs=6e-5)
    assert own.notes == ()


def test_a_wire_back_of_another_length() -> None:
    assert drop(Path(current=60, out=5, back=1), "awg", "4").volts == pytest.approx(0.489 * 6 / 10, abs=6e-4)


def test_warm_and_clad() -> None:
    plain = drop(Path(current=60, out=5), "awg", "4")
    assert plain.warm / plain.volts == pytest.approx(1.1572)
    assert drop(Path(current=60, out=5, conductor=60), "awg", "4").volts == pytest.approx(plain.warm)
    clad = drop(Path(current=60, out=5, metal="copper-clad"), "awg", "4")
    assert clad.volts == pytest.approx(1.6 * plain.volts)
    assert any("from memory" in note for note in lines(clad.notes))


# I = P / (efficiency x U), worked by hand
@pytest.mark.parametrize(
    ("watts", "share", "volts", "amps"),
    [(1000, 0.80, 13.8, 90.6), (400, 0.60, 13.8, 48.3), (400, 0.50, 13.8, 58.0), (600, 0.85, 14.4, 49.0)],
)
def test_supply_current(watts: float, share: float, volts: float, amps: float) -> None:
    assert supply(watts, share, volts).current == pytest.approx(amps, abs=0.05)


def test_usual_efficiency_is_the_cautious_one() -> None:
    assert supply(400).current == pytest.approx(58.0, abs=0.05)
    assert [one.origin for one in supply(400).numbers] == ["given", "usual", "usual", "computed"]


@pytest.mark.parametrize(
    ("path", "message"),
    [
        ({"current": -60, "out": 5}, "the current '-60 A' cannot be right"),
        ({"current": 0, "out": 5}, "the current '0 mA' cannot be right"),
        ({"current": float("nan"), "out": 5}, "the current is not a number"),
        ({"current": float("inf"), "out": 5}, "the current is not a number"),
        ({"current": 5000, "out": 5}, "the current '5000 A' cannot be right"),
        ({"current": 60, "out": 5000}, "the length out '5000 m (16404 ft)' cannot be right"),
        ({"current": 60, "out": 5, "back": 0}, "the length back '0 m (0 in)' cannot be right"),
        ({"current": 60, "out": 5, "voltage": 230}, "the voltage '230 V' cannot be right"),
        ({"current": 60, "out": 5, "metal": "gold"}, "no metal 'gold'"),
        ({"current": 60, "out": 5, "times": 0.5}, "the resistance against copper '0.5 times' cannot be right"),
    ],
)
def test_nonsense_is_refused_with_a_way_out(path: dict[str, Any], message: str) -> None:
    with pytest.raises(Refused) as error:
        drop(Path(**path), "awg", "4")
    assert sentence(error.value.said) == message
    assert way_out(error.value.said).startswith(("it must be from ", "write one of "))
