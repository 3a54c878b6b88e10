"""Meter readings as people type them: "12.6 V key off", "1.2 V AC radio on", "3.6 ohm across the pair", "open brake off".

meter-readings.js reads the same texts with the same table: change both, and their shared vectors.
"""

import math
import re
import string
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim import resources
from undertrim.derive.wiring.functions import State, functions
from undertrim.words import Items, message

LONGEST = 60  # characters
_SPACE = re.compile("[ \t\n\r\f\v\u00a0]+")
_UNSHOWN = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029]")
_NUMBER = re.compile(r"([+\-−]?)([0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?(.*)")
_COMMA = re.compile(r"[+\-−]?[0-9]+,[0-9].*")
_MARKS = re.compile(r"[ ,;:()]+")
_LOWER = str.maketrans(string.ascii_uppercase, string.ascii_lowercase)


class ReadingError(ValueError):
    """A text that is no reading: `id` names what is wrong, and `said` says it, with the way out."""

    def __init__(self, id_: str, text: str, word: str = "") -> None:
        states = Items(tuple(map(short, functions().states.values())), "comma")
        self.id = id_
        self.said = message(f"readings/{id_}", text=_shown(text), word=_shown(word), states=states)
        super().__init__(self.said)


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading: value in V or ohm (infinite for an open line), `step` half of the last digit typed."""

    text: str
    kind: str
    state: str
    value: float
    step: float


@dataclass(frozen=True, slots=True)
class _Unit:
    measures: str
    ten: int
    ac: bool
    dc: bool


@dataclass(slots=True)
class _Words:
    """What the words after the unit say."""

    ac: bool
    dc: bool
    pair: bool
    states: list[str]


def read(text: str) -> Reading:
    """Read one reading. Ohms without a state were taken with the key off. Raises ReadingError."""
    tidied = _SPACE.sub(" ", text).strip(" ")
    if not tidied:
        raise ReadingError("empty", tidied)
    if len(tidied) > LONGEST:
        raise ReadingError("too-long", tidied)
    first, _, rest = tidied.partition(" ")
    if first.translate(_LOWER) in _data()["grammar"]["open"]:
        return _finished(tidied, _Unit("ohm", 0, ac=False, dc=False), math.inf, 0.0, rest)
    return _with_number(tidied)


def _with_number(text: str) -> Reading:
    if _COMMA.fullmatch(text):
        raise ReadingError("comma", text)
    found = _NUMBER.fullmatch(text)
    if found is None:
        raise ReadingError("no-number", text)
    sign, number, rest = found.groups()
    spelling = re.split("[ ,;]", rest, maxsplit=1)[0]
    unit = _unit(spelling) or _refuse(text, spelling)
    # Python and JavaScript both round a decimal text correctly, but not a product: so the power goes into the text.
    value = float(f"{'-' if sign in ('-', '−') else ''}{number}e{unit.ten}") + 0.0
    step = float(f"5e{unit.ten - len(number.partition('.')[2]) - 1}")
    return _finished(text, unit, value, step, rest[len(spelling) :])


def _refuse(text: str, spelling: str) -> _Unit:
    raise ReadingError("unknown-unit" if spelling else "no-unit", text, spelling)


def _finished(text: str, unit: _Unit, value: float, step: float, rest: str) -> Reading:
    words = _words(text, rest)
    kind = _kind(text, unit, words)
    if value < 0 and kind != "volts":
        raise ReadingError("negative", text)
    return Reading(text, kind, _state(text, words.states, kind), value, step)


def _words(text: str, rest: str) -> _Words:
    grammar = _data()["grammar"]
    tokens = [token for token in _MARKS.split(rest.translate(_LOWER)) if token and token not in grammar["filler"]]
    found = _Words(
        ac=any(token in grammar["ac"] for token in tokens),
        dc=any(token in grammar["dc"] for token in tokens),
        pair=any(token in grammar["pair"] for token in tokens),
        states=[],
    )
    said = {*grammar["ac"], *grammar["dc"], *grammar["pair"], *grammar["ground"]}
    found.states.extend(_states(text, [token for token in tokens if token not in said]))
    return found


def _states(text: str, tokens: list[str]) -> list[str]:
    """The states that the tokens name, the longest phrase first."""
    found: list[str] = []
    while tokens:
        lengths = [size for size in range(len(tokens), 0, -1) if " ".join(tokens[:size]) in _phrases()]
        if not lengths:
            raise ReadingError("unknown-state", text, " ".join(tokens))
        found.append(_phrases()[" ".join(tokens[: lengths[0]])])
        tokens = tokens[lengths[0] :]
    return found


def _kind(text: str, unit: _Unit, words: _Words) -> str:
    ac, dc = unit.ac or words.ac, unit.dc or words.dc
    if ac and dc:
        raise ReadingError("ac-dc", text)
    if unit.measures == "ohm":
        if ac:
            raise ReadingError("ac-ohms", text)
        return "pair" if words.pair else "ohms"
    if words.pair and not ac:
        raise ReadingError("pair-volts", text)
    return "ac" if ac else "volts"


def _state(text: str, named: list[str], kind: str) -> str:
    if not named:
        if functions().kinds[kind].dead:
            return "key-off"
        raise ReadingError("no-state", text)
    states = functions().states
    for name in named:
        if all(other == name or other in states[name].beside for other in named):
            return name
    raise ReadingError("two-states", text)


def _unit(spelling: str) -> _Unit | None:
    for row in _data()["unit"]:
        if spelling in row["exact"] or spelling.translate(_LOWER) in row["any_case"]:
            return _Unit(row["measures"], row["ten"], row.get("ac", False), row.get("dc", False))
    return None


@cache
def _phrases() -> Mapping[str, str]:
    """Every way to say a state, without the words that are passed over."""
    filler = _data()["grammar"]["filler"]
    return {
        " ".join(word for word in phrase.split(" ") if word not in filler): state.id
        for state in functions().states.values()
        for phrase in state.says
    }


def short(state: State) -> str:
    """The shortest usual way to type a state: the first of its spellings."""
    return state.says[0]


def _shown(text: str) -> str:
    plain = _UNSHOWN.sub("?", text)
    return f"{plain[:39]}…" if len(plain) > 40 else plain


def _data() -> dict[str, Any]:
    return resources.table("functions")
