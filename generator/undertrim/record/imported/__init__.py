"""A shop's spreadsheet, read by a mapping that the program proposes from its headings and a person confirms; nothing is guessed row by row."""

from undertrim.record.imported.mapping import (
    UNDECIDED,
    BadMapping,
    Column,
    Mapping,
    Table,
    decimal_of,
    proposed,
    read_mapping,
    written,
)
from undertrim.record.imported.sheet import Row, Sheet, sheet

__all__ = [
    "UNDECIDED",
    "BadMapping",
    "Column",
    "Mapping",
    "Row",
    "Sheet",
    "Table",
    "decimal_of",
    "proposed",
    "read_mapping",
    "sheet",
    "written",
]
