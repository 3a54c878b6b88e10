"""The finder's index: facts by which a vehicle is found, small, split by make when large.

It is written as classic scripts that call `undertrimFinder(name, data)`, so that it also loads from a folder on disk. The first file,
`finder/start.js`, holds either everything or, in a large collection, the names and in which piece each stands.
"""

import json
from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import takewhile
from typing import Any

from undertrim import resources
from undertrim.publish.encoding import Published, compact

Entry = Sequence[Any]
"""A `Row` of `derive/finding` as a list."""

ADDRESS, MAKE, MODEL, PHASE, OTHERS, VIN = 0, 1, 2, 5, 6, 13
"""Where in a row some of its facts stand."""

MOST_IN_ONE = 300
"""So many vehicles fit into the first file; a larger collection is split."""
PIECE = 50
"""About so many vehicles stand in one piece."""
MAKER = 3
"""The first characters of a VIN, which are the maker's and stand whole in every pattern."""

_MOST_SHARED = 35
_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


def files(rows: Sequence[Entry]) -> dict[str, str]:
    """The index files by their path in the site."""
    ordered = sorted(rows, key=lambda row: row[ADDRESS])
    if len(ordered) <= MOST_IN_ONE:
        return {"finder/start.js": _script("start", {**_tables(), "rows": ordered})}
    pieces = {f"{number:03}": piece for number, piece in enumerate(_pieces(ordered))}
    first = {
        **_tables(),
        "pieces": {name: shortened(_names(piece)) for name, piece in pieces.items()},
        "makers": _makers(pieces),
    }
    made = {f"finder/{name}.js": _script(name, {"rows": piece}) for name, piece in pieces.items()}
    return {"finder/start.js": _script("start", first), **made}


def more(name: str, entries: Sequence[Entry]) -> dict[str, str]:
    """A file of the index with what is found besides vehicles: each entry its sort, its name, what is said of it, its place and other words."""
    return {f"finder/{name}.js": _script(name, {"entries": entries})}


def beside(entries: Sequence[Entry]) -> str:
    """The same of what is in one vehicle, for a file beside its pages."""
    return _script("here", {"entries": entries})


def _tables() -> Published:
    return {"vin": resources.table("vin")}


def _pieces(rows: Sequence[Entry]) -> Iterator[list[Entry]]:
    """Runs of whole makes of about PIECE vehicles; a make larger than that is cut."""
    piece: list[Entry] = []
    for item in rows:
        full = len(piece) >= PIECE and (item[MAKE] != piece[-1][MAKE] or len(piece) >= 2 * PIECE)
        if full:
            yield piece
            piece = []
        piece.append(item)
    if piece:
        yield piece


def _names(piece: Sequence[Entry]) -> list[str]:
    """What something in a piece is called, apart from years."""
    found = {name for item in piece for name in (item[MAKE], item[MODEL], item[PHASE], *item[OTHERS])}
    return sorted(name.replace("|", " ") for name in found if name)


def shortened(names: Sequence[str]) -> str:
    """Sorted names in one text: each is a digit that says how many letters it shares with the one before, and its other letters."""
    parts = []
    for before, name in zip(["", *names], names, strict=False):
        alike = takewhile(lambda pair: pair[0] == pair[1], zip(before, name, strict=False))
        shared = min(sum(1 for _ in alike), _MOST_SHARED)
        parts.append(_DIGITS[shared] + name[shared:])
    return "|".join(parts)


def _makers(pieces: dict[str, list[Entry]]) -> dict[str, list[str]]:
    """In which pieces there are patterns of each maker's numbers."""
    found: dict[str, dict[str, None]] = defaultdict(dict)
    for name, piece in pieces.items():
        for pattern, *_ in (one for item in piece for one in item[VIN]):
            found[pattern[:MAKER]][name] = None
    return {maker: list(names) for maker, names in found.items()}


def _script(name: str, data: object) -> str:
    text = compact(data).replace("<", "\\u003c")
    return f"undertrimFinder({json.dumps(name)},{text});\n"
