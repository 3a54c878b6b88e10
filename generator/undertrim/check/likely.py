"""Whether a file may say what another record says, told by its name and its bytes: to read it as a record takes a hundred times as long."""

import re
from collections.abc import Collection, Iterable, Iterator, Sequence
from pathlib import Path

from undertrim.check import names
from undertrim.record.model import VehicleFacts
from undertrim.record.source import Data

_YEARS = re.compile(r"-[0-9]{4}-[0-9]{4}(?:-|$)")
_RUN = re.compile(r"[0-9A-Za-z-]{2,}")
"""What stands unbroken and unescaped however a text is quoted or folded."""
_LETTERS = re.compile(r"[A-Za-z]{2,}")
_TEXTS = ("name", "how", "note")
"""Fields that hold what somebody typed, and never what follows from something else."""
_CALLED = 400
"""Bytes within which other names of a model are looked for."""
_ENOUGH = 16
"""So many words are looked for."""

Words = tuple[bytes, ...]


def holds(content: bytes, wanted: Sequence[tuple[int, Sequence[Words]]], near: "Near | None") -> bool:
    """Whether a file has all words of so many of the things that are looked for, or one `near` says that it follows, or is also called like, one of those cars."""
    if near and near.by_content(content):
        return True
    known: dict[bytes, bool] = {}
    return any(_so_many(content, every, least, known) for least, every in wanted)


def _so_many(content: bytes, every: Sequence[Words], least: int, known: dict[bytes, bool]) -> bool:
    left = len(every)
    for words in every:
        least -= all(_has(content, word, known) for word in words)
        left -= 1
        if not 0 < least <= left:
            break
    return least <= 0


def _has(content: bytes, word: bytes, known: dict[bytes, bool]) -> bool:
    if word not in known:
        known[word] = word in content
    return known[word]


class Near:
    """Names of makes and models that are those of some cars, or nearly."""

    def __init__(self, cars: Sequence[VehicleFacts], ids: Collection[str], folders: Collection[str]) -> None:
        self._ids = [f"follows: {name}".encode() for name in ids]
        self._folders = {folder: names.folded(folder.removesuffix("-make")) for folder in folders}
        self._makes = {names.folded(car.make) for car in cars}
        pairs = list(names.near_pairs({*self._makes, *self._folders.values()}))
        beside = {name for pair in pairs for name in pair if not self._makes.isdisjoint(pair)}
        self._whole = beside  # which of two makes is the slip is told by how many vehicles each has
        self._models = {names.folded(name) for car in cars for name in (car.model, *car.also_called)}
        self._alike: dict[str, bool] = {}

    def one_make(self, path: Path) -> bool:
        """Whether a file is of the make of one of the cars, by its folder."""
        return self._folders[path.parent.name] in self._makes

    def by_name(self, path: Path) -> bool:
        """Whether a file may be of the same model, by its name; all files of a make count that is nearly another."""
        if self._folders[path.parent.name] in self._whole:
            return True
        return self.one_make(path) and self._model(names.folded(_YEARS.split(path.stem)[0]))

    def by_content(self, content: bytes) -> bool:
        """Whether a file says that it follows one of the records, or that its model is also called like that of one."""
        _, _, called = content.partition(b"also_called:")
        other = names.folded(called[:_CALLED].decode("utf-8", "replace")) if called else ""
        return any(name in other for name in self._models) or any(follows in content for follows in self._ids)

    def _model(self, name: str) -> bool:
        if name not in self._alike:
            pairs = names.near_pairs({name, *self._models})
            self._alike[name] = name in self._models or any(name in pair for pair in pairs)
        return self._alike[name]


def words_of(value: Data) -> Words:
    """The words of all texts, the rarest first."""
    return _ordered(word for text in _texts(value) for word in _RUN.findall(text))


def ids_and_texts(section: Data) -> Words:
    """The words of the ids of things and of what was typed about them, the rarest first."""
    things = section if isinstance(section, dict) else {}
    ids = (word for name in things for word in _LETTERS.findall(name))
    named = (thing.get(key) for thing in things.values() if isinstance(thing, dict) for key in _TEXTS)
    return _ordered((*ids, *(word for text in named if isinstance(text, str) for word in _RUN.findall(text))))


def _ordered(found: Iterable[str]) -> Words:
    """The rarest first, probably: dates and numbered names, then the longest; so many that no file that says something else has all of them."""
    in_order = sorted(set(found), key=lambda word: (not any(map(str.isdigit, word)), -len(word), word))
    return tuple(word.encode() for word in in_order[:_ENOUGH])


def _texts(value: Data) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict | list):
        for inner in value.values() if isinstance(value, dict) else value:
            yield from _texts(inner)
