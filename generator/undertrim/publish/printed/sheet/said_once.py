"""What is done alike a second time is told once on the sheet of a whole vehicle: the later step leads to the first, in one line.

Alike are the two sides, and the same kind of fitting or test at another opening. Such a line keeps its number, its box to tick, its name and its
jobs; cautions stand before it. The sheet of a visit tells each in full, since there it is read in the car.
"""

from collections.abc import Iterator, Sequence
from itertools import groupby

from undertrim.publish.encoding import Published, said
from undertrim.words import message

_SHORTEST = 40
"""Characters that are told as they are: to be led elsewhere for less costs more than it saves."""
_ANYWHERE = ("install", "test")
"""Kinds of step whose text is of the kind of opening: another opening may lead to it. All else is led to on the other side only."""


def told_once(rows: Sequence[Published], steps: Sequence[Published]) -> list[Published]:
    """The rows made of `steps`; runs of rows that say what earlier ones say become one row, with the lines under `led`."""
    return [row for group in _runs(list(_led(rows, steps))) for row in group]


def _led(rows: Sequence[Published], steps: Sequence[Published]) -> Iterator[Published]:
    earlier: dict[object, Published] = {}
    for row, step in zip(rows, steps, strict=True):
        told = said(_told(step, row))
        before = earlier.setdefault((_name(step), str(told)), row)
        yield (
            row
            if before is row or len(str((row["text"], row["items"]))) < _SHORTEST
            else {**row, "as": before["number"]}
        )


def _name(step: Published) -> str:
    """What is done, the same for all steps that may lead to each other."""
    name = str(step["id"]).replace(f"@{step['side']}", "") if step["side"] else str(step["id"])
    return step["kind"] if step["kind"] in _ANYWHERE else name


def _told(step: Published, row: Published) -> Published:
    """All that a step says but its name; a plug of its own side is the same plug on the other."""
    tethers = [{**line, "side": line["side"] == step["side"]} for line in step["tethers"]]
    return {
        "row": [row[key] for key in ("verb", "text", "kits", "wait", "conditions")],
        "fasteners": _items(row),
        "tethers": tethers,
    }


def _items(row: Published) -> list[object]:
    return [item for item in row["items"] if not item["tether"]]


def _runs(rows: Sequence[Published]) -> Iterator[list[Published]]:
    """Lines that follow each other are one row, unless something stands before one of them."""
    at = 0

    def run(row: Published) -> int:
        nonlocal at
        at += "as" not in row or bool(row["state"] or row["cautions"])
        return at

    for _, group in groupby(rows, key=lambda row: (run(row), "as" in row, row["section"])):
        found = list(group)
        yield [_lines(found)] if "as" in found[0] else found


def _lines(rows: Sequence[Published]) -> Published:
    """One row of them; the marks of what was said before stand once, above all its lines."""
    marks = [mark for row in rows for mark in row["guarded"]]
    return {
        **rows[0],
        "guarded": [mark for place, mark in enumerate(marks) if mark not in marks[:place]],
        "led": [
            {
                **{key: row[key] for key in ("number", "verb", "title", "marks")},
                "as": message("sheet/as-step", number=row["as"]),
            }
            for row in rows
        ],
    }
