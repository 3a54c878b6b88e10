"""The tables that electrical sums rest on, as data for the scripts."""

from typing import Any

from undertrim.publish.encoding import said
from undertrim.words.tables import worded

_TABLES = ("print", "defaults", "cable", "ampacity", "fuses")


def tables() -> dict[str, Any]:
    """The data tables that the scripts compute with, their words in the language of the reader."""
    return {name: worded_table(f"electrical-{name}") for name in _TABLES}


def worded_table(name: str) -> dict[str, Any]:
    """A data table with its words in the language of the reader."""
    return dict(said(worded(name)))
