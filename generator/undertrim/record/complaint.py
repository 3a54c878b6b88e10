"""What a contributor reads about one place that the schema refuses."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record.numerals import quoted
from undertrim.record.reader import Pointer
from undertrim.words import Message, message


@dataclass(frozen=True, slots=True)
class Complaint:
    """What is wrong at one place; `key` points at the key instead of its value.

    `lacks` are the fields of which one is missing there; `meant` is the field that a wrong key most likely stands
    for. `stays` tells that the value is of the right kind, so that the rest can be looked at with it. `typed` tells that the place is one of the file, not of what it is spread into.
    """

    pointer: Pointer
    said: Message
    key: bool = False
    lacks: tuple[str, ...] = ()
    meant: str = ""
    stays: bool = False
    typed: bool = False

    @property
    def topic(self) -> Message | None:
        """What else could be said of the same place; None where one thing said of it is enough."""
        if not self.key and not self.lacks:
            return None
        return Message(self.said.code, {name: value for name, value in self.said.values.items() if name != "hint"})


Complaints = Iterator[Complaint]


def has_key(pointer: Pointer) -> bool:
    """Whether what stands there has a key of its own, as against a list entry or the whole record."""
    return bool(pointer) and isinstance(pointer[-1], str)


def place_name(pointer: Pointer) -> Message:
    """A place in words: the name of the field, or the number of the entry in its list."""
    names = [step for step in pointer if isinstance(step, str)]
    if not names:
        return message("schema/the-record")
    last = pointer[-1]
    if isinstance(last, int):
        return message("schema/entry", number=last + 1, field=quoted(names[-1]))
    return quoted(last)
