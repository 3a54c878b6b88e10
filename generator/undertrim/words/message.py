"""A message before it is words: a code with typed values."""

from dataclasses import dataclass
from typing import Union


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the program's own from a data table: `Word("states", "state", "glass", "label")`.

    A name that a record gave to a thing is plain text instead: it is the record's own, in the record's language.
    """

    table: str
    entry: tuple[str, ...]


Value = Union[str, int, float, Word, "Message"]


@dataclass(frozen=True, slots=True)
class Message:
    """What is to be said, by its code in the catalogue (`replay/left-off`), and the values that belong into the sentence, by name."""

    code: str
    values: tuple[tuple[str, Value], ...] = ()


def message(code: str, **values: Value) -> Message:
    """A message from its code and values."""
    return Message(code, tuple(values.items()))


def word(table: str, *entry: str) -> Word:
    """A word of a data table."""
    return Word(table, entry)
