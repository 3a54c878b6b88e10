"""The usual room around gear, from data/fit.toml."""

from dataclasses import dataclass, replace
from functools import cache

from undertrim.derive.fit.margins import Number, typed
from undertrim.record.units import parse
from undertrim.resources import table
from undertrim.words import message


@dataclass(frozen=True, slots=True)
class Clearances:
    """Lengths that hold where neither record nor maker says otherwise."""

    rear: Number
    rear_glass: Number
    grille: Number
    overlap: Number
    bolts: Number
    plug_room: Number
    sleeve: Number
    filler: Number


def clearances(**changed: str) -> Clearances:
    """The usual values, some of them replaced by texts such as "2 mm". Raises UnitError.

    A usual value may spread (data/fit.toml); one that somebody chose does not.
    """
    found = {name: usual(name, text) for name, text in {**_texts(), **changed}.items()}
    return Clearances(**{name: one if name in changed else _spreading(name, one) for name, one in found.items()})


def _spreading(name: str, found: Number) -> Number:
    """A usual value with how far others usually lie from it."""
    if name not in table("fit")["spread"] or found.value is None:
        return found
    low, high = (parse(text, "length").value for text in table("fit")["spread"][name])
    return replace(found, less=found.value - low, more=high - found.value)


def usual(name: str, text: str) -> Number:
    """One clearance from its text: exact, since nobody measured it."""
    found = typed(message(f"clearances/{name}"), parse(text, "length"))
    return Number(found.label, found.value, 0, found.text, default=True)


@cache
def _texts() -> dict[str, str]:
    data = table("fit")
    return {**data["speaker"], **data["receiver"]}
