"""Slow, plain answers to check the graph code against: everything here enumerates subsets or permutations."""

from fractions import Fraction
from itertools import product

import networkx as nx
from hypothesis import strategies as st

from undertrim.derive.procedure.graph import Graph

NAMES = "abcdefghi"
COSTS = st.sampled_from([0, 0.1, 0.2, 0.3, 0.5, 1, 1.5, 2, 7])


def pairs(text: str) -> Graph:
    """A graph from "first<then" pairs and free nodes; nodes in order of appearance, each at cost 1."""
    after: dict[str, frozenset[str]] = {}
    for first, _, then in (pair.partition("<") for pair in text.split()):
        after.setdefault(first, frozenset())
        if then:
            after[then] = after.get(then, frozenset()) | {first}
    return Graph(dict.fromkeys(after, 1), after)


def may_follow(graph: Graph, node: str, done: frozenset[str]) -> bool:
    return set(graph.after.get(node, ())) <= done and all(
        any(route <= done for route in choice) for choice in graph.any_of.get(node, ())
    )


def count_orders(graph: Graph, nodes: frozenset[str]) -> int:
    """In how many orders the nodes can be done, by dynamic programming over subsets (0: in none)."""
    counts: dict[frozenset[str], int] = {frozenset(): 1}
    for subset in sorted(subsets(nodes), key=len)[1:]:
        counts[subset] = sum(counts[subset - {last}] for last in subset if may_follow(graph, last, subset - {last}))
    return counts[nodes]


def subsets(nodes: frozenset[str]) -> list[frozenset[str]]:
    found: list[frozenset[str]] = [frozenset()]
    for node in nodes:
        found += [subset | {node} for subset in found]
    return found


def workable_sets(graph: Graph) -> list[frozenset[str]]:
    """Every set of nodes that can be done in some order."""
    workable: set[frozenset[str]] = {frozenset()}
    for subset in sorted(subsets(frozenset(graph.costs)), key=len):
        if any(subset - {x} in workable and may_follow(graph, x, subset - {x}) for x in subset):
            workable.add(subset)
    return list(workable)


def cheapest_by_enumeration(graph: Graph, targets: set[str]) -> frozenset[str] | None:
    """The cheapest workable set: exact cost, then size, then file order; None when there is none."""
    names = list(graph.costs)

    def key(nodes: frozenset[str]) -> tuple[Fraction, int, list[int]]:
        cost = sum((Fraction(str(graph.costs[node])) for node in nodes), Fraction())
        return cost, len(nodes), sorted(map(names.index, nodes))

    return min((nodes for nodes in workable_sets(graph) if targets <= nodes), key=key, default=None)


def routes_by_enumeration(graph: Graph, nodes: frozenset[str]) -> dict[tuple[str, int], int]:
    """The first combination of complete routes, choices in file order, that closes no circle."""
    keys = [(x, k) for x in graph.costs if x in nodes for k in range(len(graph.any_of.get(x, ())))]
    complete = [[i for i, route in enumerate(graph.any_of[x][k]) if route <= nodes] for x, k in keys]
    for picked in product(*complete):
        routes = dict(zip(keys, picked, strict=True))
        if nx.is_directed_acyclic_graph(edges_of(graph, nodes, routes)):
            return routes
    raise AssertionError("no combination of routes can be ordered")


def edges_of(graph: Graph, nodes: frozenset[str], routes: dict[tuple[str, int], int]) -> "nx.DiGraph[str]":
    """Prerequisite -> node, for AND and for the given routes."""
    edges: nx.DiGraph[str] = nx.DiGraph()
    edges.add_nodes_from(nodes)
    edges.add_edges_from((p, x) for x in nodes for p in graph.after.get(x, ()) if p in nodes)
    edges.add_edges_from((p, x) for (x, k), i in routes.items() for p in graph.any_of[x][k][i])
    return edges


def follows(sequence: tuple[str, ...], edges: "nx.DiGraph[str]") -> bool:
    """Whether the sequence holds each node once and goes along every edge."""
    place = {node: i for i, node in enumerate(sequence)}
    return sorted(sequence) == sorted(edges) and all(place[a] < place[b] for a, b in edges.edges)


@st.composite
def and_graphs(draw: st.DrawFn, acyclic: bool = True) -> Graph:
    """AND edges only. The file order is not the working order."""
    names = draw(st.permutations(NAMES[: draw(st.integers(1, 9))]))
    after = {
        name: draw(st.frozensets(st.sampled_from(names[:i] if acyclic else names), max_size=3))
        for i, name in enumerate(names)
        if i or not acyclic
    }
    return Graph({name: draw(COSTS) for name in sorted(names)}, after)


@st.composite
def and_or_graphs(draw: st.DrawFn, all_free: bool = False) -> Graph:
    """AND and OR edges in any direction, so that some nodes may be blocked; with `all_free` none is."""
    names = draw(st.permutations(NAMES[: draw(st.integers(2, 9))]))
    after = {}
    any_of = {}
    for i, name in enumerate(names):
        after[name] = draw(_few(names[:i] if all_free or draw(st.booleans()) else names, 1))
        choices = draw(st.lists(st.lists(_few(names, 2), min_size=1, max_size=3), max_size=2))
        way_in = [draw(_few(names[:i], 2))] if all_free else []
        any_of[name] = tuple(tuple(draw(st.permutations(choice + way_in))) for choice in choices)
    return Graph({name: draw(COSTS) for name in sorted(names)}, after, any_of)


def _few(names: list[str], most: int) -> st.SearchStrategy[frozenset[str]]:
    return st.frozensets(st.sampled_from(names), max_size=most) if names else st.just(frozenset())


def some_of(graph: Graph) -> st.SearchStrategy[set[str]]:
    return st.sets(st.sampled_from(list(graph.costs)), min_size=1, max_size=3)
