"""The finder's index: facts by which a vehicle is found, small, split by make when large.

It is written as classic scripts that call `undertrimFinder(name, data)`, so that it also loads from a folder on disk. The first file,
`finder/start.js`, holds either everything or, in a large collection, the names and in which piece each make's vehicles are.
"""

import json
from collections.abc import Iterator, Sequence
from typing import Any

from undertrim.publish.encoding import Published, compact

Row = list[Any]

MOST_IN_ONE = 1500
"""So many vehicles fit into the first file; a larger collection is split."""
PIECE = 500
"""About so many vehicles stand in one piece."""


def row(facts: Published) -> Row:
    """What the finder knows of a vehicle: address, make, model, first and last year, phase, other names, and the months from which
    and until before which it was built (`2014-03`)."""
    others = [*facts["also_called"], *([facts["phase"]] if facts["phase"] else [])]
    return [
        facts["address"],
        facts["make"],
        facts["model"],
        facts["first_year"],
        facts["last_year"],
        facts["phase"],
        others,
        facts["built_from"],
        facts["built_to"],
    ]


def files(rows: Sequence[Row]) -> dict[str, str]:
    """The index files by their path in the site."""
    ordered = sorted(rows)
    if len(ordered) <= MOST_IN_ONE:
        return {"finder/start.js": _script("start", {"rows": ordered})}
    pieces = list(_pieces(ordered))
    names = {f"{number:03}": _names(piece) for number, piece in enumerate(pieces)}
    made = {
        f"finder/{number}.js": _script(number, {"rows": piece}) for number, piece in zip(names, pieces, strict=True)
    }
    return {"finder/start.js": _script("start", {"pieces": names}), **made}


def _pieces(rows: Sequence[Row]) -> Iterator[list[Row]]:
    """Runs of whole makes of about PIECE vehicles; a make larger than that is cut."""
    piece: list[Row] = []
    for item in rows:
        full = len(piece) >= PIECE and (item[1] != piece[-1][1] or len(piece) >= 2 * PIECE)
        if full:
            yield piece
            piece = []
        piece.append(item)
    if piece:
        yield piece


def _names(piece: Sequence[Row]) -> list[str]:
    """The words by which something in a piece can be found, apart from years."""
    return sorted({name for item in piece for name in (item[1], item[2], *item[6])})


def _script(name: str, data: object) -> str:
    text = compact(data).replace("<", "\\u003c")
    return f"undertrimFinder({json.dumps(name)},{text});\n"
