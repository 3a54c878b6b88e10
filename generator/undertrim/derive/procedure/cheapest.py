"""The cheapest set of nodes that frees the targets, shared prerequisites counted once."""

import heapq
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from itertools import count

from undertrim.derive.procedure.cycles import refuse_blocked
from undertrim.derive.procedure.freeing import free
from undertrim.derive.procedure.graph import Choice, Graph, Route, ancestors
from undertrim.words import Items, Message, Value, message

MOST_STATES = 5_000
"""Sets the search may look at, so that a hostile record cannot stop the run: with OR routes the problem is as
hard as set cover (Goldwasser and Motwani, 1999, on assembly sequences: from memory)."""

Weight = tuple[Decimal, int, int]
"""Cost, number of nodes, and a number which is smaller the earlier the nodes stand in the file. Adds up over
disjoint sets, and no two sets have the same."""

_LEAST: Weight = (Decimal(), 0, 0)


class TooTangled(Exception):  # noqa: N818 - it names the state of the graph
    """The choices of a graph interlock so much that the cheapest set was not found within MOST_STATES."""

    def __init__(self, targets: Collection[str]) -> None:
        self.targets = frozenset(targets)
        super().__init__(self.targets)

    def said(self, called: Callable[[str], Value]) -> Message:
        """The same as a message, with nodes as `called` has them."""
        return message("ways/tangled", targets=Items(tuple(map(called, sorted(self.targets))), "comma"))


@dataclass(frozen=True)
class Selection:
    """Nodes to do, their summed cost, and for each (node, choice number) the route number relied on."""

    nodes: frozenset[str]
    cost: float
    routes: Mapping[tuple[str, int], int] = field(default_factory=dict)


@dataclass(frozen=True)
class _Option:
    """A choice of a node: the AND closures of the routes that can serve, without those that hold another."""

    node: str
    ways: tuple[Route, ...]

    def open_in(self, nodes: frozenset[str]) -> bool:
        return self.node in nodes and not any(way <= nodes for way in self.ways)


def cheapest_set(graph: Graph, targets: Collection[str], ordering: Graph | None = None) -> Selection:
    """The one cheapest set that holds the targets and can be done in some order.

    Exact: every set is closed under AND, and each choice in it has a whole route that comes before its node.
    Equal costs (compared as decimals, as typed) go to fewer nodes, then to the set that has the first node in
    file order in which the two differ. Each choice relies on its first route, taken in file order, with which
    an order still exists.
    With `ordering`, the same graph with more AND edges, the set can also be done in an order that keeps those
    of its edges that join two nodes of the set; where no set can, it is as if `ordering` were not given.
    Raises UnknownNode, Unreachable when nothing frees a target, TooTangled when the search grows too large.
    """
    start = ancestors(graph, targets)
    refuse_blocked(graph, targets)
    for problem in (_Problem(graph, (ordering or graph).before), _Problem(graph, graph.before)):
        nodes = _search(problem, start, targets)
        if nodes is not None:
            cost = sum(graph.prices[node] for node in nodes)
            return Selection(nodes, float(cost), _routes(problem, nodes))
    raise AssertionError(f"{', '.join(targets)}: can be freed, yet no set frees them")


class _Problem:
    """A graph prepared for the search; `before` is what keeps the order: its AND edges, and perhaps more."""

    def __init__(self, graph: Graph, before: Mapping[str, frozenset[str]]) -> None:
        self.graph = graph
        self.before = before
        self.options = [
            _Option(node, _ways(graph, node, choice))
            for node in graph.in_file_order(graph.any_of)
            if node in graph.freeable
            for choice in graph.any_of[node]
        ]

    def weight(self, nodes: Collection[str]) -> Weight:
        prices, place = self.graph.prices, self.graph.place
        cost = sum((prices[node] for node in nodes), Decimal())
        return cost, len(nodes), -sum(1 << (len(place) - place[node]) for node in nodes)

    def open_options(self, nodes: frozenset[str]) -> list[_Option]:
        return [option for option in self.options if option.open_in(nodes)]

    def bound(self, nodes: frozenset[str]) -> Weight:
        """No workable set that holds these weighs less: open options that share no node all cost extra."""
        total = self.weight(nodes)
        counted: set[str] = set()
        for option in self.open_options(nodes):
            extras = [way - nodes for way in option.ways]
            touched = frozenset().union(*extras)
            if counted.isdisjoint(touched):
                counted |= touched
                total = _add(total, min(map(self.weight, extras)))
        return total

    def steps(self, nodes: frozenset[str]) -> list[Route] | None:
        """Alternatives to add next: every workable set that holds `nodes` also holds one of them.

        None when the nodes can be done as they are.
        """
        options = self.open_options(nodes)
        if options:
            return list(min(options, key=lambda option: len(option.ways)).ways)
        done = frozenset(self.free(nodes, self.graph.any_of))
        return None if done == nodes else list(self._escapes(nodes - done, done))

    def free(self, nodes: frozenset[str], any_of: Mapping[str, tuple[Choice, ...]]) -> list[str]:
        """As many of the nodes as can be done when only prerequisites among them count."""
        before = {node: self.before[node] & nodes for node in nodes}
        return free(sorted(nodes, key=self.graph.freeable.__getitem__), before, any_of)

    def _escapes(self, stuck: frozenset[str], done: frozenset[str]) -> Iterator[Route]:
        """Every route was there, but round in a circle: some stuck node is freed by a route from outside."""
        for option in self.options:
            if option.node in stuck and not any(way <= done for way in option.ways):
                yield from (way for way in option.ways if way.isdisjoint(stuck))


def _search(problem: _Problem, start: frozenset[str], targets: Collection[str]) -> frozenset[str] | None:
    """Best first by lower bound, so the first workable set taken up is the cheapest; None where there is none."""
    ticket = count()
    queue = [(_LEAST, next(ticket), start)]  # alone there, it is taken up first whatever it weighs
    seen = {start}
    while queue:
        if len(seen) > MOST_STATES:
            raise TooTangled(targets)
        nodes = heapq.heappop(queue)[2]
        steps = problem.steps(nodes)
        if steps is None:
            return nodes
        for larger in dict.fromkeys(nodes | way for way in steps):
            if larger not in seen:
                seen.add(larger)
                heapq.heappush(queue, (problem.bound(larger), next(ticket), larger))
    return None


def _ways(graph: Graph, node: str, choice: Choice) -> tuple[Route, ...]:
    closures = dict.fromkeys(ancestors(graph, route) for route in choice if route <= graph.freeable.keys())
    usable = [way for way in closures if node not in way]
    return tuple(way for way in usable if not any(other < way for other in usable))


def _add(one: Weight, other: Weight) -> Weight:
    return one[0] + other[0], one[1] + other[1], one[2] + other[2]


def _routes(problem: _Problem, nodes: frozenset[str]) -> dict[tuple[str, int], int]:
    """Settle the choices one by one in file order, each on its first route that leaves an order."""
    graph = problem.graph
    left = {
        (node, number): [i for i, route in enumerate(choice) if route <= nodes]
        for node in graph.in_file_order(nodes & graph.any_of.keys())
        for number, choice in enumerate(graph.any_of[node])
    }
    for key, routes in left.items():
        if len(routes) > 1:
            left[key] = [next(i for i in routes if _leaves_an_order(problem, nodes, {**left, key: [i]}))]
    return {key: routes[0] for key, routes in left.items()}


def _leaves_an_order(problem: _Problem, nodes: frozenset[str], left: Mapping[tuple[str, int], list[int]]) -> bool:
    any_of: dict[str, tuple[Choice, ...]] = {}
    for (node, number), routes in left.items():
        choice = problem.graph.any_of[node][number]
        any_of[node] = (*any_of.get(node, ()), tuple(choice[i] for i in routes))
    return len(problem.free(nodes, any_of)) == len(nodes)
