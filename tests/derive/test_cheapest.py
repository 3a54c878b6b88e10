"""Cheapest sets with OR routes, against worked examples and enumeration."""

import pytest
from hypothesis import event, given, settings
from hypothesis import strategies as st

from graph_oracle import (
    and_or_graphs,
    cheapest_by_enumeration,
    routes_by_enumeration,
    some_of,
)
from undertrim.derive.procedure import cheapest
from undertrim.derive.procedure.cheapest import Selection, TooTangled, cheapest_set
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.graph import Choice, Graph, Route
from undertrim.words import sentence


def routes(*nodes: str) -> Choice:
    """A choice with one route per word, one node per letter."""
    return tuple(map(Route, nodes))


def test_the_fewest_parts_are_not_the_cheapest() -> None:
    # Our own example, checked by enumeration below: {C, T} is two parts at 11.
    graph = Graph({"T": 1, "A": 1, "B": 1, "D": 1, "C": 10}, {"A": "D"}, {"T": (routes("AB", "C"),)})
    assert cheapest_set(graph, "T") == Selection(frozenset("ABDT"), 4, {("T", 0): 0})
    assert cheapest_by_enumeration(graph, {"T"}) == frozenset("ABDT")


def test_a_shared_prerequisite_is_counted_once() -> None:
    # Our own example, checked by enumeration below. The cheapest route of each choice on its own gives
    # {T, A, D, X, Z} at 5.
    costs = {"T": 1, "A": 1, "B": 1, "C": 1, "D": 1, "X": 1, "Y": 1.5, "Z": 1}
    after = {"A": "X", "B": "Y", "C": "Y", "D": "Z"}
    graph = Graph(costs, after, {"T": (routes("A", "B"), routes("C", "D"))})
    assert cheapest_set(graph, "T") == Selection(frozenset("TBCY"), 4.5, {("T", 0): 1, ("T", 1): 0})
    assert cheapest_by_enumeration(graph, {"T"}) == frozenset("TBCY")


@settings(deadline=None)
@given(st.data(), and_or_graphs())
def test_the_set_and_its_routes_are_those_enumeration_finds(data: st.DataObject, graph: Graph) -> None:
    targets = data.draw(some_of(graph))
    expected = cheapest_by_enumeration(graph, targets)
    event("blocked" if expected is None else "free")
    if expected is None:
        with pytest.raises(Unreachable):
            cheapest_set(graph, targets)
    else:
        selection = cheapest_set(graph, targets)
        assert selection.nodes == expected
        assert selection.cost == pytest.approx(sum(graph.costs[node] for node in expected))
        assert selection.routes == routes_by_enumeration(graph, expected)


@settings(deadline=None)
@given(st.data(), and_or_graphs(all_free=True))
def test_the_same_where_every_node_can_be_freed(data: st.DataObject, graph: Graph) -> None:
    targets = data.draw(some_of(graph))
    selection = cheapest_set(graph, targets)
    assert selection.nodes == cheapest_by_enumeration(graph, targets)
    assert selection.routes == routes_by_enumeration(graph, selection.nodes)


@settings(deadline=None)
@given(st.data(), and_or_graphs(all_free=True))
def test_another_target_never_makes_it_cheaper(data: st.DataObject, graph: Graph) -> None:
    one, other = data.draw(some_of(graph)), data.draw(some_of(graph))
    both = cheapest_set(graph, one | other).cost
    apart = [cheapest_set(graph, one).cost, cheapest_set(graph, other).cost]
    assert max(apart) <= both + 1e-9
    assert both <= sum(apart) + 1e-9


def test_two_trims_that_free_each_other_need_a_way_in() -> None:
    # With {a, b} each has a whole route, yet neither can be first: x lets b go, and then b lets a go.
    graph = Graph({"a": 1, "b": 1, "x": 3, "y": 5}, any_of={"a": (routes("b", "y"),), "b": (routes("a", "x"),)})
    assert cheapest_set(graph, "a") == Selection(frozenset("abx"), 5, {("a", 0): 0, ("b", 0): 1})


def test_a_route_that_needs_its_own_node_does_not_serve() -> None:
    graph = Graph({"a": 1, "b": 1, "c": 9}, {"b": "a"}, {"a": (routes("b", "c"),)})
    assert cheapest_set(graph, "a") == Selection(frozenset("ac"), 10, {("a", 0): 1})


def test_an_empty_route_is_always_open() -> None:
    graph = Graph({"a": 1, "b": 0}, any_of={"a": (routes("b", ""),)})
    assert cheapest_set(graph, "a") == Selection(frozenset("a"), 1, {("a", 0): 1})


def test_no_targets_need_nothing() -> None:
    assert cheapest_set(Graph({"a": 1}), []) == Selection(frozenset(), 0, {})


def test_equal_costs_go_to_fewer_nodes_then_to_file_order() -> None:
    # As binary fractions 0.7 + 0.1 would be a little cheaper than 0.8.
    costs = {"a": 0.7, "b": 0.1, "c": 0.8, "d": 0.8, "t": 1}
    graph = Graph(costs, any_of={"t": (routes("ab", "d", "c"),)})
    assert cheapest_set(graph, "t") == Selection(frozenset("ct"), 1.8, {("t", 0): 2})


def test_of_several_complete_routes_the_first_is_relied_on() -> None:
    graph = Graph({"t": 1, "a": 1, "b": 1}, any_of={"t": (routes("b", "a"),)})
    assert cheapest_set(graph, "tab").routes == {("t", 0): 0}


def test_many_separate_choices_are_no_work(monkeypatch: pytest.MonkeyPatch) -> None:
    # 2 ** 30 combinations; the bound leads straight to the one that is best.
    monkeypatch.setattr(cheapest, "MOST_STATES", 100)
    sides = [str(i) for i in range(30)]
    costs = {f"{part}{side}": 1 for side in sides for part in ("door", "front", "rear")}
    any_of = {f"door{side}": ((Route([f"rear{side}"]), Route([f"front{side}"])),) for side in sides}
    selection = cheapest_set(Graph(costs, any_of=any_of), any_of.keys())
    assert selection.nodes == {f"{part}{side}" for side in sides for part in ("door", "front")}


def test_a_node_that_serves_two_choices_is_not_bounded_twice() -> None:
    # With x taken, p at 3 serves both choices left; a bound of 2 + 2 would prefer {t, y, a, b} at 5.5.
    graph = Graph(
        {"t": 1, "x": 1, "y": 0.5, "p": 3, "a": 2, "b": 2},
        {"y": "a"},
        {"t": (routes("x", "y"), routes("p", "a"), routes("p", "b"))},
    )
    assert cheapest_set(graph, "t") == Selection(frozenset("txp"), 5, {("t", 0): 0, ("t", 1): 0, ("t", 2): 0})


def test_a_search_that_grows_too_large_gives_up(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cheapest, "MOST_STATES", 5)
    cover = (routes("a", "b", "c"), routes("b", "c", "d"), routes("c", "d", "e"), routes("a", "d", "e"))
    graph = Graph(dict.fromkeys("abcdet", 1), any_of={"t": cover})
    with pytest.raises(TooTangled) as caught:
        cheapest_set(graph, "t")
    assert sentence(caught.value.said(str)) == "too many interlocking routes to free t"
