"""What to say of a list that stands for the usual fields of a block and has more entries than there are fields: most often a comma cut one in two."""

from collections.abc import Sequence
from itertools import pairwise

from undertrim.record.examples import typed
from undertrim.words import Items, Message, Value, message


def too_many(name: Value, fields: Sequence[str], entries: Sequence[object]) -> Message:
    """The complaint, with the list as it was probably meant where one comma made one entry too many."""
    names, hint = Items(tuple(fields), "comma"), "spread/as-list"
    meant: dict[str, Value] = {}
    if len(entries) == len(fields) + 1 and all(isinstance(entry, str) for entry in entries):
        meant, hint = {"meant": typed(_rejoined([str(entry) for entry in entries]))}, "spread/cut"
    return message("spread/short", name=name, most=len(fields), hint=message(hint, names=names, **meant))


def _rejoined(entries: Sequence[str]) -> list[str]:
    """The entries with two of them as one: a number that a decimal comma cut, else the last two, since sentences come last."""
    for at, (one, other) in enumerate(pairwise(entries)):
        if one.isdecimal() and other[:1].isdecimal() and not other.isdecimal():
            return [*entries[:at], f"{one}.{other}", *entries[at + 2 :]]
    return [*entries[:-2], f"{entries[-2]}, {entries[-1]}"]
