"""Circles of prerequisites, and graphs without them, so that what else is wrong can be seen."""

from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.walks import components


def untied(graph: Graph, model: Graph | None = None) -> Graph:
    """`graph` without the AND prerequisites that are part of a circle of those in `model` (by itself, if not given)."""
    model = model or graph
    if len(model.freeable) == len(model.costs):
        return graph
    circle = {node: i for i, members in enumerate(components(model.before)) for node in members}
    after = {
        user: [needed for needed in before if needed not in model.before[user] or circle[needed] != circle[user]]
        for user, before in graph.before.items()
    }
    return Graph(graph.costs, after, graph.any_of)
