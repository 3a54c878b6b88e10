"""Questions to the meter logic with the answers of Python: fixed ones and random ones by seed. A browser must give the same."""

import math
import random
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from undertrim.derive.wiring.asking import next_reading
from undertrim.derive.wiring.functions import Band, functions
from undertrim.derive.wiring.ladder import Rung, place
from undertrim.derive.wiring.measured import Measured
from undertrim.derive.wiring.meter import Candidate, Finding, consider, weigh
from undertrim.derive.wiring.readings import Reading, ReadingError, read
from undertrim.derive.wiring.suspects import suspicions
from undertrim.publish.encoding import said
from undertrim.publish.facts.meter import rung_data
from undertrim.words import say, sentence, way_out

TEXTS = (
    "12.6 V key off", "  12.6\tV\u00a0 key   off ", "12.6V key off", "0 V key on", "-0.2 V key off", "−0.2 V key off", "+3 V reverse",
    ".5 V key off", "450 mV key on", "2 millivolts key on", "1.2 V AC radio on", "1.2 VAC, radio playing", "200 mVAC radio on",
    "12.4 V DC ignition on", "12.4 VDC key on (engine off)", "3.6 ohm across the pair", "60 ohms between the pair key off",
    "330 ohm", "330Ω", "4.7k", "4.7 kΩ to ground", "1.5 Mohm", "1.5 mohm", "1 \u2126", "open", "OL across the pair", "o.l brake off",
    "∞ brake on", "0.3 ohm parking brake applied", "0 V key on, parking brake on", "12 V reverse with the key on",
    "12.6 V lamps on, dimmed", "6.02 V lights on dimmed", "14.2 V running key on", "0 V parking brake off, wheels chocked (volts: key on)",
    "5 ohm key on", "1 V AC DC key on", "", "   ", "volts", "12", "12 V", "12,6 V key off", "12 W key on", "12 kV key on", "12 V key sideways",
    "12 V key off key on", "0 V reverse running", "-3 ohm", "-1 V AC radio on", "3 ohm AC", "3 V AC DC radio on", "3 V across the pair radio on",
    "12.6.3 V key off", "1e3 V key on", "12.6 V key off" + " and" * 20, "7 " + "x" * 45, "½ V key on", "１２ V key on", "12 V\u2028key on",
    "3 V {word} {states}", "3 V constructor", "3 toString key on", "😀" * 10 + " V", "9 V " + "😀" * 45, "0 V key off 😀",
)  # fmt: skip

SETS: tuple[tuple[str, ...], ...] = (
    (),
    ("12.6 V key off",),
    ("12.6 V key off", "12.4 V key on"),
    ("12.6 V key off", "0 V key on"),
    ("0 V key off", "12.4 V key on", "12.4 V accessory"),
    ("0 V key off", "0 V key on", "3.6 ohm across the pair"),
    ("0 V key off", "0.2 ohm"),
    ("0.00 V key off", "60.2 ohm across the pair", "2.7 V key on"),
    ("2.5 V key off", "60 ohm across the pair"),
    ("0 V key off", "open brake off", "0.4 ohm brake on"),
    ("0 V key off", "4 ohm key on"),
    ("2.1 ohm across the pair",),
    ("0.0 ohm across the pair", "0 V key off"),
    ("12.6 V key off", "0 V asleep", "12.4 V key on"),
    ("12.6 V asleep", "12.6 V key off"),
    ("24.6 V key off",),
    ("-12.4 V key off", "0 V key on"),
    ("120 ohm across the pair", "2.5 V key on"),
    ("31 V AC radio on",),
    ("11.4 V key off",),
    ("11.39 V key off",),
    ("11 V key off",),
    ("6 V key on",),
    tuple(f"0 V {state.says[0]}" for state in functions().states.values()),
    tuple(f"0 V {state.says[0]}" for state in functions().states.values() if state.id != "key-off"),
)
NARROWED = (
    (("4.1 V lamps dimmed", "12 V lamps on"), "illumination", "dimmed-plus", 24.0),
    (("4.1 V lamps dimmed", "6 V lamps on"), "illumination", "", 6.0),
    (("8.1 V radio on",), "antenna-feed", "on-off", 8.0),
    (("0 V key on",), "illumination", "message", None),
)


@dataclass(frozen=True, slots=True)
class Case:
    """One question as JSON, and Python's answer to it as JSON."""

    ask: dict[str, Any]
    answer: Any


def cases(seed: int = 20261125, number: int = 400) -> list[Case]:
    """All questions."""
    chance = random.Random(seed)  # noqa: S311 - no secret
    texts = [*TEXTS, *(_text(chance) for _ in range(number))]
    sets = [*SETS, *(_set(chance) for _ in range(number // 2))]
    return [
        *map(_reading_case, texts),
        *(_narrowed(*one) for one in NARROWED),
        *(case for taken in sets for case in _weighing(chance, taken)),
        *_ladders(chance),
    ]


def _text(chance: random.Random) -> str:
    """A text that is mostly a reading, some of it spoilt."""
    number = (
        f"{chance.uniform(-1, 14):.{chance.randrange(4)}f}" if chance.random() < 0.7 else str(chance.randrange(20000))
    )
    unit = chance.choice(
        ["V", " V", " mV", " ohm", " ohms across the pair", " kohm", " V AC", "k", " VAC", " Ohm", " volts DC", ""]
    )
    states = [phrase for state in functions().states.values() for phrase in state.says]
    tail = " ".join(chance.sample(states, chance.choice([0, 1, 1, 1, 1, 2])))
    text = f"{number}{unit} {tail}"
    if chance.random() < 0.15:
        at = chance.randrange(len(text))
        text = text[:at] + chance.choice(" ,.-xΩ\t(") + text[at + chance.randrange(2) :]
    return text


def _set(chance: random.Random) -> tuple[str, ...]:
    """Readings that can be read: near the ends of bands, where the two could differ."""
    ends = [end for band in functions().bands.values() for end in (band.low, band.high) if math.isfinite(end)]
    found: list[str] = []
    while len(found) < chance.choice([1, 2, 3, 4]):
        kind = chance.choice(list(functions().kinds.values()))
        value = abs(chance.choice(ends) + chance.choice([0, 0.1, -0.1, 0.01, -0.01, 0.5]))
        how = {"volts": "V", "ac": "V AC", "ohms": "ohm", "pair": "ohm across the pair"}[kind.id]
        found.append(
            f"{value:.{chance.choice([0, 1, 2])}f} {how} {chance.choice(list(functions().states.values())).says[0]}"
        )
    return tuple(found)


def _reading_case(text: str) -> Case:
    try:
        answer: Any = _reading(read(text))
    except ReadingError as error:
        answer = {"id": error.id, "message": sentence(error.said), "hint": way_out(error.said)}
    return Case({"do": "read", "text": text}, answer)


def _reading(one: Reading) -> dict[str, Any]:
    value = "open" if math.isinf(one.value) else one.value
    return {"text": one.text, "kind": one.kind, "state": one.state, "value": value, "step": one.step}


def _weighing(chance: random.Random, texts: tuple[str, ...]) -> Iterator[Case]:
    readings = [read(text) for text in texts]
    yield Case({"do": "weigh", "texts": texts}, [_candidate(one) for one in weigh(readings)])
    function = chance.choice(list(functions().functions.values()))
    behaves = chance.choice(
        ["", "unknown", "steady", "on-off", "closes-to-ground", "resistance", "message", "dimmed-plus"]
    )
    supply = chance.choice([None, None, 6.0, 7.3, 24.0])
    yield _narrowed(texts, function.id, behaves, supply)
    recorded = consider(function, readings, behaves, supply)
    for known in (None, recorded):
        found = suspicions(readings, known)
        answer: Any = [[one.suspect.id, one.suspect.stop, list(one.readings)] for one in found]
        ask = {"function": known and function.id, "behaves": behaves, "supply": supply}
        yield Case({"do": "suspicions", "texts": texts, **ask}, answer)
    for about in (None, function):
        asked = next_reading(readings, about)
        answer = asked and {
            "kind": asked.kind,
            "state": asked.state,
            "outcomes": [[_band(outcome.band), list(outcome.functions)] for outcome in asked.outcomes],
        }
        yield Case({"do": "next", "texts": texts, "function": about and about.id}, answer)


def _narrowed(texts: tuple[str, ...], name: str, behaves: str, supply: float | None) -> Case:
    ask = {"do": "consider", "texts": texts, "function": name, "behaves": behaves, "supply": supply}
    readings = [read(text) for text in texts]
    return Case(ask, _candidate(consider(functions().functions[name], readings, behaves, supply)))


def _candidate(one: Candidate) -> list[Any]:
    pattern = one.pattern.id if one.pattern else None
    return [one.function.id, pattern, one.standing, [_finding(found) for found in one.findings]]


def _finding(found: Finding) -> list[Any]:
    return [found.verdict, _band(found.band) if found.band else None, found.sure, found.why]


def _band(band: Band) -> list[Any]:
    return [band.id, say(band.words), band.low, "open" if math.isinf(band.high) else band.high]


def _ladders(chance: random.Random) -> Iterator[Case]:
    for _ in range(60):
        steps = sorted(
            (_rung(chance, index) for index in range(chance.randrange(6))), key=lambda rung: (rung.low, rung.high)
        )
        ends = [end for rung in steps for end in (rung.low, rung.high)]
        for ohms in [*chance.sample(ends, min(3, len(ends))), chance.uniform(0, 12000), math.inf]:
            found = place(steps, ohms)
            near = [one and one.name for one in (found.below, found.above)]
            ask = {
                "do": "place",
                "rungs": said([rung_data(rung) for rung in steps]),
                "ohms": "open" if math.isinf(ohms) else ohms,
            }
            yield Case(ask, [found.kind, [rung.name for rung in found.rungs], *near])
    for value in (0, 0.5, -0.3, 11.4, 313.5, 346.5, 999.99, 1000, 4700, 1e6, 9999000):
        yield Case({"do": "measured", "value": value}, [say(Measured(value, unit)) for unit in ("V", "ohm")])


def _rung(chance: random.Random, index: int) -> Rung:
    if chance.random() < 0.1:
        return Rung("idle", 1e6, math.inf, idle=True)
    nominal = chance.choice([0.0, 47.0, 100.0, 330.0, 680.0, 1000.0, 2200.0, 4700.0, 10000.0])
    return Rung(f"button-{index}", nominal * 0.95, nominal * 1.05, idle=chance.random() < 0.1)
