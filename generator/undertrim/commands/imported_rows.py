"""What came of the rows of a spreadsheet, and how that is told: each row once, each cell that was refused by its name."""

import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from undertrim.check import reports
from undertrim.derive.claims import Deed
from undertrim.record.problem import Position, Problem, printable
from undertrim.words import Items, Message, WayOut, message, say

_WORST = (Deed.REFUSED, Deed.DISPUTED, Deed.FILLED, Deed.SEEN_AGAIN, Deed.ALREADY, Deed.KEPT)
"""A row counts as what is worst of its cells."""


@dataclass(frozen=True, slots=True)
class ToldCell:
    """What came of one cell: where it stands, what it is about, and what was done."""

    at: Position
    about: str
    deed: Deed
    said: Message

    @property
    def name(self) -> str:
        """The cell as a spreadsheet names it: `D12`."""
        return f"{letters(self.at.column)}{self.at.line}"


@dataclass(slots=True)
class Told:
    """What came of all rows, by their numbers, what was written, and which records that is like."""

    file: Path
    rows: dict[int, list[ToldCell]] = field(default_factory=dict)
    changed: list[Message] = field(default_factory=list)
    like: list[Problem] = field(default_factory=list)

    @property
    def refused(self) -> bool:
        """Whether a cell was."""
        return any(cell.deed is Deed.REFUSED for cells in self.rows.values() for cell in cells)

    def tell(self, empty: int) -> None:
        """Tell of each cell that did not simply go in, of each record, and count the rows."""
        for number in sorted(self.rows):
            for cell in self.rows[number]:
                self._cell(cell)
        for said in self.changed:
            print(printable(say(said)))
        print(*(f"{line}\n" for line in reports.lines(self.like)), sep="", end="")
        counted = Counter(_deed(cells) for cells in self.rows.values())
        parts = tuple(message(_counted(deed), count=counted[deed]) for deed in _WORST if counted[deed])
        parts += (message("import/rows-empty", count=empty),) if empty else ()
        cells = Counter(cell.deed for one in self.rows.values() for cell in one)
        kinds = tuple(message(f"claims/count-{deed}", count=cells[deed]) for deed in Deed if cells[deed])
        print(say(message("import/rows", count=len(self.rows) + empty, what=Items(parts, "comma"))))
        print(say(message("import/cells", count=sum(cells.values()), what=Items(kinds, "comma"))))

    def _cell(self, cell: ToldCell) -> None:
        if cell.deed not in (Deed.REFUSED, Deed.DISPUTED, Deed.KEPT):
            return
        said = message("claims/refused", said=cell.said) if cell.deed is Deed.REFUSED else cell.said
        stream = sys.stderr if cell.deed is Deed.REFUSED else sys.stdout
        where = message("import/cell", file=str(self.file), cell=cell.name, about=cell.about, said=said)
        lines = (line for line in (say(where), say(WayOut(cell.said))) if line)
        print(*_indented(lines), sep="\n", file=stream)


def _indented(lines: Iterator[str]) -> Iterator[str]:
    for number, line in enumerate(lines):
        yield f"{'    ' if number else ''}{printable(line)}"


def _deed(cells: list[ToldCell]) -> Deed:
    found = {cell.deed for cell in cells}
    return next((deed for deed in _WORST if deed in found), Deed.KEPT)


def _counted(deed: Deed) -> str:
    """How rows are counted: taken, refused in part, else like single values."""
    return f"import/rows-{deed}" if deed in (Deed.FILLED, Deed.REFUSED) else f"claims/count-{deed}"


def letters(column: int) -> str:
    """A column's name in a spreadsheet: 1 is A, 27 is AA."""
    name = ""
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(ord("A") + rest) + name
    return name
