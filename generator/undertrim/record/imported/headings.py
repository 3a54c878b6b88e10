"""What a heading probably means: a proposal for a person, from the words of the trade in data/headings.toml."""

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from undertrim.resources import table

UNITS = {
    "mm": "mm",
    "cm": "cm",
    "in": "in",
    "inch": "in",
    "inches": "in",
    "pulg": "in",
    "pulgadas": "in",
    "ohm": "ohm",
    "ohms": "ohm",
    "ohmios": "ohm",
}
"""What people write for the unit in a heading."""


def unit(heading: str) -> str:
    """The unit that a heading names; empty for none, or two."""
    found = {UNITS[word] for word in _words(heading) if word in UNITS}
    return found.pop() if len(found) == 1 else ""


def of_row(heading: str, *, gear: bool) -> str:
    """What of the row itself it says (`make`, `year`, `note` ...), or a field of gear; empty where that cannot be told."""
    return _one(heading, table("headings")["gear"]) if gear else _one(heading, table("headings")["row"])


def fact(heading: str) -> str:
    """The address of a fact of an opening; empty where the fact or the place cannot be told."""
    known = table("headings")
    place = _one(heading, known["places"])
    field = _one(heading, {name: row["words"] for name, row in known["facts"].items()})
    return f"openings/{place}/{field}" if place and field else ""


def facts_known() -> list[str]:
    """The addresses of all facts that headings are known for."""
    known = table("headings")
    return [f"openings/{place}/{field}" for place in known["places"] for field in known["facts"]]


def also(heading: str, about: str, *, gear: bool) -> dict[str, str]:
    """What goes without saying beside a fact under this heading, by address."""
    if gear:
        return dict(table("headings")["gear_also"].get(about, {}))
    home, _, field = about.removeprefix("openings/").partition("/")
    said: Mapping[str, Any] = table("headings")["facts"].get(field, {})
    words = said.get("also_if", ())
    sure = not words or any(word in words for word in _words(heading))
    return {f"openings/{home}/{name}": value for name, value in said.get("also", {}).items() if sure}


def is_gear(headings: Sequence[str]) -> bool:
    """Whether a sheet is rather one of gear than one of cars: more of its headings are fields of gear than places of a car."""
    of_gear = sum(bool(_one(heading, table("headings")["gear"])) for heading in headings)
    of_cars = sum(bool(fact(heading)) for heading in headings) + sum(
        _one(one, table("headings")["row"]) in ("id", "year") for one in headings
    )
    return of_gear > 2 and not of_cars


def _one(heading: str, known: Mapping[str, Sequence[str]]) -> str:
    """The one meaning with the longest phrase in the heading; empty for none, and for two as long."""
    found = sorted(_matches(_words(heading), known), reverse=True)
    if not found or (len(found) > 1 and found[0][0] == found[1][0] and found[0][1] != found[1][1]):
        return ""
    return found[0][1]


def _matches(words: Sequence[str], known: Mapping[str, Sequence[str]]) -> Iterator[tuple[int, str]]:
    for meaning, phrases in known.items():
        for phrase in phrases:
            asked = phrase.split()
            if any(list(words[start : start + len(asked)]) == asked for start in range(len(words))):
                yield len(asked), meaning


def _words(heading: str) -> list[str]:
    plain = "".join(
        sign for sign in unicodedata.normalize("NFKD", heading.casefold()) if not unicodedata.combining(sign)
    )
    return [word for word in re.split(r"[^a-z0-9]+", plain) if word]
