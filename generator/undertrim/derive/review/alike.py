"""Which things of before are which of now: by their ids, and where an id is gone and a new one says nearly the same, by what they say."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from difflib import SequenceMatcher
from typing import Any, TypeVar

from undertrim.derive.evidence.fingerprint import BY_ID
from undertrim.record.model import VehicleRecord

ALIKE = 0.6
"""From here on two things are one under another name; ours, so that a panel with one more screw still is the same panel."""
_NAMES = frozenset({"id", "form_of", "named_for", "source"})
Thing = TypeVar("Thing")

Renamed = Mapping[str, Mapping[str, str]]
"""By section the id of now for each id of before that has another one."""


def renamed(before: VehicleRecord, after: VehicleRecord) -> Renamed:
    """The things of each section that go by another id now."""
    found = {name: of_entries(getattr(before, name), getattr(after, name)) for name in BY_ID}
    return {name: some for name, some in found.items() if some}


def of_entries(before: Mapping[str, Any], after: Mapping[str, Any]) -> dict[str, str]:
    """The entries of one mapping that go by another id now, the most alike first."""
    gone = {name: one for name, one in before.items() if name not in after}
    new = {name: one for name, one in after.items() if name not in before}
    pairs = _closest(list(gone.items()), list(new.items()))
    return {str(gone_id): str(new_id) for (gone_id, _), (new_id, _) in pairs}


def entries(before: Sequence[Thing], after: Sequence[Thing]) -> Iterator[tuple[int | None, int | None]]:
    """The places of the entries of a list, before and now: those that are the same first, then those most alike; None for one that is gone or new."""
    same = SequenceMatcher(None, [_told(one) for one in before], [_told(one) for one in after], autojunk=False)
    pairs = {block.a + step: block.b + step for block in same.get_matching_blocks() for step in range(block.size)}
    taken = set(pairs.values())
    left = [(place, one) for place, one in enumerate(before) if place not in pairs]
    free = [(place, one) for place, one in enumerate(after) if place not in taken]
    pairs |= {was: now for (was, _), (now, _) in _closest(left, free)}
    found = set(pairs.values())
    yield from ((was, pairs.get(was)) for was in range(len(before)))
    yield from ((None, now) for now in range(len(after)) if now not in found)


_Entry = tuple[Any, Any]


def _closest(gone: Sequence[_Entry], new: Sequence[_Entry]) -> Iterator[tuple[_Entry, _Entry]]:
    scored = [
        (score, at, to)
        for at, one in enumerate(gone)
        for to, other in enumerate(new)
        if (score := _likeness(one[1], other[1])) >= ALIKE
    ]
    taken: set[int] = set()
    given: set[int] = set()
    for _, at, to in sorted(scored, key=lambda one: (-one[0], one[1], one[2])):
        if at not in taken and to not in given:
            taken.add(at)
            given.add(to)
            yield gone[at], new[to]


def _likeness(one: Any, other: Any) -> float:
    """From 0 to 1: how much of what the two say is the same; things of two sorts are not alike."""
    if type(one) is not type(other):
        return 0.0
    if not is_dataclass(one) or isinstance(one, type):
        return SequenceMatcher(None, str(one), str(other), autojunk=False).ratio()
    said = [(getattr(one, entry.name), getattr(other, entry.name)) for entry in fields(one) if entry.name not in _NAMES]
    told = [(was, now) for was, now in said if was or now]
    return sum(map(_agreeing, told)) / len(told) if told else 0.0


def _agreeing(pair: tuple[Any, Any]) -> float:
    was, now = pair
    if was == now:
        return 1.0
    if isinstance(was, str) and isinstance(now, str):
        return SequenceMatcher(None, was, now, autojunk=False).ratio()
    return 0.0


def _told(one: object) -> str:
    """What an entry says beside who says so."""
    if is_dataclass(one) and not isinstance(one, type) and "source" in {entry.name for entry in fields(one)}:
        return repr(replace(one, source=()))
    return repr(one)
