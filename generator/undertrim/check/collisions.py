"""Steps that need a state of the car which what must come before them has taken away."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from undertrim.check.without_cycles import without_cycles
from undertrim.derive.procedure import states
from undertrim.derive.procedure.cycles import blocked
from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.nodes import Layout
from undertrim.derive.procedure.walks import reach, shortest_path
from undertrim.record.model import Prep

Edge = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Collision:
    """`user` needs `state` at `need`, but `changer`, which sets it to `value`, must come first.

    `path` leads from the user to the changer, each needing the next first. `turned` tells that it would work
    if what sets `value` stood before what sets `need`.
    """

    user: str
    state: str
    need: str
    changer: str
    value: str
    path: tuple[str, ...]
    turned: bool


def collisions(layout: Layout) -> Iterator[Collision]:
    """Every collision of one car's states that its prerequisites alone do not explain."""
    if len(layout.ordering.freeable) == len(layout.ordering.costs):
        return
    true = without_cycles(layout.graph)
    held = _held_back(layout)
    direct = {edge: path for edge in held if (path := shortest_path(true.before, edge[1], {edge[0]}))}
    for edge, path in direct.items():
        yield from _collision(layout, edge, path)
    for cycle in _roundabout(layout, held - direct.keys()):
        edge = next(pair for pair in pairwise(cycle) if pair in held)
        start = cycle.index(edge[1])
        yield from _collision(layout, edge, (*cycle[start:-1], *cycle[: start + 1])[: len(cycle) - 1])


def _held_back(layout: Layout) -> set[Edge]:
    """What changes a state, with what must be done while it still is as it was."""
    true = layout.graph.before
    return {(changer, user) for changer, early in layout.ordering.before.items() for user in early - true[changer]}


def _roundabout(layout: Layout, held: set[Edge]) -> list[tuple[str, ...]]:
    """Circles that need routes, or several states at once, to close."""
    ordering = without_cycles(layout.ordering, layout.graph)
    true = layout.graph.before
    after = {
        node: [other for other in before if other in true[node] or (node, other) in held]
        for node, before in ordering.before.items()
    }
    cycles = {block.cycle for block in blocked(Graph(ordering.costs, after, ordering.any_of)).values()}
    return sorted(cycle for cycle in cycles if held.intersection(pairwise(cycle)))


def _collision(layout: Layout, edge: Edge, path: tuple[str, ...]) -> Iterator[Collision]:
    changer, user = edge
    thing = layout.nodes[changer].thing
    assert isinstance(thing, Prep)
    for state, need in states.needs(layout.nodes[user].thing).items():
        value = thing.sets.get(state, need)
        if value != need:
            turned = _turned(layout, changer, state, need, value)
            yield Collision(user, state, need, changer, value, path, turned)


def _turned(layout: Layout, changer: str, state: str, need: str, value: str) -> bool:
    """Whether everything that needs `value` could be done before the state is set to `need`."""
    if need == states.initial().get(state):
        return False
    preps = {name: node.thing for name, node in layout.nodes.items() if isinstance(node.thing, Prep)}
    setters = {name for name, prep in preps.items() if prep.sets.get(state) == need}
    early = [name for name, node in layout.nodes.items() if states.needs(node.thing).get(state) == value]
    return setters.isdisjoint(reach(layout.graph.before, [changer, *early]))


def lacking(layout: Layout) -> Iterator[tuple[Node, str, str]]:
    """Every (node, state, value) that one car needs, does not arrive with, and that nothing sets."""
    for node in layout.nodes.values():
        for state, value in states.needs(node.thing).items():
            if value != states.initial().get(state) and not _set_by_another(layout, node, state, value):
                yield node, state, value


def _set_by_another(layout: Layout, user: Node, state: str, value: str) -> bool:
    setters = (layout.nodes[name].thing for name in layout.graph.before[user.id])
    return any(isinstance(thing, Prep) and thing.sets.get(state) == value for thing in setters)
