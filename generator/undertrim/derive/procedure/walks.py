"""Walks over plain edge maps, node -> the nodes it needs first: orders, strong components, shortest paths."""

from collections import deque
from collections.abc import Collection, Iterable, Iterator, Mapping

Edges = Mapping[str, Collection[str]]


def reach(edges: Edges, starts: Iterable[str], avoid: Collection[str] = ()) -> set[str]:
    """The starts and everything that can be walked to from them without touching `avoid`."""
    found = set(starts)
    left = list(found)
    while left:
        fresh = [node for node in edges[left.pop()] if node not in found and node not in avoid]
        found.update(fresh)
        left.extend(fresh)
    return found


def postorder(edges: Edges) -> list[str]:
    """Every node, after all it needs wherever no cycle forbids it. Not recursive: chains may be long."""
    seen: set[str] = set()
    finished: list[str] = []
    for start in edges:
        if start not in seen:
            finished.extend(_finish(edges, start, seen))
    return finished


def _finish(edges: Edges, start: str, seen: set[str]) -> Iterator[str]:
    seen.add(start)
    stack = [(start, iter(edges[start]))]
    while stack:
        node, rest = stack[-1]
        deeper = next((other for other in rest if other not in seen), None)
        if deeper is None:
            stack.pop()
            yield node
        else:
            seen.add(deeper)
            stack.append((deeper, iter(edges[deeper])))


def components(edges: Edges) -> list[set[str]]:
    """The strongly connected components, by two depth-first walks (Kosaraju and Sharir)."""
    back: dict[str, set[str]] = {node: set() for node in edges}
    for node, needed in edges.items():
        for other in needed:
            back[other].add(node)
    found: list[set[str]] = []
    seen: set[str] = set()
    for start in reversed(postorder(edges)):
        if start not in seen:
            found.append(reach(back, [start], avoid=seen))
            seen |= found[-1]
    return found


def shortest_path(edges: Edges, start: str, goals: Collection[str]) -> tuple[str, ...]:
    """The shortest walk of at least one step from `start` to a goal, both ends included; () where none leads.

    Of equally short walks, the one that follows the earlier edges.
    """
    came_from: dict[str, str] = {}
    queue = deque([start])
    while queue:
        node = queue.popleft()
        for other in edges[node]:
            if other in goals:
                return (*_trail(came_from, start, node), other)
            if other != start and other not in came_from:
                came_from[other] = node
                queue.append(other)
    return ()


def _trail(came_from: Mapping[str, str], start: str, end: str) -> tuple[str, ...]:
    trail = [end]
    while trail[-1] != start:
        trail.append(came_from[trail[-1]])
    return tuple(reversed(trail))


def shortest_cycles(edges: Edges) -> list[tuple[str, ...]]:
    """One shortest cycle per strongly connected component that has any, its first node repeated at the end.

    Each starts at its node earliest in `edges`, and the list is sorted by that start.
    """
    place = {node: i for i, node in enumerate(edges)}
    cycles = [_shortest_cycle(edges, sorted(inside, key=place.__getitem__)) for inside in components(edges)]
    return sorted(filter(None, cycles), key=lambda cycle: place[cycle[0]])


def _shortest_cycle(edges: Edges, component: list[str]) -> tuple[str, ...]:
    members = set(component)
    inside = {node: [other for other in edges[node] if other in members] for node in component}
    cycles = [cycle for node in component if (cycle := shortest_path(inside, node, {node}))]
    return min(cycles, key=len, default=())
