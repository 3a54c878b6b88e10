"""A shop's spreadsheet, read by a mapping that the program proposes from its headings and a person confirms; nothing is guessed row by row."""

from undertrim.record.imported.mapping import (
    SKIP,
    UNDECIDED,
    BadMapping,
    Column,
    Mapping,
    Said,
    Table,
    decimal_of,
    proposed,
    read_mapping,
    written,
)
from undertrim.record.imported.sheet import Row, Sheet, sheet

__all__ = [
    "SKIP",
    "UNDECIDED",
    "BadMapping",
    "Column",
    "Mapping",
    "Row",
    "Said",
    "Sheet",
    "Table",
    "decimal_of",
    "proposed",
    "read_mapping",
    "sheet",
    "written",
]
