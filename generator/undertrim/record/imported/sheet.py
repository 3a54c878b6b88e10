"""The rows of a spreadsheet, each with what its cells say by the mapping and where they stand."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.record.imported.mapping import OF_CAR, OF_ROW, SKIP, BadMapping, Mapping
from undertrim.record.problem import Position, printable
from undertrim.words import Items, message

_BARE = re.compile(r"[-+]?[0-9]+(?:[.,][0-9]+)?(?:[ -][0-9]+/[0-9]+|/[0-9]+)?")


@dataclass(frozen=True, slots=True)
class Cell:
    """One fact of a row: its address, its value as a record has it, and where it stands (row and column from 1)."""

    about: str
    says: str
    at: Position


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its number from 1, what it says of itself, and its facts."""

    number: int
    of_row: dict[str, str]
    cells: tuple[Cell, ...]
    places: dict[str, Position]
    """Where it says what of itself."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """All rows below the headings that have something in them, and how many are empty."""

    rows: tuple[Row, ...]
    empty: int


def sheet(table: Sequence[Sequence[str]], mapping: Mapping) -> Sheet:
    """A table read by a mapping. Raises BadMapping where the two have different columns."""
    head = [cell.strip() for cell in table[mapping.headings - 1]] if 0 < mapping.headings <= len(table) else []
    places = {heading: number for number, heading in reversed(list(enumerate(head, 1))) if heading}
    known = [one.heading for one in mapping.columns]
    lacking = [name for name in known if name not in places]
    new = [name for name in places if name not in known]
    twice = [name for name in places if head.count(name) > 1]
    for code, names in (("import/column-gone", lacking), ("import/column-new", new), ("import/column-twice", twice)):
        if names:
            raise BadMapping(message(code, columns=Items(tuple(map(printable, names)), "comma")))
    below = list(enumerate(table[mapping.headings :], mapping.headings + 1))
    full = [(number, cells) for number, cells in below if any(cell.strip() for cell in cells)]
    return Sheet(tuple(_row(number, cells, mapping, places) for number, cells in full), len(below) - len(full))


def _row(number: int, cells: Sequence[str], mapping: Mapping, places: dict[str, int]) -> Row:
    of_row: dict[str, str] = {}
    where: dict[str, Position] = {}
    facts: list[Cell] = []
    implied: list[Cell] = []
    for column in mapping.columns:
        at = places[column.heading]
        said = " ".join(cells[at - 1].split()) if at <= len(cells) else ""
        if not said or column.about == SKIP:
            continue
        if not mapping.gear and (column.about in OF_ROW or column.about.startswith(OF_CAR)):
            of_row[column.about], where[column.about] = said, Position(number, at)
            continue
        implied += (Cell(about, value, Position(number, at)) for about, value in column.also.items())
        facts.append(Cell(column.about, _value(said, column.unit, mapping.decimal), Position(number, at)))
    return Row(number, of_row, tuple(_once([*implied, *facts])), where)


def _value(said: str, unit: str, decimal: str) -> str:
    """The value as a record has it: a bare number gets the unit of its column, and a decimal comma is a point where the mapping says so."""
    if decimal == "," and re.fullmatch(r"[-+]?[0-9]+,[0-9]+(\s*\D*)", said):
        said = said.replace(",", ".", 1)
    return f"{said} {unit}" if unit and _BARE.fullmatch(said) else said


def _once(cells: Sequence[Cell]) -> Iterator[Cell]:
    """Each address once: what a column says itself counts before what goes without saying beside another."""
    last = {cell.about: cell for cell in cells}
    yield from last.values()
