"""The steps of one visit to several kinds of car."""

from collections.abc import Sequence
from itertools import pairwise

from undertrim.derive.jobs import BadRequest
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.order import master_order
from undertrim.derive.procedure.planning import Planner, Procedure
from undertrim.derive.procedure.steps import Step
from undertrim.words import message


def merged(planner: Planner, plans: Sequence[Procedure]) -> list[Step]:
    """The steps of all plans once each, in an order that is right for each of them: mostly that of the whole record. Raises BadRequest where there is none."""
    if len(plans) == 1:
        return list(plans[0].steps)
    used = {step.id for plan in plans for step in plan.steps}
    catalogue = {step.id: step for step in planner.catalogue() if step.id in used}
    earlier: dict[str, set[str]] = {name: set() for name in catalogue}
    for plan in plans:
        for one, other in pairwise(plan.steps):
            earlier[other.id].add(one.id)
    graph = Graph(dict.fromkeys(catalogue, 0.0), earlier)
    try:
        return [catalogue[name] for name in master_order(graph, graph.place)]
    except Unreachable:
        open_names = [name for name in plans[0].car if len({plan.car[name] for plan in plans}) > 1]
        ask = " ".join(f"--variant {name}=..." for name in open_names)
        raise BadRequest(message("jobs/no-common-order", options=ask)) from None
