"""Where each node would like to stand in the master order: preparations first, then file order, one side finished before the next."""

from collections.abc import Mapping
from types import UnionType

from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.walks import reach
from undertrim.record.model import Opening, Part, Prep, Reached, Thing

Wish = tuple[int, int, int, int]
"""Class (preparation, part, job), place of the group, side, own place."""

_CLASSES: tuple[type[Thing] | UnionType, ...] = (Prep, Part, Opening | Reached)
_SIDES = (None, "left", "right")


def wishes(nodes: Mapping[str, Node], graph: Graph, ordering: Graph) -> dict[str, Wish]:
    """The wish of every node; the smallest goes first.

    The battery goes off after the other preparations. What a preparation waits for wishes to stand right before it, and so does what
    needs the battery on before it goes off: nothing is taken apart earlier than that.
    """
    place = {name: i for i, name in enumerate(nodes)}
    groups = _groups(nodes, graph, place)
    wished = {
        name: (_class(node), groups.get(name, place[name]), _SIDES.index(node.side), place[name])
        for name, node in nodes.items()
    }
    preps = {name: node.thing for name, node in nodes.items() if isinstance(node.thing, Prep)}
    last = {name for name, prep in preps.items() if prep.sets.get("battery") == "off"}
    wished |= {name: (0, len(place), 0, place[name]) for name in last}
    for name, (_, group, _, _) in {name: wished[name] for name in preps}.items():
        for other in reach((ordering if name in last else graph).before, [name]) - {name}:
            wished[other] = min(wished[other], (0, group, 0, place[other]))
    return wished


def _class(node: Node) -> int:
    return next(place for place, kind in enumerate(_CLASSES) if isinstance(node.thing, kind))


def _groups(nodes: Mapping[str, Node], graph: Graph, place: Mapping[str, int]) -> dict[str, int]:
    """For parts that exist per side, and those that these wait for: the place of the first of the sided nodes tied together.

    What a door waits for stands before the door even where the file has it later, or one side would wait for it while the
    other is begun.
    """
    groups: dict[str, int] = {}
    for members in _clusters(nodes, graph):
        first = min(place[name] for name in members)
        for name in reach(graph.before, members):
            if isinstance(nodes[name].thing, Part):
                groups[name] = min(first, groups.get(name, place[name]))
    return groups


def _clusters(nodes: Mapping[str, Node], graph: Graph) -> list[list[str]]:
    """The nodes that have a side, those tied by prerequisites together, both sides of a thing always together."""
    leader: dict[str, str] = {}

    def find(name: str) -> str:
        while leader.setdefault(name, name) != name:
            name = leader[name]
        return name

    sided = {name: name.split("@")[0] for name, node in nodes.items() if node.side}
    for name, base in sided.items():
        for other in graph.in_file_order(graph.needs[name] & sided.keys()):
            leader[find(sided[other])] = find(base)
    found: dict[str, list[str]] = {}
    for name, base in sided.items():
        found.setdefault(find(base), []).append(name)
    return list(found.values())
