"""What the rules over several records find that they did not find before, asked of the changed records and of the few that these can meet.

To read a collection takes long. So the others are chosen by what costs little: their names, and one pass over their bytes for the words that a record
which says the same must hold. What is chosen too many changes nothing, since what is found on both sides is not told.
Left to the check: vehicles that gear does not name, and that lack an interface because a receiver of the stock asks for more now (`interface-missing`).
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any, TypeVar, cast

from undertrim.check.across import across
from undertrim.check.copies import SECTIONS, WHOLE
from undertrim.check.likely import Near, Words, holds, ids_and_texts, words_of
from undertrim.check.one_file import Looked, neighbour
from undertrim.check.runner import settled_across
from undertrim.record.gear import GearFacts
from undertrim.record.model import VehicleFacts
from undertrim.record.model.kinds.receiver import KitGear
from undertrim.record.problem import Problem
from undertrim.record.store import Entry, Workspace, address
from undertrim.words import ENGLISH, sentence
from undertrim.work.crew import Crew, Failed

_NAMED = ("parts", "connectors")
_FEW = 12
"""So many files are sooner read here than handed to workers."""
_TWO = 2
"""A copy is told by so many sections that are the same (`record-copied`)."""

K = TypeVar("K")
V = TypeVar("V")


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
    looks = {look: words_of(evidence[name]) for name, look in card.looks.items()} if isinstance(evidence, dict) else {}
    told = (name for name in reversed(SECTIONS) if name in card.sections)
    sections = {card.sections[name]: ids_and_texts(data[name]) for name in told}
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
    near = Near(cars, {one.path.stem for one in others}, {path.parent.name for path in files})
    looks = [{digest: words for one in side for digest, words in one.looks.items()} for side in (before, now)]
    copies = [{tuple(one.sections): tuple(one.sections.values()) for one in side} for side in (before, now)]
    wanted: list[tuple[int, Sequence[Words]]] = [(1, (words,)) for words in _apart(*looks)]
    wanted += [(_TWO, sections) for sections in _apart(*copies) if len(sections) >= _TWO]
    return [
        path
        for path in files
        if (suited and address(path) in suited)
        or near.by_name(path)
        or ((wanted or near.one_make(path)) and holds(path.read_bytes(), wanted, near if near.one_make(path) else None))
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
