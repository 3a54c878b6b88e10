"""Inputs of the electrical calculators, published ones and random ones, for Python and for the page's script alike."""

import random
from collections.abc import Callable, Mapping
from typing import Any

from undertrim.derive.electrical import (
    cable,
    delay,
    drop,
    filters,
    fuses,
    impedance,
    levels,
    rest,
    supply,
    tweeter_parts,
)
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.cable import Wishes
from undertrim.derive.electrical.conductors import sizes
from undertrim.derive.electrical.drop import Path
from undertrim.publish.encoding import said
from undertrim.resources import table
from undertrim.words import sentence, way_out

Arguments = Mapping[str, Any]
Vector = tuple[str, Arguments]

CALLS: dict[str, Callable[..., Any]] = {
    "supply": supply.supply,
    "drop": lambda path, scheme, name: drop.drop(Path(**path), scheme, name),
    "cable": lambda path, wishes: cable.choose(Path(**path), Wishes(**wishes)),
    "readings": fuses.readings,
    "wired": impedance.wired,
    "arranged": impedance.arranged,
    "filterAt": filters.at,
    "filterOfCapacitor": filters.of_capacitor,
    "filterOfCoil": filters.of_coil,
    "crossover": tweeter_parts.crossover,
    "pad": tweeter_parts.pad,
    "gain": levels.gain,
    "change": levels.change,
    "ratio": levels.ratio,
    "delays": delay.delays,
    "rest": rest.rest,
}


def answered(vector: Vector) -> Any:
    """What Python makes of a vector, as plain data; a refusal is data as well."""
    name, arguments = vector
    try:
        answer = CALLS[name](**arguments)
    except Refused as error:
        return {"refused": sentence(error.said), "hint": way_out(error.said)}
    return said(answer)


def _path(amps: float, out: float, **other: Any) -> Arguments:
    return {"current": amps, "out": out, **other}


FIXED: list[Vector] = [
    ("drop", {"path": _path(60, 5), "scheme": "awg", "name": "4"}),
    ("drop", {"path": _path(30, 5), "scheme": "awg", "name": "8"}),
    ("drop", {"path": _path(20, 5), "scheme": "metric", "name": "4"}),
    ("drop", {"path": _path(60, 5, back="body"), "scheme": "sae", "name": "4"}),
    ("drop", {"path": _path(60, 5), "scheme": "awg", "name": "41"}),
    ("cable", {"path": _path(80, 5), "wishes": {"insulation": 105}}),
    ("cable", {"path": _path(24, 0.5), "wishes": {"insulation": 105}}),
    ("cable", {"path": _path(24, 0.5), "wishes": {"insulation": 80}}),
    ("cable", {"path": _path(24, 0.5), "wishes": {"fuse": 25}}),
    ("cable", {"path": _path(24, 0.5), "wishes": {"fuse": 20}}),
    ("cable", {"path": _path(0.5, 1), "wishes": {}}),
    ("cable", {"path": _path(400, 20), "wishes": {"scheme": "metric"}}),
    ("cable", {"path": _path(20, 5), "wishes": {"insulation": 100}}),
    ("cable", {"path": _path(20, 5), "wishes": {"scheme": "inch"}}),
    ("cable", {"path": _path(20, 5, metal="tin"), "wishes": {}}),
    ("cable", {"path": _path(20, 5), "wishes": {"place": "roof"}}),
    ("supply", {"power": 1000, "efficiency": 0.8}),
    ("supply", {"power": 400}),
    ("supply", {"power": -400}),
    ("readings", {"colour": "red"}),
    ("readings", {"colour": "mauve"}),
    ("wired", {"ohms": [8, 8, 8, 8], "how": "parallel"}),
    ("wired", {"ohms": [8], "how": "series"}),
    ("wired", {"ohms": [], "how": "series"}),
    *(
        ("arranged", {"text": text})
        for text in [
            "4+4 | 4+4", "4", " (4|4)+ 2 ", "", "4+", "|4", "4 4", "(4", "4)", "4 ohm", "4|0", "1e3", "𝟜",
            "(" * 21 + "4" + ")" * 21, "4+" * 120 + "4",
        ]
    ),
    ("filterAt", {"frequency": 100, "load": 4}),
    ("filterAt", {"frequency": 0.5, "load": 4}),
    ("filterOfCapacitor", {"capacitance": 10e-6, "load": 8}),
    ("filterOfCoil", {"inductance": 0.5e-3, "load": 4}),
    ("crossover", {"frequency": 3000, "load": 4, "alignment": "butterworth"}),
    ("crossover", {"frequency": 3000, "load": 4, "alignment": "linkwitz-riley"}),
    ("crossover", {"frequency": 0.5, "load": 4, "alignment": "butterworth"}),
    ("crossover", {"frequency": 3000, "load": 4, "alignment": "bessel"}),
    ("pad", {"decibels": 3, "load": 4}),
    ("pad", {"decibels": 6, "load": 8, "power": 50}),
    ("pad", {"decibels": -3, "load": 4}),
    ("pad", {"decibels": 3, "load": 4, "power": 0}),
    ("gain", {"power": 100, "load": 4}),
    ("gain", {"power": 500, "load": 1}),
    ("change", {"decibels": -5}),
    ("change", {"decibels": 0}),
    ("ratio", {"voltage": 2, "against": 1}),
    ("delays", {"distances": [2.0, 1.0], "air": 20}),
    ("delays", {"distances": [1.37, 0.94, 1.37]}),
    ("delays", {"distances": [1.37]}),
    ("rest", {"capacity": 60, "current": 0.05}),
    ("rest", {"capacity": 60, "current": 0.5}),
    ("rest", {"capacity": 60, "current": 0}),
]  # fmt: skip
"""Published examples, the edges of each condition, and refusals."""


def randoms(seed: int, count: int) -> list[Vector]:
    """So many vectors of every kind; the same for the same seed."""
    dice = random.Random(seed)  # noqa: S311 - no secret
    return [_one(dice) for _ in range(count)]


def _one(dice: random.Random) -> Vector:
    name = dice.choice([*_MAKERS, "cable", "cable", "cable"])
    return name, _MAKERS[name](dice)


def _near(dice: random.Random, least: float, most: float) -> float:
    """Mostly within, now and then outside; long and short numbers."""
    value = least * (most / least) ** dice.uniform(-0.02, 1.02)
    return float(f"{value:.{dice.choice([1, 2, 3, 17])}g}")


def _maybe(dice: random.Random, **values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if dice.random() < 0.5}


def _some_path(dice: random.Random) -> dict[str, Any]:
    back = dice.choice([None, "body", _near(dice, 0.1, 30)])
    return {
        **_path(_near(dice, 0.1, 400), _near(dice, 0.1, 30), back=back),
        **_maybe(
            dice,
            metal=dice.choice(["copper", "copper-clad"]),
            times=_near(dice, 1, 3),
            body=_near(dice, 1e-4, 0.1),
            voltage=_near(dice, 6, 50),
            conductor=dice.uniform(-30, 150),
        ),
    }


def _some_cable(dice: random.Random) -> Arguments:
    wishes = _maybe(
        dice,
        insulation=dice.choice(table("electrical-ampacity")["insulation"]),
        place=dice.choice(["cabin", "engine"]),
        limit=_near(dice, 0.005, 0.4),
        share=_near(dice, 0.5, 1),
    )
    fuse = {"fuse": _near(dice, 1, 300)} if dice.random() < 0.2 else {}
    return {"path": _some_path(dice), "wishes": {"scheme": dice.choice(["awg", "sae", "metric"]), **wishes, **fuse}}


def _some_drop(dice: random.Random) -> Arguments:
    scheme = dice.choice(["awg", "sae", "metric"])
    return {"path": _some_path(dice), "scheme": scheme, "name": dice.choice(sizes(scheme)).name}


def _arrangement(dice: random.Random, depth: int = 0) -> str:
    if depth > 3 or dice.random() < 0.4:
        return f"{_near(dice, 0.5, 50):.3f}"
    inner = dice.choice([" | ", "+", "|"]).join(_arrangement(dice, depth + 1) for _ in range(dice.randint(2, 3)))
    return f"({inner})" if dice.random() < 0.5 else inner


_MAKERS: dict[str, Callable[[random.Random], Arguments]] = {
    "supply": lambda dice: {
        "power": _near(dice, 1, 20000),
        **_maybe(dice, efficiency=_near(dice, 0.1, 1), voltage=_near(dice, 6, 50)),
    },
    "drop": _some_drop,
    "cable": _some_cable,
    "wired": lambda dice: {
        "ohms": [_near(dice, 0.5, 50) for _ in range(dice.randint(1, 6))],
        "how": dice.choice(["parallel", "series"]),
        **_maybe(dice, least=_near(dice, 0.5, 8)),
    },
    "arranged": lambda dice: {"text": _arrangement(dice)},
    "filterAt": lambda dice: {"frequency": _near(dice, 1, 1e5), "load": _near(dice, 0.1, 1000)},
    "filterOfCapacitor": lambda dice: {"capacitance": _near(dice, 1e-9, 1), "load": _near(dice, 0.1, 1000)},
    "filterOfCoil": lambda dice: {"inductance": _near(dice, 1e-9, 1), "load": _near(dice, 0.1, 1000)},
    "crossover": lambda dice: {
        "frequency": _near(dice, 1, 1e5),
        "load": _near(dice, 0.1, 1000),
        "alignment": dice.choice(["butterworth", "linkwitz-riley"]),
    },
    "pad": lambda dice: {
        "decibels": _near(dice, 0.1, 40),
        "load": _near(dice, 0.1, 1000),
        **_maybe(dice, power=_near(dice, 0.01, 20000)),
    },
    "gain": lambda dice: {"power": _near(dice, 0.01, 20000), "load": _near(dice, 0.1, 1000)},
    "change": lambda dice: {"decibels": dice.choice([dice.uniform(-125, 125), dice.randint(-60, 60)])},
    "ratio": lambda dice: {"voltage": _near(dice, 1e-4, 1000), "against": _near(dice, 1e-4, 1000)},
    "delays": lambda dice: {
        "distances": [_near(dice, 0.1, 20) for _ in range(dice.randint(2, 8))],
        **_maybe(dice, air=dice.uniform(-40, 85)),
    },
    "rest": lambda dice: {
        "capacity": _near(dice, 1, 1000),
        "current": _near(dice, 0.001, 10),
        **_maybe(dice, share=_near(dice, 0.1, 1)),
    },
}
