"""The order in which parts go back and preparations are undone: the reverse of the way in, but for what a record says otherwise."""

import heapq
from collections.abc import Collection, Iterable, Mapping, Sequence

from undertrim.derive.procedure.node import OPENING
from undertrim.derive.procedure.nodes import Layout

Waits = Mapping[str, Collection[str]]


def waits(before: Mapping[str, Collection[str]], refit_after: Mapping[str, Collection[str]]) -> dict[str, set[str]]:
    """For each node of `before` what is back earlier: all that came off after it and because of it, and its `refit_after`."""
    found = {name: {other for other in refit_after.get(name, ()) if other in before} for name in before}
    for later, needed in before.items():
        for name in needed:
            if name in found:
                found[name].add(later)
    return found


def in_order(names: Sequence[str], waiting: Waits) -> list[str]:
    """The names as they come, each moved back only as far as it has to wait. Where they wait in a circle, the first goes ahead."""
    place = {name: number for number, name in enumerate(names)}
    left = {name: {other for other in waiting.get(name, ()) if other in place} for name in names}
    free = [place[name] for name in names if not left[name]]
    found: dict[str, None] = {}
    while len(found) < len(names):
        name = names[heapq.heappop(free) if free else _first(place, found)]
        if name not in found:
            found[name] = None
            for other in _freed(name, left, found):
                heapq.heappush(free, place[other])
    return list(found)


def _first(place: Mapping[str, int], found: Collection[str]) -> int:
    return min(number for name, number in place.items() if name not in found)


def _freed(name: str, left: Mapping[str, set[str]], found: Collection[str]) -> Iterable[str]:
    for other, rest in left.items():
        if name in rest:
            rest.discard(name)
            if not rest and other not in found:
                yield other


def ranked(layout: Layout, rank: Iterable[str]) -> dict[str, int]:
    """The place of each node on the way back of a whole record, `rank` being its nodes on the way in; empty where it is the plain reverse.

    Every visit follows it, so that the steps of a visit are a part of those of all visits.
    """
    if not any(layout.refit_after.values()):
        return {}
    names = [name for name in reversed(list(rank)) if not name.startswith(OPENING)]
    return {name: i for i, name in enumerate(in_order(names, waits(layout.ordering.needs, layout.refit_after)))}
