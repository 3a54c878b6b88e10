"""Named ways of writing wire colours in letters, and the vocabulary that a text is read with."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim import resources
from undertrim.record.wire_colour import Colour, by_code

_MODIFIERS = {"light": "light", "lt": "light", "l": "light", "dark": "dark", "dk": "dark", "d": "dark"}
_SHORTEST_WORD = 4


@dataclass(frozen=True, slots=True)
class Scheme:
    """One named set of letter codes; `sure` and `source` say what stands behind it.

    `joined` codes may stand together, base first. `alone` reads nothing but these codes and whole words.
    `memory` are the codes known from memory only.
    """

    name: str
    title: str
    codes: Mapping[str, Colour]
    sure: str
    source: str
    joined: bool = False
    alone: bool = False
    memory: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words and codes, case-folded, that mean one colour; the codes left open; the words for light and dark.

    `joined` are the codes that may stand together without a separator, each of two letters.
    """

    known: Mapping[str, Colour]
    ambiguous: Mapping[str, Sequence[str]]
    modifiers: Mapping[str, str]
    joined: Mapping[str, Colour]
    scheme: str = ""


@cache
def schemes() -> Mapping[str, Scheme]:
    """Every named scheme, in the order of the table."""
    return {name: _scheme(name, row) for name, row in resources.table("colour-schemes").items()}


@cache
def vocabulary(scheme: str | None = None) -> Vocabulary:
    """What a text is read with: words, IEC and local codes, and the codes of the scheme, which win where both have one.

    Raises KeyError for a scheme that is not in `schemes()`.
    """
    open_codes = {code.casefold(): names for code, names in resources.table("wire-colours")["ambiguous"].items()}
    plain = {word: colour for word, colour, _ in _words()}
    if not scheme:
        return Vocabulary(plain, open_codes, _MODIFIERS, {})
    found = schemes()[scheme]
    whole = {word: colour for word, colour, is_code in _words() if not is_code}
    codes = {code.casefold(): colour for code, colour in found.codes.items()}
    return Vocabulary(
        known={**(whole if found.alone else plain), **codes},
        ambiguous=open_codes,  # `known` is asked first
        modifiers={word: meant for word, meant in _MODIFIERS.items() if word not in codes},
        joined=codes if found.joined else {},
        scheme=scheme,
    )


def _words() -> Iterator[tuple[str, Colour, bool]]:
    """Every word and code of the plain table, and whether it is a code or a short form rather than a whole word."""
    for row in resources.table("wire-colours")["colour"]:
        colour = by_code()[row["code"]]
        yield row["name"], colour, False
        yield row["code"].casefold(), colour, True
        yield from ((word, colour, len(word) < _SHORTEST_WORD) for word in row["words"])


def _scheme(name: str, row: Mapping[str, Any]) -> Scheme:
    codes = by_code() if row.get("own") else {code: by_code()[meant] for code, meant in row.get("codes", {}).items()}
    return Scheme(
        name,
        row["title"],
        codes,
        row["sure"],
        row["source"],
        row.get("joined", False),
        row.get("alone", False),
        frozenset(row.get("memory", [])),
    )
