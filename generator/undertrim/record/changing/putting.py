"""Puts a value at a place of a record and proves that this, and nothing else, is what changed."""

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass

from undertrim.record.changing.edits import Editing, at
from undertrim.record.layout.proof import spoken_of
from undertrim.record.migrations.marked import edited
from undertrim.record.model import Blank
from undertrim.record.source import Data, Pointer, Source
from undertrim.words import SaidError, message

UNKNOWN = str(Blank.UNKNOWN)

Read = Callable[[str], Source]
"""From the text of a record to its source, spread into the whole."""


class CannotPut(SaidError, ValueError):  # noqa: N818 - it names what happened
    """The text is laid out in a way that takes no such value without changing something else."""


@dataclass(frozen=True, slots=True)
class Change:
    """One value at a place of the whole: a text, a list, or a mapping, as it is to be typed.

    `whole` is what the whole then says there, where that is not the same. `may_follow` are places at which the whole may say it too,
    `may_be_unknown` such at which it may say that nobody knows.
    """

    place: Pointer
    value: Data
    whole: Data = None
    may_follow: Collection[Pointer] = ()
    may_be_unknown: Collection[Pointer] = ()

    @property
    def says(self) -> Data:
        """What the whole says there."""
        return self.value if self.whole is None else self.whole


def put(source: Source, change: Change, read: Read) -> Source:
    """The source in which the whole says `change.says` at `change.place`, and all else as it did. Raises CannotPut."""
    editing = Editing.of(source)
    before = spoken_of(source.as_typed)
    for way in editing.ways(change.place, change.value):
        for edits in way:
            after = read(edited(editing.marked.text, edits))
            if not _says_just(source, after, change):
                break
            if spoken_of(after.as_typed) == before:
                return after
    raise CannotPut(message("claims/cannot-put", place="/".join(map(str, change.place))))


def _says_just(before: Source, after: Source, change: Change) -> bool:
    if after.problems or _faults(after) != _faults(before) or at(after.data, change.place) != change.says:
        return False
    return all(
        place[: len(change.place)] == change.place
        or (place in change.may_follow and said == change.says)
        or (place in change.may_be_unknown and said == UNKNOWN)
        for place, said in differences(before.data, after.data, ())
    )


def _faults(source: Source) -> int:
    return len(source.origin.faults) if source.origin else 0


def differences(old: Data, new: Data, place: Pointer) -> Iterator[tuple[Pointer, Data]]:
    """Each text or list that differs, with what it is now; None where it is gone."""
    if isinstance(old, dict) and isinstance(new, dict):
        for key in (*old, *(key for key in new if key not in old)):
            yield from differences(old.get(key), new.get(key), (*place, key))
    elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new) and _of_blocks(new):
        for number, (one, other) in enumerate(zip(old, new, strict=True)):
            yield from differences(one, other, (*place, number))
    elif old is None and isinstance(new, dict) and new:
        yield from differences({}, new, place)
    elif old != new:
        yield place, new


def _of_blocks(values: list[Data]) -> bool:
    return any(isinstance(value, dict) for value in values)
