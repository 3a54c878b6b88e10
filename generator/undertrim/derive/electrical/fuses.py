"""Fuses: families with ratings and colours, and the next rating for a load."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from undertrim.derive.electrical.bounds import Refused, given
from undertrim.derive.electrical.numbers import Amount, Number, number
from undertrim.resources import table
from undertrim.words import Items, Message, Value, Word, message, one_of, word

SLACK = 1e-9  # relative; takes up the rounding of floats, nothing else


@dataclass(frozen=True, slots=True)
class Fuse:
    """One fuse: its family, with its name, rating in A and colour ("" where no colour is relied on)."""

    family: str
    name: Word
    amps: float
    colour: str
    sure: bool


@dataclass(frozen=True, slots=True)
class Readings:
    """What a colour stands for: one rating in each family that has it."""

    fuses: tuple[Fuse, ...]
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


@cache
def fuses() -> Sequence[Fuse]:
    """Every fuse of data/electrical-fuses.toml."""
    families = table("electrical-fuses")["families"]
    return tuple(
        Fuse(
            name, word("electrical-fuses", "families", name, "name"), float(row["amps"]), row["colour"], family["sure"]
        )
        for name, family in families.items()
        for row in families[family.get("same", name)]["ratings"]
        if family.get("least", 0) <= row["amps"] <= family.get("most", math.inf)
    )


def rating(family: str, colour: str) -> float:
    """The rating in A that a colour has in a family. Raises Refused."""
    found = [fuse for fuse in fuses() if fuse.family == family and fuse.colour == colour]
    if not found or not colour:
        raise Refused(message("electrical/no-such-fuse", colour=colour, family=family))
    return found[0].amps


def readings(colour: str) -> Readings:
    """What a colour stands for in each family. Raises Refused for a colour that none has."""
    found = tuple(fuse for fuse in fuses() if colour and fuse.colour == colour)
    if not found:
        known = list(dict.fromkeys(fuse.colour for fuse in fuses() if fuse.colour))
        raise Refused(message("electrical/no-fuse-colour", colour=colour, known=Items(tuple(known), "comma")))
    rated = tuple(message("electrical/fuse-rated", family=fuse.name, rating=Amount(fuse.amps, "A")) for fuse in found)
    headline = message("electrical/colour-means", colour=colour_word(colour), fuses=Items(rated, "semicolon"))
    numbers = tuple(number(fuse.name, fuse.amps, "A", message("electrical/by-colour")) for fuse in found)
    return Readings(found, headline, numbers, (message("electrical/number-before-colour"),))


def colour_word(colour: str) -> Message:
    """The colour of a fuse in words."""
    return message(f"fuse-colours/{colour}")


def load_share(share: float | None = None) -> Number:
    """Of its rating, what a fuse is loaded with for long. Raises Refused."""
    label = message("electrical/fuse-share")
    if share is not None:
        return given("share", share, label)
    return given("share", float(table("electrical-fuses")["load"]["share"]), label, "usual")


def least(current: float, share: float) -> float | None:
    """The next rating in A at or above current/share; None above the largest."""
    ratings = sorted({fuse.amps for fuse in fuses()})
    return next((amps for amps in ratings if amps >= current / share * (1 - SLACK)), None)


def most(current: float) -> float | None:
    """The largest rating in A at or below a current; None below the smallest."""
    return max((fuse.amps for fuse in fuses() if fuse.amps <= current * (1 + SLACK)), default=None)


def described(amps: float) -> Value:
    """The families that have a rating, with its colour in each: "medium blade (green) or high-current blade (green)"."""
    found = [_coloured(fuse) for fuse in fuses() if fuse.amps == amps]
    return one_of(*found) if found else message("electrical/in-no-family")


def _coloured(fuse: Fuse) -> Value:
    if not fuse.colour:
        return fuse.name
    return message("electrical/fuse-coloured", family=fuse.name, colour=colour_word(fuse.colour))


def notes(amps: float) -> tuple[Message, ...]:
    """Where to put a fuse, and how sure its rating is."""
    place = message("electrical/fuse-place", within=Amount(float(table("electrical-fuses")["place"]["within"]), "m"))
    found = [fuse for fuse in fuses() if fuse.amps == amps]
    if found and not any(fuse.sure for fuse in found):
        return place, message("electrical/ratings-from-memory")
    return (place,)
