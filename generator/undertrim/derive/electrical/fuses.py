"""Fuses: families with ratings and colours, and the next rating for a load."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from undertrim.derive.electrical.bounds import Refused, given
from undertrim.derive.electrical.numbers import Number, number, said
from undertrim.resources import table

SLACK = 1e-9  # relative; takes up the rounding of floats, nothing else


@dataclass(frozen=True, slots=True)
class Fuse:
    """One fuse: its family, rating in A and colour ("" where no colour is relied on)."""

    family: str
    name: str
    amps: float
    colour: str
    sure: bool


@dataclass(frozen=True, slots=True)
class Readings:
    """What a colour stands for: one rating in each family that has it."""

    fuses: tuple[Fuse, ...]
    headline: str
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]


@cache
def fuses() -> Sequence[Fuse]:
    """Every fuse of data/electrical-fuses.toml."""
    families = table("electrical-fuses")["families"]
    rows = {family["id"]: family.get("ratings", ()) for family in families}
    return tuple(
        Fuse(family["id"], family["name"], float(row["amps"]), row["colour"], family["sure"])
        for family in families
        for row in rows[family.get("same", family["id"])]
        if family.get("least", 0) <= row["amps"] <= family.get("most", math.inf)
    )


def rating(family: str, colour: str) -> float:
    """The rating in A that a colour has in a family. Raises Refused."""
    found = [fuse for fuse in fuses() if fuse.family == family and fuse.colour == colour]
    if not found or not colour:
        raise Refused(f"no '{colour}' fuse in the family '{family}'", "read the number on the fuse")
    return found[0].amps


def readings(colour: str) -> Readings:
    """What a colour stands for in each family. Raises Refused for a colour that none has."""
    found = tuple(fuse for fuse in fuses() if colour and fuse.colour == colour)
    if not found:
        known = list(dict.fromkeys(fuse.colour for fuse in fuses() if fuse.colour))
        raise Refused(f"no fuse is '{colour}'", f"colours: {', '.join(known)}")
    words = "; ".join(f"{fuse.name} {said(fuse.amps, 'A')}" for fuse in found)
    numbers = tuple(number(fuse.name, fuse.amps, "A", "DIN 72581, ISO 8820-3 (secondary)") for fuse in found)
    return Readings(found, f"{colour}: {words}", numbers, ("the number on the fuse comes before its colour",))


def load_share(share: float | None = None) -> Number:
    """Of its rating, what a fuse is loaded with for long. Raises Refused."""
    label = "load of the fuse at most"
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


def described(amps: float) -> str:
    """The families that have a rating, with its colour in each: "medium blade (green) or high-current blade (green)"."""
    found = [fuse for fuse in fuses() if fuse.amps == amps]
    names = [f"{fuse.name} ({fuse.colour})" if fuse.colour else fuse.name for fuse in found]
    return " or ".join(names) or "in no family listed here"


def notes(amps: float) -> tuple[str, ...]:
    """Where to put a fuse, and how sure its rating is."""
    within = said(float(table("electrical-fuses")["place"]["within"]), "m")
    words = [
        f"put the fuse at the source, within {within} of it along the cable (common practice), before anything else"
    ]
    found = [fuse for fuse in fuses() if fuse.amps == amps]
    if found and not any(fuse.sure for fuse in found):
        words.append("ratings of bolt-in strips are from memory: what their maker lists comes first")
    return tuple(words)
