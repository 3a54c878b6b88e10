"""Orders of steps against networkx and enumeration."""

from random import Random

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from graph_oracle import and_graphs, and_or_graphs, edges_of, follows, may_follow, pairs, some_of
from undertrim.derive.procedure.cheapest import Selection, cheapest_set
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.graph import Graph, Route
from undertrim.derive.procedure.order import master_order, order


def places(sequence: tuple[str, ...]) -> dict[str, int]:
    return {node: place for place, node in enumerate(sequence)}


def all_edges(graph: Graph) -> "nx.DiGraph[str]":
    """Prerequisite -> node, for AND and for every route."""
    edges = edges_of(graph, frozenset(graph.costs), {})
    for node, choices in graph.any_of.items():
        edges.add_edges_from((other, node) for choice in choices for route in choice for other in route)
    return edges


def test_knuth_pairs_in_number_order() -> None:
    # Pairs: Knuth, The Art of Computer Programming, vol. 1, 2.2.3. The smallest free number first, as
    # worked out by hand.
    graph = pairs("9<2 3<7 7<5 5<8 8<6 4<6 1<3 7<4 9<5 2<8")
    rank = {digit: int(digit) for digit in graph.costs}
    assert "".join(master_order(graph, rank)) == "137492586"
    assert "".join(order(graph, cheapest_set(graph, "8"), rank)) == "1379258"


def test_equal_ranks_stand_in_file_order() -> None:
    graph = pairs("c b a b<d")
    assert master_order(graph, dict.fromkeys("abcd", 0)) == ("c", "b", "a", "d")


@settings(deadline=None)
@given(and_graphs(), st.randoms(use_true_random=False))
def test_the_master_order_is_the_smallest_topological_order(graph: Graph, random: Random) -> None:
    rank = {node: random.randrange(4) for node in graph.costs}
    edges = edges_of(graph, frozenset(graph.costs), {})
    key = {node: (rank[node], place) for place, node in enumerate(graph.costs)}
    assert list(master_order(graph, rank)) == list(nx.lexicographical_topological_sort(edges, key.__getitem__))


@settings(deadline=None)
@given(st.data(), and_graphs())
def test_without_choices_an_order_is_a_subsequence_of_the_master(data: st.DataObject, graph: Graph) -> None:
    ranks = data.draw(st.permutations(range(len(graph.costs))))
    master = master_order(graph, dict(zip(graph.costs, ranks, strict=True)))
    selection = cheapest_set(graph, data.draw(some_of(graph)))
    steps = order(graph, selection, places(master))
    assert steps == tuple(node for node in master if node in selection.nodes)


@settings(deadline=None)
@given(st.data(), and_or_graphs(all_free=True))
def test_an_order_follows_and_edges_and_chosen_routes(data: st.DataObject, graph: Graph) -> None:
    selection = cheapest_set(graph, data.draw(some_of(graph)))
    steps = order(graph, selection, places(master_order(graph, graph.place)))
    assert follows(steps, edges_of(graph, selection.nodes, dict(selection.routes)))


@settings(deadline=None)
@given(and_or_graphs(all_free=True))
def test_the_master_order_frees_everything_and_keeps_routes_outside_circles(graph: Graph) -> None:
    master = master_order(graph, graph.place)
    for place, node in enumerate(master):
        assert may_follow(graph, node, frozenset(master[:place]))
    edges = all_edges(graph)
    for circle in nx.strongly_connected_components(edges):
        edges.remove_edges_from([(a, b) for a, b in edges.edges if a in circle and b in circle])
    assert follows(master, edges)


def test_an_order_waits_only_for_the_route_it_relies_on() -> None:
    graph = Graph(dict.fromkeys("tab", 1), any_of={"t": ((Route("b"), Route("a")),)})
    assert order(graph, cheapest_set(graph, "tab"), {"t": 0, "a": 2, "b": 1}) == ("b", "t", "a")


def test_trims_freed_from_either_end_go_smallest_rank_first() -> None:
    graph = Graph(dict.fromkeys("abc", 1), {"c": "b"}, {"a": ((Route("b"), Route()),), "b": ((Route("a"), Route()),)})
    assert master_order(graph, {"a": 1, "b": 0, "c": 0}) == ("b", "c", "a")
    assert master_order(graph, {"a": 0, "b": 1, "c": 2}) == ("a", "b", "c")


def test_in_a_circle_a_node_with_an_open_route_goes_before_a_smaller_rank() -> None:
    # b has no other way than a, so a comes first although b would like to.
    graph = Graph(dict.fromkeys("abx", 1), any_of={"a": ((Route("b"), Route("x")),), "b": ((Route("a"),),)})
    assert master_order(graph, {"a": 2, "b": 1, "x": 3}) == ("x", "a", "b")


def test_a_master_order_with_an_and_cycle_is_refused() -> None:
    with pytest.raises(Unreachable) as caught:
        master_order(pairs("c a<b b<a"), {"a": 0, "b": 1, "c": 2})
    assert caught.value.block.cycle == ("a", "b", "a")


def test_a_master_order_passes_over_blocked_routes() -> None:
    graph = Graph(dict.fromkeys("ab", 1), any_of={"a": ((Route("b"),),), "b": ((Route("a"),),)})
    assert master_order(graph, {"a": 1, "b": 0}) == ("b", "a")


def test_a_selection_that_goes_round_in_a_circle_is_refused() -> None:
    graph = Graph(dict.fromkeys("ab", 1), {"b": "a"}, {"a": ((Route(), Route("b")),)})
    with pytest.raises(Unreachable) as caught:
        order(graph, Selection(frozenset("ab"), 2, {("a", 0): 1}), graph.place)
    assert (caught.value.target, caught.value.block.cycle) == ("a", ("a", "b", "a"))


def test_prerequisites_outside_the_selection_are_not_waited_for() -> None:
    assert order(pairs("a<b b<c"), Selection(frozenset("bc"), 2), {"b": 0, "c": 0}) == ("b", "c")
