"""The map of what hides what: layers by longest paths, few crossings, no text over another, and a way to every step."""

import re
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from svg_reading import assert_clear, parsed, texts
from undertrim.publish.encoding import said
from undertrim.publish.facts.removal_order import removal_order
from undertrim.publish.facts.vehicle import vehicle
from undertrim.publish.pictures import order
from undertrim.publish.pictures.drawings import order_map
from undertrim.publish.pictures.drawings.layers import Edge, Item, acyclic, crossings, groups, layered, reduced
from undertrim.publish.pictures.drawings.order_map import Link, Node
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from wired import ROOT

GRAPHS = st.integers(1, 14).flatmap(
    lambda count: st.tuples(
        st.just(count), st.lists(st.tuples(st.integers(0, count - 1), st.integers(0, count - 1)), max_size=30)
    )
)


def reach(edges: list[Edge], start: int) -> set[int]:
    found: set[int] = set()
    left = [start]
    while left:
        node = left.pop()
        fresh = {then for first, then in edges if first == node} - found
        found |= fresh
        left.extend(fresh)
    return found


@given(GRAPHS)
def test_no_circle_is_left_and_only_what_closes_one_is_gone(graph: tuple[int, list[Edge]]) -> None:
    count, edges = graph
    kept = acyclic(count, edges)
    assert all(node not in reach(kept, node) for node in range(count))
    for first, then in set(edges) - set(kept):
        assert first == then or first in reach(kept, then)


@given(GRAPHS)
def test_what_is_left_out_is_said_by_others(graph: tuple[int, list[Edge]]) -> None:
    count, edges = graph
    whole = list(dict.fromkeys(acyclic(count, edges)))
    few = reduced(count, whole)
    assert all(reach(whole, node) == reach(few, node) for node in range(count))
    for edge in few:
        assert edge[1] not in reach([one for one in few if one != edge], edge[0])


@given(GRAPHS)
def test_layers_are_in_order_and_no_wider_than_asked(graph: tuple[int, list[Edge]]) -> None:
    count, edges = graph
    few = reduced(count, list(dict.fromkeys(acyclic(count, edges))))
    together = groups(count, few)
    assert sorted(node for group in together for node in group) == list(range(count))
    for group in together:
        inside = [edge for edge in few if edge[0] in group]
        assert all(edge[1] in group for edge in inside)
        rows = layered(group, inside, 3)
        layer = {item.node: at for at, row in enumerate(rows) for item in row if item.node is not None}
        assert set(layer) == set(group)
        assert all(layer[first] < layer[then] for first, then in inside)
        for at, row in enumerate(rows):
            assert 1 <= sum(item.node is not None for item in row) <= 3
            passing = {item.edge for item in row if item.edge}
            assert passing == {edge for edge in inside if layer[edge[0]] < at < layer[edge[1]]}


def test_a_long_way_and_a_short_one_start_together_at_the_top() -> None:
    rows = layered([0, 1, 2, 3], [(0, 1), (1, 3), (2, 3)], 3)
    assert rows == [[Item(0)], [Item(1), Item(2)], [Item(3)]]  # each as low as what waits for it allows


def test_lines_that_need_not_cross_do_not() -> None:
    edges = [(0, 4), (1, 3), (2, 5)]
    rows = layered([0, 1, 2, 3, 4, 5], edges, 3)
    assert crossings(rows, edges) == 0
    assert crossings([[Item(0), Item(1), Item(2)], [Item(3), Item(4), Item(5)]], edges) == 1


NAMES = [f"{path.parent.name}/{path.stem}" for path in sorted((ROOT / "records" / "vehicles").rglob("*.yaml"))]


def record(name: str) -> VehicleRecord:
    found = Workspace(ROOT).load(ROOT / "records" / "vehicles" / f"{name}.yaml").record
    assert isinstance(found, VehicleRecord)
    return found


def facts(name: str) -> dict[str, Any]:
    parts = said(removal_order(record(name)))
    return {"removal_order": parts, "steps": [{"id": step["step"]} for part in parts for step in part["steps"]]}


@pytest.mark.parametrize("name", NAMES)
def test_the_map_of_a_record_can_be_read_on_a_phone(name: str) -> None:
    drawn = order.on_page(facts(name))
    root = parsed(drawn.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1))
    wide, high = (float(value) for value in root.get("viewBox", "").split()[2:])
    assert wide == 340
    lines = texts(drawn.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1))
    assert_clear(lines)
    for line in lines:
        assert line.box.left >= 0
        assert line.box.right <= wide
        assert line.box.bottom <= high
    assert root.get("role") == "group"


NODES = st.lists(st.booleans(), min_size=1, max_size=14).flatmap(
    lambda sided: st.lists(st.tuples(*[st.integers(0, len(sided) - 1)] * 2), max_size=20).map(
        lambda edges: [
            Node(
                f"Part of the dash {place}",
                False,
                [Link("left", "#l", "l"), Link("right", "#r", "r")][: 1 + both],
                sorted({first for first, then in edges if then == place and first < place}),
            )
            for place, both in enumerate(sided)
        ]
    )
)


@given(NODES)
def test_boxes_keep_apart_and_inside_and_no_line_ends_elsewhere(nodes: list[Node]) -> None:
    made = order_map.laid(nodes)
    assert set(made.boxes) == set(range(len(nodes)))
    for one, other in combinations(made.boxes.values(), 2):
        beside = one.left + one.width <= other.left + 0.01 or other.left + other.width <= one.left + 0.01
        assert beside or one.bottom <= other.top or other.bottom <= one.top
    for box in made.boxes.values():
        assert box.left >= 0
        assert box.left + box.width <= order_map.WIDTH
        assert box.bottom <= made.end
    for (first, then), path in made.paths.items():
        for x in re.findall(r"(-?[\d.]+) -?[\d.]+(?=$|[, CV])", path):
            assert 0 <= float(x) <= order_map.WIDTH
        numbers = [float(number) for number in re.findall(r"-?[\d.]+", path)]
        assert numbers[:2] == pytest.approx([made.boxes[first].middle, made.boxes[first].bottom], abs=0.01)
        assert numbers[-1] == pytest.approx(made.boxes[then].top, abs=0.01)


def test_finch_says_what_its_record_says() -> None:
    made = facts("kelbrook/finch-2014-2018")
    parts = made["removal_order"]
    names = [part["name"] for part in parts]
    after = {part["name"]: {names[at] for at in part["after"]} for part in parts}
    assert after["Front door panel"] == {"Mirror corner cover", "Inner handle cup", "Mat in the pull pocket"}
    assert after["Inner handle cup"] == {"Screw cap in the handle cup"}  # which hides its screw
    assert after["Factory radio"] == {"Brace across the map radio", "Radio surround"}
    drawn = order.on_page(made)
    assert 'aria-label="Front door panel, left: after mirror corner cover, Inner handle cup, Mat in the pull pocket"' in drawn.replace("after Mirror", "after mirror")  # fmt: skip
    assert 'href="#step-remove:front-door-panel@left"' in drawn


@pytest.mark.parametrize("name", NAMES)
def test_every_link_leads_to_a_step(name: str) -> None:
    made = vehicle(Workspace(ROOT).load(ROOT / "records" / "vehicles" / f"{name}.yaml"))
    steps = {step["id"] for step in made["steps"]}
    assert set(re.findall(r'href="#step-([^"]+)"', order.on_page(made))) <= steps


def test_a_visit_has_its_own_parts_alone() -> None:
    whole = record("kelbrook/finch-2014-2018")
    own = removal_order(whole, ["remove:vent-trim", "remove:lower-trim"])
    assert [(one.name, list(one.after)) for one in own] == [("Upper vent trim", []), ("Lower centre trim", [0])]
