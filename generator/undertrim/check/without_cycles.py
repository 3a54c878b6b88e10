"""Circles of prerequisites, and graphs without them, so that what else is wrong can be seen."""

from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.walks import components


def without_cycles(graph: Graph, model: Graph | None = None) -> Graph:
    """`graph` without the AND prerequisites that are part of a circle in `model` (or in itself)."""
    model = model or graph
    if len(model.freeable) == len(model.costs):
        return graph
    circle = {node: i for i, members in enumerate(components(model.before)) for node in members}
    after = {
        user: [other for other in before if other not in model.before[user] or circle[other] != circle[user]]
        for user, before in graph.before.items()
    }
    return Graph(graph.costs, after, graph.any_of)
