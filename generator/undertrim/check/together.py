"""What the rules over several records find that they did not find before, asked of the changed records and of the few that these can meet.

To read a collection takes long. So the others are chosen by what costs little: their names, and one pass over their bytes for the words that a record
which says the same must hold. What is chosen too many changes nothing, since what is found on both sides is not told.
Left to the check: vehicles that gear does not name, and that lack an interface because a receiver of the stock asks for more now (`interface-missing`).
"""

import re
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any, TypeVar, cast

from undertrim.check import names
from undertrim.check.across import across
from undertrim.check.copies import SECTIONS, WHOLE
from undertrim.check.one_file import Looked, neighbour
from undertrim.check.runner import settled_across
from undertrim.record.gear import GearFacts
from undertrim.record.model import VehicleFacts
from undertrim.record.model.kinds.receiver import KitGear
from undertrim.record.problem import Problem
from undertrim.record.source import Data
from undertrim.record.store import Entry, Workspace, address
from undertrim.words import ENGLISH, sentence
from undertrim.work.crew import Crew, Failed

_YEARS = re.compile(r"-[0-9]{4}-[0-9]{4}(?:-|$)")
_RUN = re.compile(r"[0-9A-Za-z-]{2,}")
"""What stands unbroken and unescaped however a text is quoted or folded."""
_LETTERS = re.compile(r"[A-Za-z]{2,}")
_TEXTS = ("name", "how", "note")
"""Fields that hold what somebody typed, and never what follows from something else."""
_NAMED = ("parts", "connectors")
_FEW = 12
"""So many files are sooner read here than handed to workers."""
_CALLED = 400
"""Bytes within which other names of a model are looked for."""
_ENOUGH = 16
"""So many words are looked for."""
_TWO = 2
"""A copy is told by so many sections that are the same (`record-copied`)."""

K = TypeVar("K")
V = TypeVar("V")
Words = tuple[bytes, ...]


@dataclass(frozen=True, slots=True)
class Seen:
    """One changed record on one side: what the rules for the collection see of it, and the words by which another one would say the same."""

    looked: Looked
    looks: Mapping[str, Words] = field(default_factory=dict)
    """The words of each look at a car, by its digest."""
    sections: Mapping[str, Words] = field(default_factory=dict)
    """The words of each section that is large enough to tell a copy, by its digest."""
    ids: frozenset[str] = frozenset()
    """What gear may name of it: its parts and plugs."""


def seen(entry: Entry, shown: Path) -> Seen:
    """What is to be known of a record that was read; `shown` is where problems say that it stands."""
    looked = neighbour(entry)
    card = looked.card
    here = replace(looked, path=shown, card=replace(card, path=shown) if card else None)
    if card is None or not isinstance(card.facts, VehicleFacts) or not isinstance(entry.source.data, dict):
        return Seen(here)
    data = entry.source.data
    evidence = data.get("evidence")
    looks = {look: _words(evidence[name]) for name, look in card.looks.items()} if isinstance(evidence, dict) else {}
    told = (name for name in reversed(SECTIONS) if name in card.sections)
    sections = {card.sections[name]: _ids_and_texts(data[name]) for name in told}
    named = frozenset(name for section in _NAMED for name in data.get(section) or ())
    return Seen(here, looks, sections, named)


def differing(
    here: Workspace, before: Sequence[Seen], now: Sequence[Seen], stock: Sequence[Looked], files: Sequence[Path]
) -> tuple[tuple[Problem, ...], tuple[Problem, ...]]:
    """What is found now and was not, and what is no longer found, by file. `stock` is the gear that did not change, `files` the vehicles that did not."""
    changed = [*before, *now]
    read = list(_read(here, _meeting(before, now, _suited(before, now, stock), files)))
    there = {one.card.address for one in (*read, *(one.looked for one in changed)) if one.card}
    others = [*(_of(item, there) for item in stock), *read]
    was, found = (_keyed(_told([*others, *(one.looked for one in side)])) for side in (before, now))
    return _less(found, was), _less(was, found)


def _of(item: Looked, vehicles: Collection[str]) -> Looked:
    """Gear as if it named no other vehicles: what was not read is not absent."""
    card = item.card
    if card is None or not isinstance(card.facts, GearFacts) or not card.facts.suits:
        return item
    facts: Any = cast("Any", card.facts)  # what names vehicles has the field
    places = tuple(place for place in facts.suits if place.vehicle in vehicles)
    return replace(item, card=replace(card, facts=replace(facts, suits=places)))


_Keyed = dict[tuple[Path, str, str], Problem]


def _keyed(some: Iterable[Problem]) -> _Keyed:
    """Each problem by what is wrong in which file: where it stands there does not count."""
    return {(one.file, one.rule, sentence(one.said, ENGLISH)): one for one in some}


def _less(some: _Keyed, others: _Keyed) -> tuple[Problem, ...]:
    left = (problem for key, problem in some.items() if key not in others)
    return tuple(sorted(left, key=lambda problem: problem.sort_key))


def _told(looked: Sequence[Looked]) -> Iterator[Problem]:
    in_order = sorted(looked, key=lambda item: item.path)
    said = across(in_order)
    for item in in_order:
        yield from settled_across(item, said.of(item))


def _read(here: Workspace, paths: Sequence[Path]) -> Iterator[Looked]:
    work = partial(_neighbour, here)
    if len(paths) <= _FEW:
        yield from map(work, paths)
        return
    with Crew() as workers:
        yield from (found for found in workers.each(work, paths) if not isinstance(found, Failed))


def _neighbour(here: Workspace, path: Path) -> Looked:
    return neighbour(here.load(path))


def _meeting(before: Sequence[Seen], now: Sequence[Seen], suited: Collection[str], files: Sequence[Path]) -> list[Path]:
    """The vehicles among some files that one of the changed records can meet by what is another one about it."""
    was, is_ = ({_itself(one) for one in side} for side in (before, now))
    others = [one.looked for one in (*before, *now) if _itself(one) in was ^ is_]
    cars = [one.card.facts for one in others if one.card and isinstance(one.card.facts, VehicleFacts)]
    near = _Near(cars, {one.path.stem for one in others}, {path.parent.name for path in files})
    looks = [{digest: words for one in side for digest, words in one.looks.items()} for side in (before, now)]
    copies = [{tuple(one.sections): tuple(one.sections.values()) for one in side} for side in (before, now)]
    wanted: list[tuple[int, Sequence[Words]]] = [(1, (words,)) for words in _apart(*looks)]
    wanted += [(_TWO, sections) for sections in _apart(*copies) if len(sections) >= _TWO]
    return [
        path
        for path in files
        if (suited and address(path) in suited)
        or near.by_name(path)
        or (
            (wanted or near.one_make(path)) and _holds(path.read_bytes(), wanted, near if near.one_make(path) else None)
        )
    ]


def _apart(some: Mapping[K, V], others: Mapping[K, V]) -> list[V]:
    """What only one of two mappings has."""
    return [{**some, **others}[key] for key in some.keys() ^ others.keys()]


def _itself(one: Seen) -> tuple[str, ...]:
    """What a record says of which cars it is of, and whether it is another one at all to whoever compares whole records."""
    card = one.looked.card
    return (card.address, card.marks["facts"], card.sections.get(WHOLE, "")) if card else ()


def _suited(before: Sequence[Seen], now: Sequence[Seen], stock: Sequence[Looked]) -> set[str]:
    """The vehicles that must be there for what is said of gear: those that changed gear names, and beside a vehicle of which a named part or plug is another one all that the same gear names."""
    found = {name for one in (*before, *now) for name in _places(one.looked)}
    was, is_ = ({one.looked.card.address: one.ids for one in side if one.looked.card} for side in (before, now))
    others = {name: was.get(name, frozenset()) ^ is_.get(name, frozenset()) for name in (*was, *is_)}
    for item in stock:
        places = _places(item)
        if any(_named(item, others[name]) for name in places if name in others):
            found.update(places)
    return found


def _places(looked: Looked) -> tuple[str, ...]:
    """The vehicles that a piece of gear names, where something of them is joined to it, altered or built from; none for a vehicle."""
    facts = looked.card.facts if looked.card else None
    return tuple(place.vehicle for place in facts.suits) if isinstance(facts, GearFacts) else ()


def _named(looked: Looked, ids: Iterable[str]) -> bool:
    """Whether gear names one of the parts or plugs of a vehicle, in any of its forms."""
    facts = looked.card.facts if looked.card else None
    steps = facts.assembly if isinstance(facts, KitGear) else ()
    names_of = {*(facts.plugs if isinstance(facts, GearFacts) else ()), *(step.part for step in steps)}
    return any(one == name or one.startswith(f"{name}-") for one in ids for name in names_of if name)


def _holds(content: bytes, wanted: Sequence[tuple[int, Sequence[Words]]], near: "_Near | None") -> bool:
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


class _Near:
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


def _words(value: Data) -> Words:
    """The words of all texts, the rarest first."""
    return _ordered(word for text in _texts(value) for word in _RUN.findall(text))


def _ids_and_texts(section: Data) -> Words:
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
