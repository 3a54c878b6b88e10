"""A filled-in table of questions as a claims file: what stands in which row and column is told by these.

Above the row that begins with `about` stand, a row each, the things said once: a name and its value. Below it stands a row for each
question, of which those without an answer are passed over.
"""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from undertrim.record.claims.answer import Found
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Data, Pointer, Source
from undertrim.words import message

ABOUT, ANSWER, UNIT, HOW, NOTE = "about", "answer", "unit", "how", "note"
COLUMNS = (ABOUT, "question", ANSWER, UNIT, HOW, NOTE, "why", "so far")
"""The headings of a table; those that hold no answer may be left out or stand elsewhere."""

CAR, IS = ("year", "built", "side"), "is "
SIGNS = {
    "?": Found.CANNOT_TELL,
    "unknown": Found.CANNOT_TELL,
    "cannot tell": Found.CANNOT_TELL,
    "-": Found.NONE,
    "none": Found.NONE,
}
"""What may be written in place of a value."""

_SHARED = ("claims", "vehicle", "by", "on", "how", "with")
_NUMBER = frozenset("0123456789./ ,")

Rows = Sequence[Sequence[str]]


def source(rows: Rows, shown: Path) -> Source:
    """The claims file that a table is; a table without such a row is one with a problem."""
    head = next((number for number, row in enumerate(rows) if row and row[0].strip().casefold() == ABOUT), None)
    if head is None:
        problem = Problem(shown, Position(1, 1), Level.ERROR, "claim", message("claims/no-table", about=ABOUT))
        return Source(shown, "", None, {}, {}, frozenset(), (problem,))
    values: dict[Pointer, Position] = {(): Position(1, 1)}
    data = _head(rows[:head], values)
    columns = {name.strip().casefold(): number for number, name in enumerate(rows[head])}
    answers: list[Data] = []
    for number, row in enumerate(rows[head + 1 :], head + 2):
        cells = {name: row[place].strip() for name, place in columns.items() if place < len(row)}
        if cells.get(ABOUT) and cells.get(ANSWER):
            home: Pointer = ("answers", len(answers))
            values[home] = Position(number, 1)
            answers.append(dict(_answer(cells)))
            for name, column in ((ABOUT, ABOUT), ("says", ANSWER), ("found", ANSWER), (HOW, HOW), (NOTE, NOTE)):
                values[*home, name] = Position(number, columns.get(column, 0) + 1)
    values["answers",] = Position(head + 1, 1)
    return Source(shown, "", {**data, "answers": answers}, values, {}, frozenset(), ())


def _head(rows: Rows, values: dict[Pointer, Position]) -> dict[str, Data]:
    data: dict[str, Data] = {}
    car: dict[str, Any] = {}
    for number, row in enumerate(rows, 1):
        name, value = (cell.strip() for cell in (*row, "", "")[:2])
        if not value:
            continue
        if name in CAR:
            car[name] = "unknown" if value == "?" else value
            values["car", name] = Position(number, 2)
        elif name.startswith(IS):
            variant = name.removeprefix(IS)
            car.setdefault("is", {})[variant] = "unknown" if value == "?" else value
            values["car", "is", variant] = Position(number, 2)
        elif name in _SHARED:
            data[name] = value
            values[name,] = Position(number, 2)
    if car:
        values["car",] = Position(1, 1)
    return data | ({"car": car} if car else {})


def _answer(cells: dict[str, str]) -> Iterator[tuple[str, Data]]:
    yield ABOUT, cells[ABOUT]
    said = cells[ANSWER]
    sign = SIGNS.get(said.casefold())
    if sign:
        yield "found", str(sign)
    else:
        yield "says", f"{said} {cells[UNIT]}" if cells.get(UNIT) and set(said) <= _NUMBER else said
    yield from ((name, cells[name]) for name in (HOW, NOTE) if cells.get(name))
