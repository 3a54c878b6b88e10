"""Cycles and blocked nodes: what is found, and how it reads."""

from itertools import pairwise

import networkx as nx
import pytest
from hypothesis import given, settings

from graph_oracle import and_graphs, and_or_graphs, edges_of, pairs, workable_sets
from undertrim.derive.procedure.cheapest import cheapest_set
from undertrim.derive.procedure.cycles import Block, Unreachable, blocked, find_cycles
from undertrim.derive.procedure.graph import Graph, Route
from undertrim.words import sentence


def test_a_cycle_starts_at_the_node_earliest_in_the_file_and_closes() -> None:
    graph = Graph(
        dict.fromkeys(("knob", "surround", "bezel", "radio"), 1),
        {
            "radio": ("bezel",),
            "bezel": ("surround",),
            "surround": ("radio",),
            "knob": ("radio",),
        },
    )
    assert find_cycles(graph) == [("surround", "radio", "bezel", "surround")]


def test_of_a_tangle_the_shortest_cycle_is_shown_and_each_tangle_has_one() -> None:
    graph = pairs("z<z a<b b<c c<a c<b x<y y<x")
    assert find_cycles(graph) == [("z", "z"), ("b", "c", "b"), ("x", "y", "x")]


@settings(deadline=None)
@given(and_graphs(acyclic=False))
def test_cycles_are_real_shortest_and_one_per_component(graph: Graph) -> None:
    edges = edges_of(graph, frozenset(graph.costs), {}).reverse()
    cycles = find_cycles(graph)
    assert cycles == sorted(cycles, key=lambda cycle: graph.place[cycle[0]])
    shortest = {}
    for component in map(frozenset, nx.strongly_connected_components(edges)):
        inside = list(nx.simple_cycles(edges.subgraph(component)))
        if inside:
            shortest[component] = min(map(len, inside))
    assert len(cycles) == len(shortest)
    for first, *rest in cycles:
        assert rest[-1] == first == min(rest, key=graph.place.__getitem__)
        assert all(edges.has_edge(a, b) for a, b in pairwise([first, *rest]))
        component = next(nodes for nodes in shortest if first in nodes)
        assert len(set(rest)) == len(rest) == shortest[component]


@settings(deadline=None)
@given(and_or_graphs())
def test_blocked_nodes_are_those_in_no_workable_set(graph: Graph) -> None:
    free = frozenset().union(*workable_sets(graph))
    blocks = blocked(graph)
    assert list(blocks) == [node for node in graph.costs if node not in free]
    for node, block in blocks.items():
        assert block.path[0] == node
        assert block.path[-1] in block.cycle
        assert block.cycle[0] == block.cycle[-1]
        for walk in (block.path, block.cycle):
            assert all(b in graph.needs[a] and b not in free for a, b in pairwise(walk))


def test_a_node_whose_every_route_leads_into_a_cycle_is_blocked() -> None:
    graph = Graph(
        dict.fromkeys("tuabc", 1),
        {"a": "b", "b": "a", "c": "b", "u": "t"},
        {"t": ((Route("a"), Route("c")),)},
    )
    blocks = blocked(graph)
    assert list(blocks) == list("tuabc")
    assert blocks["t"] == Block(0, ("t", "a"), ("a", "b", "a"))
    assert blocks["u"] == Block(None, ("u", "t", "a"), ("a", "b", "a"))
    assert blocks["a"] == Block(None, ("a",), ("a", "b", "a"))


def test_a_cycle_through_routes_alone_is_one_and_cycle_or_not() -> None:
    graph = Graph(dict.fromkeys("ab", 1), {"b": "a"}, {"a": ((Route(),), (Route("b"),))})
    assert find_cycles(graph) == []
    assert blocked(graph) == {
        "a": Block(1, ("a",), ("a", "b", "a")),
        "b": Block(None, ("b",), ("a", "b", "a")),
    }


def test_a_free_route_unblocks() -> None:
    graph = Graph(dict.fromkeys("tabc", 1), {"a": "b", "b": "a"}, {"t": ((Route("a"), Route("c")),)})
    assert list(blocked(graph)) == ["a", "b"]


@pytest.mark.parametrize(
    ("target", "message"),
    [
        (
            "radio",
            "'radio' can never be freed: radio -> bezel; each needs the next first: bezel -> trim -> bezel",
        ),
        ("trim", "'trim' can never be freed: each needs the next first: bezel -> trim -> bezel"),
        ("lamp", "'lamp' can never be freed: a choice has no routes"),
        ("wire", "'wire' can never be freed: wire -> lamp; a choice has no routes"),
    ],
)
def test_an_unreachable_target_says_why(target: str, message: str) -> None:
    nodes = dict.fromkeys(("radio", "bezel", "trim", "wire", "lamp"), 1)
    after = {"radio": ("bezel",), "bezel": ("trim",), "trim": ("bezel",), "wire": ("lamp",)}
    with pytest.raises(Unreachable) as caught:
        cheapest_set(Graph(nodes, after, {"lamp": ((),)}), [target])
    assert sentence(caught.value.said(str)) == message
    assert caught.value.target == target


def test_the_unreachable_target_earliest_in_the_file_is_named() -> None:
    graph = pairs("b<a a<b c")
    with pytest.raises(Unreachable) as caught:
        cheapest_set(graph, ["c", "a", "b"])
    assert caught.value.target == "b"
