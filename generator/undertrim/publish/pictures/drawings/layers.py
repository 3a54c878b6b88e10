"""Layers of a graph of what comes before what, for a drawing from top to bottom: longest paths, so many in a row, few crossings."""

import itertools
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

Edge = tuple[int, int]
"""What comes first, and what waits for it, by their places in a list."""


@dataclass(frozen=True, slots=True)
class Item:
    """One thing in a layer: a node, or the place where the line `edge` passes it."""

    node: int | None
    edge: Edge | None = None


def acyclic(count: int, edges: Iterable[Edge]) -> list[Edge]:
    """The edges in their order without those that would close a circle: cars that differ may come apart in different orders."""
    kept: list[Edge] = []
    after: list[set[int]] = [set() for _ in range(count)]
    for first, then in edges:
        if first != then and first not in _reach(after, then):
            after[first].add(then)
            kept.append((first, then))
    return kept


def reduced(count: int, edges: Sequence[Edge]) -> list[Edge]:
    """The edges of a graph without cycles, without those that others say together."""
    after: list[set[int]] = [set() for _ in range(count)]
    for first, then in edges:
        after[first].add(then)
    below = [_reach(after, node) for node in range(count)]
    return [(first, then) for first, then in edges if not any(then in below[other] for other in after[first] - {then})]


def groups(count: int, edges: Iterable[Edge]) -> list[list[int]]:
    """The nodes that hang together, each group and all groups in the order of their first node."""
    beside: list[set[int]] = [set() for _ in range(count)]
    for first, then in edges:
        beside[first].add(then)
        beside[then].add(first)
    found: list[list[int]] = []
    seen: set[int] = set()
    for node in range(count):
        if node not in seen:
            together = {node, *_reach(beside, node)}
            seen |= together
            found.append(sorted(together))
    return found


def layered(nodes: Sequence[int], edges: Sequence[Edge], most: int) -> Sequence[Sequence[Item]]:
    """The nodes from top to bottom in layers of at most `most`, each as low as what waits for it allows, with a place in each layer that a line passes.

    Edges must have no cycle.
    """
    return _layered(tuple(nodes), tuple(edges), most)


@lru_cache(maxsize=256)  # two pages draw the same map, in each language: it has no words
def _layered(nodes: tuple[int, ...], edges: tuple[Edge, ...], most: int) -> Sequence[Sequence[Item]]:
    depth = _depths(nodes, edges, most)
    last = max(depth.values(), default=-1)
    rows: list[list[Item]] = [[] for _ in range(last + 1)]
    for node in nodes:
        rows[last - depth[node]].append(Item(node))
    for first, then in edges:
        for passed in range(last - depth[first] + 1, last - depth[then]):
            rows[passed].append(Item(None, (first, then)))
    return _untangled(rows, edges)


def _depths(nodes: Sequence[int], edges: Sequence[Edge], most: int) -> dict[int, int]:
    """How many layers above the lowest each node stands: above all that waits for it, where there is room in the layer."""
    waiting: Mapping[int, set[int]] = {node: {then for first, then in edges if first == node} for node in nodes}
    depth: dict[int, int] = {}
    taken: dict[int, int] = {}
    while len(depth) < len(nodes):
        ready = [node for node in nodes if node not in depth and all(then in depth for then in waiting[node])]
        node = min(ready, key=lambda one: max((depth[then] for then in waiting[one]), default=-1))
        at = max((depth[then] for then in waiting[node]), default=-1) + 1
        while taken.get(at, 0) >= most:
            at += 1
        depth[node] = at
        taken[at] = taken.get(at, 0) + 1
    return depth


def _untangled(rows: list[list[Item]], edges: Sequence[Edge]) -> list[list[Item]]:
    """Each row in an order in which fewer lines cross: by the middle of its neighbours, down and up again, the best of all tries."""
    best, least = rows, crossings(rows, edges)
    for sweep in range(8):
        if not least:  # as in most cars from the start
            break
        down = sweep % 2 == 0
        rows = [list(row) for row in rows]
        for at in range(1, len(rows)) if down else range(len(rows) - 2, -1, -1):
            other = {item: place for place, item in enumerate(rows[at - 1 if down else at + 1])}
            rows[at] = _by_middle(rows[at], other, edges, down=down)
        crossed = crossings(rows, edges)
        if crossed < least:
            best, least = rows, crossed
    return best


def _by_middle(row: list[Item], other: Mapping[Item, int], edges: Sequence[Edge], *, down: bool) -> list[Item]:
    def middle(place: int) -> float:
        found = [other[item] for item in _neighbours(row[place], other, edges, down=down)]
        return sum(found) / len(found) if found else place

    return [row[place] for place in sorted(range(len(row)), key=lambda place: (middle(place), place))]


def _neighbours(item: Item, other: Collection[Item], edges: Sequence[Edge], *, down: bool) -> list[Item]:
    """What a line leads to in the row above (`down`) or below."""
    mine = [item.edge] if item.edge else [edge for edge in edges if edge[1 if down else 0] == item.node]
    return [one for one in (_end(edge, other, down=down) for edge in mine) if one]


def _end(edge: Edge, other: Collection[Item], *, down: bool) -> Item | None:
    passing, node = Item(None, edge), Item(edge[0 if down else 1])
    return passing if passing in other else node if node in other else None


def crossings(rows: Sequence[Sequence[Item]], edges: Sequence[Edge]) -> int:
    """How often lines cross between neighbouring rows."""
    count = 0
    for upper, lower in itertools.pairwise(rows):
        places = {item: place for place, item in enumerate(upper)}
        lines = [
            (places[end], place)
            for place, item in enumerate(lower)
            for end in _neighbours(item, places, edges, down=True)
        ]
        count += sum((a - c) * (b - d) < 0 for at, (a, b) in enumerate(lines) for c, d in lines[:at])
    return count


def _reach(after: Sequence[Collection[int]], start: int) -> set[int]:
    found: set[int] = set()
    left = list(after[start])
    while left:
        node = left.pop()
        if node not in found:
            found.add(node)
            left.extend(after[node])
    return found
