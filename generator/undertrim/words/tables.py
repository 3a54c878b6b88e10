"""The data tables with their words for people as words, so that they are said in the language of the reader."""

from typing import Any

from undertrim import resources
from undertrim.words.message import Word

LABELS = (
    *(
        "label",
        "noun",
        "plural",
        "name",
        "title",
        "how",
        "restore",
        "words",
        "do",
        "text",
        "note",
        "origin",
        "back",
        "try",
    ),
    *("restore_name", "undo", "rejoin", "park", "usual_test", "hazard", "consequence", "avoid", "reason"),
)
"""Keys of the data tables that hold words for people."""

WHOLE = (("functions", "sure"), ("functions", "together"), ("plug-marks", "mark"), ("fit", "absent"))
"""Sections of the data tables that hold words alone."""


def worded(name: str) -> Any:
    """A data table, each of its words for people a `Word`."""
    return _worded((name,), resources.table(name))


def is_word(place: tuple[str, ...], key: str, value: object) -> bool:
    """Whether what stands under a key at a place of a table is for people."""
    return (key in LABELS or place in WHOLE) and isinstance(value, str) and bool(value)


def _worded(place: tuple[str, ...], data: Any) -> Any:
    if not isinstance(data, dict):
        return data
    return {
        key: Word(place[0], (*place[1:], key)) if is_word(place, key, value) else _worded((*place, key), value)
        for key, value in data.items()
    }
