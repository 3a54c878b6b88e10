"""What is done alike on both sides is told once on the sheet of a whole vehicle: the second step leads to the first.

It keeps its number, its name and its cautions. The sheet of a visit tells each in full, since there both are read in the car.
"""

from collections.abc import Iterator, Sequence

from undertrim.publish.encoding import Published, said
from undertrim.words import message

_TOLD = ("verb", "text", "kits", "items", "wait", "conditions")
"""What of a step must be the same on both sides."""
_SHORTEST = 40
"""Characters that are told as they are: to be led elsewhere for less costs more than it saves."""


def told_once(sections: Sequence[Published], steps: Sequence[Published]) -> list[Published]:
    """The rows of sections made of `steps`; a row that says of the other side what an earlier one says names that one instead."""
    earlier: dict[str, Published] = {}
    return [{**section, "steps": list(_rows(section["steps"], steps, earlier))} for section in sections]


def _rows(rows: Sequence[Published], steps: Sequence[Published], earlier: dict[str, Published]) -> Iterator[Published]:
    for row in rows:
        step = steps[row["number"] - 1]
        before = earlier.setdefault(_without_side(step), row)
        yield row if before is row or not _alike(before, row) else _led(row, before["number"])


def _without_side(step: Published) -> str:
    """The id of a step without its side, so that both sides have one."""
    return str(step["id"]).replace(f"@{step['side']}", "") if step["side"] else str(step["id"])


def _alike(one: Published, other: Published) -> bool:
    told = [[row[key] for key in _TOLD] for row in (one, other)]
    return told[0] == told[1] and len(str((one["text"], one["items"]))) > _SHORTEST


def _led(row: Published, number: int) -> Published:
    return {**row, "text": [said(message("sheet/as-step", number=number))], "kits": [], "items": [], "tall": False}
