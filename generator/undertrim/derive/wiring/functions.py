"""The functions of wires and what a meter shows on them, from data/functions.toml."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim import resources
from undertrim.words import Items, Value, Word, message, word


@dataclass(frozen=True, slots=True)
class Kind:
    """What can be read, in V or ohm; `dead` where the wire must be without power for it."""

    id: str
    words: Value
    unit: str
    dead: bool


@dataclass(frozen=True, slots=True)
class State:
    """A state of the car, and it in short; `says` are ways to type it, `beside` the states that may be said with it; at `rest` a permanent feed alone is live."""

    id: str
    words: Value
    name: Word
    says: tuple[str, ...]
    ohms: bool
    rest: bool
    beside: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Band:
    """A range of readings, ends included, in V or ohm; `of_battery` where it follows from the supply."""

    id: str
    words: Value
    low: float
    high: float
    sure: str
    of_battery: bool


@dataclass(frozen=True, slots=True)
class Pattern:
    """How a kind of wire reads: for each kind of reading, a band per state; `always` for states not named.

    `needs` is the state that must have been read before it speaks for a function; empty for most.
    """

    id: str
    words: Value
    behaves: tuple[str, ...]
    sure: str
    needs: str
    reads: Mapping[str, Mapping[str, str]]


@dataclass(frozen=True, slots=True)
class Function:
    """What a wire is for; `direction` as seen from the radio, `care` the ids of cautions, `also` behaviours that no pattern has."""

    id: str
    words: Value
    group: str
    direction: str
    patterns: tuple[str, ...]
    care: tuple[str, ...]
    also: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Functions:
    """The whole table."""

    kinds: Mapping[str, Kind]
    states: Mapping[str, State]
    bands: Mapping[str, Band]
    patterns: Mapping[str, Pattern]
    functions: Mapping[str, Function]
    sure: Mapping[str, Word]
    sure_order: tuple[str, ...]


@cache
def functions() -> Functions:
    """The table, read once."""
    data = resources.table("functions")
    return Functions(
        kinds={
            id_: Kind(id_, _words("kind", id_), row["unit"], row.get("dead", False))
            for id_, row in data["kind"].items()
        },
        states={id_: _state(id_, row) for id_, row in data["state"].items()},
        bands={id_: _band(id_, row) for id_, row in data["band"].items()},
        patterns={id_: _pattern(id_, row, list(data["kind"])) for id_, row in data["pattern"].items()},
        functions={id_: _function(id_, row) for id_, row in data["function"].items()},
        sure={id_: word("functions", "sure", id_) for id_ in data["sure"]},
        sure_order=tuple(data["order"]),
    )


def _words(table: str, id_: str) -> Word:
    return word("functions", table, id_, "words")


def _state(id_: str, row: Mapping[str, Any]) -> State:
    return State(
        id_,
        _words("state", id_),
        word("functions", "state", id_, "name"),
        tuple(row["says"]),
        row["ohms"],
        row.get("rest", False),
        tuple(row["beside"]),
    )


def _band(id_: str, row: Mapping[str, Any]) -> Band:
    high = row.get("high", math.inf)
    return Band(id_, _words("band", id_), row["low"], high, row["sure"], row.get("of_battery", False))


def _pattern(id_: str, row: Mapping[str, Any], kinds: list[str]) -> Pattern:
    reads = {kind: row[kind] for kind in kinds if kind in row}
    return Pattern(id_, _words("pattern", id_), tuple(row["behaves"]), row["sure"], row.get("needs", ""), reads)


def _function(id_: str, row: Mapping[str, Any]) -> Function:
    lists = (tuple(row.get(key, ())) for key in ("patterns", "care", "also"))
    return Function(id_, _words("function", id_), row["group"], row["direction"], *lists)


_ANY = ("message", "unknown")


def may_behave(function: str, behaves: str) -> bool:
    """Whether a function of the schema may behave like that; any may come as a message."""
    return behaves in _ANY or behaves in behaviours(function)


def behaviours(function: str) -> tuple[str, ...]:
    """How a function may behave besides as a message, in the order of its patterns; empty where it has no behaviour of its own."""
    wanted = functions().functions[function]
    own = (name for pattern in wanted.patterns for name in functions().patterns[pattern].behaves)
    return tuple(dict.fromkeys(name for name in (*own, *wanted.also) if name not in _ANY))


def expected(pattern: Pattern, kind: str, state: str, supply: float | None = None) -> Band | None:
    """The band a pattern has in a state; None where it says nothing, or the power cannot be off for ohms.

    `supply` in V is what the wire carries instead of the battery's voltage: then 15 % less to 10 % more of it (common
    practice, no source).
    """
    everything = functions()
    if everything.kinds[kind].dead and not everything.states[state].ohms:
        return None
    named = pattern.reads.get(kind, {})
    name = named.get(state) or named.get("always")
    return _supplied(everything.bands[name], supply) if name else None


def names(found: Sequence[str]) -> Items:
    """Functions in words, a whole group by its own name where it has one: `mute, any speaker wire`."""
    said = {name: functions().functions[name].words for name in found}
    for group in resources.table("functions")["together"]:
        whole = {one.id for one in functions().functions.values() if one.group == group}
        if whole <= said.keys():
            together = word("functions", "together", group)
            said = {name: together if name in whole else own for name, own in said.items()}
    return Items(tuple(dict.fromkeys(said.values())), "comma")


def _supplied(band: Band, supply: float | None) -> Band:
    if supply is None or not band.of_battery or band.id == "between":
        return band
    return Band(
        band.id, message("meter/its-supply", volts=supply), supply * 0.85, supply * 1.1, "practice", of_battery=True
    )


def sureness(pattern: Pattern, band: Band) -> str:
    """The weaker of both, one of physics, standard, practice, memory."""
    order = functions().sure_order
    return order[max(order.index(pattern.sure), order.index(band.sure))]


def cautions(*, ohms: bool, care: tuple[str, ...] = ()) -> tuple[Word, ...]:
    """The texts that are due: always, for ohms, and those that functions name in `care`."""
    rows: Mapping[str, Mapping[str, str]] = resources.table("functions")["caution"]
    due = ("always", "ohms") if ohms else ("always",)
    return tuple(
        word("functions", "caution", id_, "text") for id_, row in rows.items() if row["needs"] in due or id_ in care
    )
