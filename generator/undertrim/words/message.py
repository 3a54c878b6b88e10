"""A message before it is words: a code with typed values."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol, Union

if TYPE_CHECKING:
    from undertrim.words.language import Language


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the program's own from a data table: `Word("states", ("state", "glass", "label"))`.

    A name that a record gave to a thing is plain text instead: it is the record's own, in the record's language.
    """

    table: str
    entry: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Items:
    """Several values as they are listed in a sentence: by commas, and with `and` or `or` before the last; or all by `comma`, `semicolon`, `plus`, `arrow`, `either` (with `or` before each) or `spaced`."""

    values: tuple["Value", ...]
    joined: str = "and"


@dataclass(frozen=True, slots=True)
class WayOut:
    """The way out of another message, as it stands in this one's."""

    of: "Message"


class Sayable(Protocol):
    """A value that knows its own words, as a length does that is said in both systems of units."""

    def say(self, speech: "Language", /) -> str:
        """The value in words of a language."""


Value = Union[str, int, float, Word, Items, WayOut, Sayable, "Message"]


@dataclass(frozen=True, slots=True)
class Message:
    """What is to be said, by its code in the catalogue (`replay/left-off`), and the values that belong into the sentence, by name.

    A vehicle has some ten thousand, so the values are held as `message` gets them. Nobody changes them; they count when messages are compared, and not in a hash.
    """

    code: str
    values: Mapping[str, Value] = field(default_factory=dict, hash=False)


def message(code: str, /, **values: Value) -> Message:
    """A message from its code and values; where its sentence has a singular, the value `count` decides."""
    return Message(code, values)


def word(table: str, /, *entry: str) -> Word:
    """A word of a data table."""
    return Word(table, entry)


def all_of(*values: Value) -> Items:
    """Values listed with `and`."""
    return Items(values)


def one_of(*values: Value) -> Items:
    """Values listed with `or`."""
    return Items(values, "or")


def quoted(value: Value, /) -> Message:
    """A value in quotes, as a name or a word of a record stands in a list."""
    return message("lists/quoted", value=value)


def some_of(names: Sequence[str], most: int, /) -> Value:
    """Names in quotes, listed by commas; of more than `most` the rest is counted."""
    shown = Items(tuple(map(quoted, names[:most])), "comma")
    return message("lists/and-more", names=shown, count=len(names) - most) if len(names) > most else shown
