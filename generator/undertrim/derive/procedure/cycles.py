"""Nodes that can never be freed, and the cycle to show for each."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.walks import shortest_cycles, shortest_path
from undertrim.words import Items, Message, Value, message


@dataclass(frozen=True)
class Block:
    """Why a node can never be freed. In `path` and `cycle` every node needs the next one first.

    `choice`: number of the node's first choice whose every route is blocked; None if only AND blocks it.
    `path`: from the node to the nearest trouble, both included: a node of `cycle`, or one with a choice that
    has no routes.
    `cycle`: starts at its node earliest in the file and repeats it at the end; () if a choice has no routes.
    """

    choice: int | None
    path: tuple[str, ...]
    cycle: tuple[str, ...]

    def said(self, called: Callable[[str], Value]) -> Message:
        """Why, as a message, with nodes as `called` has them."""
        cycle, way = (Items(tuple(map(called, nodes)), "arrow") for nodes in (self.cycle, self.path))
        end = message("ways/each-needs-the-next", cycle=cycle) if self.cycle else message("ways/no-routes")
        return end if len(self.path) == 1 else message("ways/leads-to", way=way, end=end)


class Unreachable(Exception):  # noqa: N818 - it names the state of the target
    """No order of steps frees `target`; `block` says why."""

    def __init__(self, target: str, block: Block) -> None:
        self.target = target
        self.block = block
        super().__init__(target, block)

    def said(self, called: Callable[[str], Value]) -> Message:
        """The same as a message, with nodes as `called` has them."""
        return message("ways/never-freed", target=called(self.target), why=self.block.said(called))


def find_cycles(graph: Graph) -> list[tuple[str, ...]]:
    """One shortest cycle per strongly connected component of the AND edges, each node needing the next first.

    A cycle starts at its node earliest in the file and repeats it at the end; the list is in file order.
    """
    return shortest_cycles({node: graph.in_file_order(before) for node, before in graph.before.items()})


def blocked(graph: Graph) -> dict[str, Block]:
    """Every node that can never be freed, in file order, with the reason.

    That is: members of AND cycles, nodes with a choice whose every route is blocked, and all that need those.
    Nodes caught by the same cycle carry the same `cycle`, so it can be reported once.
    """
    blame = _blame(graph)
    cycles = {node: cycle for cycle in shortest_cycles(blame) for node in cycle}
    trouble = cycles.keys() | {node for node in blame if not blame[node]}
    blocks = {}
    for node in blame:
        path = (node,) if node in trouble else shortest_path(blame, node, trouble)
        blocks[node] = Block(_dead_choice(graph, node), path, cycles.get(path[-1], ()))
    return blocks


def refuse_blocked(graph: Graph, targets: Iterable[str]) -> None:
    """Raise Unreachable for the target earliest in the file that can never be freed."""
    stuck = graph.in_file_order(node for node in targets if node not in graph.freeable)
    if stuck:
        raise Unreachable(stuck[0], blocked(graph)[stuck[0]])


def _blame(graph: Graph) -> Mapping[str, list[str]]:
    """For each node that can never be freed, the nodes like it that hold it back."""
    return {node: _held_by(graph, node) for node in graph.costs if node not in graph.freeable}


def _held_by(graph: Graph, node: str) -> list[str]:
    before = graph.before[node] - graph.freeable.keys()
    choice = _dead_choice(graph, node)
    if choice is None:
        return graph.in_file_order(before)
    routes = graph.any_of[node][choice]
    return graph.in_file_order(before.union(*routes) - graph.freeable.keys()) if routes else []


def _dead_choice(graph: Graph, node: str) -> int | None:
    for number, choice in enumerate(graph.any_of.get(node, ())):
        if not any(route <= graph.freeable.keys() for route in choice):
            return number
    return None
