"""AND prerequisites against textbook examples and networkx: sets, costs and numbers of orders."""

import math
from itertools import combinations

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from graph_oracle import and_graphs, count_orders, edges_of, pairs, some_of
from undertrim.derive.procedure.cheapest import cheapest_set
from undertrim.derive.procedure.graph import Choice, Graph, UnknownNode, ancestors

# Pairs: Knuth, The Art of Computer Programming, vol. 1, 2.2.3, the worked example of topological sorting.
# Sets follow from the pairs by hand; the numbers of orders were counted by enumeration.
KNUTH = pairs("9<2 3<7 7<5 5<8 8<6 4<6 1<3 7<4 9<5 2<8")

# Pairs: Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, the figure of getting dressed in the
# section on topological sort (from memory). Sets by hand, orders by enumeration.
DRESSING = pairs(
    "undershorts<pants undershorts<shoes pants<belt pants<shoes belt<jacket shirt<belt shirt<tie tie<jacket"
    " socks<shoes watch"
)


@pytest.mark.parametrize(
    ("target", "needed", "orders"),
    [("4", "1374", 1), ("5", "13795", 4), ("8", "1235789", 14), ("9", "9", 1), ("6", "123456789", 52)],
)
def test_knuth_pairs(target: str, needed: str, orders: int) -> None:
    selection = cheapest_set(KNUTH, {target})
    assert selection.nodes == frozenset(needed)
    assert selection.cost == len(needed)
    assert count_orders(KNUTH, selection.nodes) == orders


@pytest.mark.parametrize(
    ("target", "needed", "orders"),
    [
        ("jacket", "undershorts pants shirt belt tie jacket", 9),
        ("shoes", "undershorts pants socks shoes", 3),
        ("watch", "watch", 1),
    ],
)
def test_getting_dressed(target: str, needed: str, orders: int) -> None:
    selection = cheapest_set(DRESSING, {target})
    assert selection.nodes == frozenset(needed.split())
    assert count_orders(DRESSING, selection.nodes) == orders


def test_getting_dressed_completely() -> None:
    assert count_orders(DRESSING, cheapest_set(DRESSING, DRESSING.costs.keys()).nodes) == 1728


def grid(rows: int, columns: int) -> Graph:
    cells = [(r, c) for r in range(rows) for c in range(columns)]
    down = [f"{r}{c}<{r + 1}{c}" for r, c in cells if r + 1 < rows]
    across = [f"{r}{c}<{r}{c + 1}" for r, c in cells if c + 1 < columns]
    return pairs(" ".join(down + across))


def fence(length: int) -> Graph:
    posts = [f"{i}<{i + 1}" if i % 2 else f"{i + 1}<{i}" for i in range(length - 1)]
    return pairs(" ".join(posts) or "0")


def inclusion(size: int) -> Graph:
    sets = ["".join(part) for n in range(size + 1) for part in combinations("abc"[:size], n)]
    return pairs(" ".join(f"_{a}<_{b}" for a in sets for b in sets if set(a) < set(b)))


ZIGZAG = (1, 1, 2, 5, 16, 61, 272)
"""Euler's zigzag numbers, OEIS A000111, from its second term."""


@pytest.mark.parametrize(
    ("graph", "orders"),
    [
        (pairs("a<b b<c c<d d<e"), 1),  # a chain
        (pairs("a b c d e"), math.factorial(5)),  # free nodes
        *zip(map(fence, range(1, 8)), (1, 1, 2, 5, 16, 61, 272), strict=True),  # Euler's zigzag numbers, OEIS A000111
        (inclusion(3), 48),  # OEIS A046873
        (grid(2, 3), 5),  # hook length formula: Frame, Robinson and Thrall, 1954
        (grid(3, 3), 42),  # the same
    ],
)
def test_all_nodes_together_have_the_textbook_number_of_orders(graph: Graph, orders: int) -> None:
    selection = cheapest_set(graph, graph.costs.keys())
    assert count_orders(graph, selection.nodes) == orders


@settings(deadline=None)
@given(st.data(), and_graphs())
def test_and_only_sets_are_the_ancestors_networkx_finds(data: st.DataObject, graph: Graph) -> None:
    targets = data.draw(some_of(graph))
    edges = edges_of(graph, frozenset(graph.costs), {})
    expected = targets.union(*(nx.ancestors(edges, target) for target in targets))
    assert ancestors(graph, targets) == expected
    assert cheapest_set(graph, targets).nodes == expected


@settings(deadline=None)
@given(st.data(), and_graphs())
def test_and_only_sets_of_several_jobs_are_the_union_of_each(data: st.DataObject, graph: Graph) -> None:
    one, other = data.draw(some_of(graph)), data.draw(some_of(graph))
    together = cheapest_set(graph, one | other).nodes
    assert together == cheapest_set(graph, one).nodes | cheapest_set(graph, other).nodes


def test_ancestors_walk_through_cycles_and_pass_choices_by() -> None:
    graph = Graph({"a": 1, "b": 1, "c": 1}, {"a": "b", "b": "a"}, {"a": ((frozenset("c"),),)})
    assert ancestors(graph, ["a"]) == frozenset("ab")


@pytest.mark.parametrize(
    ("after", "any_of", "message"),
    [
        ({"a": "x"}, {}, "unknown node 'x', named by 'a'"),
        ({"x": "a"}, {}, "unknown node 'x'"),
        ({}, {"a": ((frozenset("a"), frozenset("ax")),)}, "unknown node 'x', named by 'a'"),
        ({}, {"x": ()}, "unknown node 'x'"),
    ],
)
def test_unknown_nodes_are_refused(after: dict[str, str], any_of: dict[str, tuple[Choice, ...]], message: str) -> None:
    with pytest.raises(UnknownNode) as caught:
        Graph({"a": 1}, after, any_of)
    assert str(caught.value) == message


def test_an_unknown_target_is_refused() -> None:
    with pytest.raises(UnknownNode, match="unknown node 'x'"):
        cheapest_set(Graph({"a": 1}), ["a", "x"])


@pytest.mark.parametrize("cost", [-1, math.nan, math.inf])
def test_costs_must_be_finite_and_not_below_zero(cost: float) -> None:
    with pytest.raises(ValueError, match="the cost of 'a' is"):
        Graph({"a": cost})
