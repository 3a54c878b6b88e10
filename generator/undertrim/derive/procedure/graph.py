"""The selective-disassembly graph: costs, what must come first, and where one of several routes will do."""

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property

from undertrim.derive.procedure.freeing import free
from undertrim.derive.procedure.walks import postorder, reach

Route = frozenset[str]
"""Nodes which must all be done for the route to be open; the empty route is always open."""

Choice = tuple[Route, ...]
"""Routes of which one, completely done, is enough; a choice with no route can never be met."""


class UnknownNode(KeyError):  # noqa: N818 - it names what was found
    """A node is named that has no cost: `node`, and `used_by` the node that names it ("" for a target)."""

    def __init__(self, node: str, used_by: str = "") -> None:
        super().__init__(node)
        self.node = node
        self.used_by = used_by

    def __str__(self) -> str:
        return f"unknown node '{self.node}'" + (f", named by '{self.used_by}'" if self.used_by else "")


@dataclass(frozen=True)
class Graph:
    """Nodes with their costs (finite, >= 0, any one unit), AND prerequisites and OR choices.

    The iteration order of `costs` is the file order that breaks every tie. A node absent from `after` or
    `any_of` needs nothing there. The maps must not be changed afterwards: what follows from them is kept.
    Raises UnknownNode for a node without a cost, ValueError for a cost below zero or not finite.
    """

    costs: Mapping[str, float]
    after: Mapping[str, Collection[str]] = field(default_factory=dict)
    any_of: Mapping[str, tuple[Choice, ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for node, cost in self.costs.items():
            if not (math.isfinite(cost) and cost >= 0):
                raise ValueError(f"the cost of '{node}' is {cost}: it must be finite and not below zero")
        for user in (*self.after, *self.any_of):
            self.refuse_unknown([user])
        for user, needs in self.needs.items():
            self.refuse_unknown(needs, user)

    def refuse_unknown(self, nodes: Iterable[str], used_by: str = "") -> None:
        """Raise UnknownNode for the first, by name, of the nodes that have no cost."""
        unknown = [node for node in nodes if node not in self.costs]
        if unknown:
            raise UnknownNode(min(unknown), used_by)

    @cached_property
    def place(self) -> dict[str, int]:
        """Each node's place in the file order, from 0."""
        return {node: i for i, node in enumerate(self.costs)}

    @cached_property
    def prices(self) -> dict[str, Decimal]:
        """The costs as the decimals they were typed as, so that 0.1 + 0.2 ties with 0.3."""
        return {node: Decimal(str(cost)) for node, cost in self.costs.items()}

    @cached_property
    def before(self) -> dict[str, frozenset[str]]:
        """For every node its AND prerequisites, one step back."""
        return {node: frozenset(self.after.get(node, ())) for node in self.costs}

    @cached_property
    def needs(self) -> dict[str, frozenset[str]]:
        """For every node its AND prerequisites and all nodes of all its routes, one step back."""
        return {
            node: before.union(*(route for choice in self.any_of.get(node, ()) for route in choice))
            for node, before in self.before.items()
        }

    @cached_property
    def freeable(self) -> dict[str, int]:
        """Nodes that can be freed at all, each with its place in some order that frees them all."""
        return {node: i for i, node in enumerate(free(postorder(self.needs), self.before, self.any_of))}

    def in_file_order(self, nodes: Iterable[str]) -> list[str]:
        """The nodes, sorted as the file has them."""
        return sorted(nodes, key=self.place.__getitem__)


def ancestors(graph: Graph, targets: Iterable[str]) -> frozenset[str]:
    """The targets and everything they need by AND alone. Raises UnknownNode."""
    wanted = set(targets)
    graph.refuse_unknown(wanted)
    return frozenset(reach(graph.before, wanted))
