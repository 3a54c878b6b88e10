"""One order of steps: of a selection, and the master order of a whole record that its selections follow."""

import heapq
from collections.abc import Iterable, Mapping
from typing import Any, Protocol

from undertrim.derive.procedure.cheapest import Selection
from undertrim.derive.procedure.cycles import refuse_blocked
from undertrim.derive.procedure.freeing import ready
from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.walks import components


class Sortable(Protocol):
    """Anything that compares with its like."""

    def __lt__(self, other: Any, /) -> bool: ...


Rank = Mapping[str, Sortable]
"""Where each node would like to stand; equal ranks stand in file order."""


def order(graph: Graph, selection: Selection, rank: Rank) -> tuple[str, ...]:
    """The selected nodes, each after its AND prerequisites and the routes it relies on, smallest rank first.

    Only prerequisites inside the selection count. Raises Unreachable when they go round in a circle, which no
    selection of `cheapest_set` on the same graph does; KeyError for a node without a rank.
    """
    before = {node: set(graph.before[node]) for node in graph.in_file_order(selection.nodes)}
    for (node, choice), route in selection.routes.items():
        before[node] |= graph.any_of[node][choice][route]
    before = {node: needed & selection.nodes for node, needed in before.items()}
    queue = _Queue(graph, before, rank)
    queue.drain()
    if queue.waiting:
        refuse_blocked(Graph({node: graph.costs[node] for node in before}, before), queue.waiting)
    return tuple(queue.taken)


def master_order(graph: Graph, rank: Rank) -> tuple[str, ...]:
    """All nodes of the graph in one stable order, smallest rank first.

    AND prerequisites always come first. So do the nodes of every route, except where routes close a circle:
    there one node at a time is let go ahead of its routes, one with a whole route of each choice done if any
    has that, and of those the smallest rank. So this order frees a graph in which everything can be freed.
    Without choices, `order` ranked by the place in this order gives a subsequence of it.
    Raises Unreachable when AND prerequisites go round in a circle; KeyError for a node without a rank.
    """
    queue = _Queue(graph, {node: set(needs) for node, needs in graph.needs.items()}, rank)
    queue.drain()
    while queue.waiting:
        loose = _loose(graph, queue.waiting)
        if not loose:
            refuse_blocked(graph, queue.waiting)
        queue.let_go(min(loose, key=lambda node: (not _workable(graph, node, queue), queue.key[node])))
        queue.drain()
    return tuple(queue.taken)


class _Queue:
    """Kahn's algorithm with a priority queue ("Topological sorting of large networks", CACM 5(11), 1962)."""

    def __init__(self, graph: Graph, before: Mapping[str, set[str]], rank: Rank) -> None:
        self.waiting = dict(before)
        self.key = {node: (rank[node], graph.place[node]) for node in before}
        self.taken: dict[str, None] = {}
        self._free: list[tuple[tuple[Sortable, int], str]] = []
        self._after: dict[str, list[str]] = {node: [] for node in before}
        for node, needed in before.items():
            for other in needed:
                self._after[other].append(node)
        self._let_go_all(before)

    def drain(self) -> None:
        """Take free nodes until there are none."""
        while self._free:
            node = heapq.heappop(self._free)[1]
            self.taken[node] = None
            for later in self._after[node]:
                if later in self.waiting:
                    self.waiting[later].discard(node)
            self._let_go_all(self._after[node])

    def let_go(self, node: str) -> None:
        """Free a node, whatever it still waits for."""
        del self.waiting[node]
        heapq.heappush(self._free, (self.key[node], node))

    def _let_go_all(self, nodes: Iterable[str]) -> None:
        for node in [node for node in nodes if node in self.waiting and not self.waiting[node]]:
            self.let_go(node)


def _loose(graph: Graph, waiting: Mapping[str, set[str]]) -> list[str]:
    """Nodes held only by routes, in circles which wait for nothing outside themselves."""
    circles = [circle for circle in components(waiting) if all(waiting[node] <= circle for node in circle)]
    return [node for circle in circles for node in circle if graph.before[node].isdisjoint(waiting)]


def _workable(graph: Graph, node: str, queue: _Queue) -> bool:
    return ready(queue.taken.keys(), graph.before[node], graph.any_of.get(node, ()))
