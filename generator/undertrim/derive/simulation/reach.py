"""What lies before what: parts that must be off, and what is behind a part or an opening."""

from collections.abc import Iterator, Sequence

from undertrim.derive.procedure.node import Node, node_id
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Assignment, Opening, Part, Prep, Ref


def covers(part: Part | Prep, car: Assignment, side: str | None) -> Iterator[Ref]:
    """The parts under which fasteners of one side sit, or of both where there is one of it."""
    for fastener in part.held_by:
        if side and fastener.side not in (None, side):
            continue
        if fastener.under and fastener.leave == "no" and fastener.when.holds(car):
            yield Ref(fastener.under)


def fitted_nodes(world: World, ref: Ref, side: str | None) -> list[str]:
    """The node ids that a reference means in this car; empty where the part is not fitted."""
    thing = world.record.parts.get(ref.part)
    if thing is None or not thing.when.holds(world.car) or not ref.when.holds(world.car):
        return []
    if not thing.each:
        return [ref.part]
    wanted = ref.side or side
    return [node_id(ref.part, each) for each in thing.each if wanted in (None, each)]


def parts_off(world: World, step: Step, node: Node, refs: Sequence[Ref]) -> Faults:
    """Faults for parts that should be off by now."""
    for ref in refs:
        for name in fitted_nodes(world, ref, node.side):
            if name not in world.off:
                part = world.record.parts[ref.part].name
                yield fault("order", "before-part-off", step, None, at(node, "after"), part=part, id=ref.part)


def over_the_way(world: World, opening: Opening) -> Iterator[Ref]:
    """The parts that lie over the way of the cable to what goes into an opening."""
    for run in world.record.runs.values():
        if run.id == opening.along and run.when.holds(world.car):
            yield from run.over


def routes_open(world: World, step: Step, node: Node) -> Faults:
    """Faults for ways in of which none is done."""
    assert isinstance(node.thing, Part)
    for number, choice in enumerate(node.thing.after_any):
        done = any(
            all(n in world.off for ref in refs for n in fitted_nodes(world, ref, node.side)) for refs in choice.values()
        )
        if not done:
            pointer = at(node, "after_any", number)
            yield fault("order", "before-any-route", step, None, pointer, routes=", ".join(choice))


def behind(world: World, node: Node, opening: Opening) -> set[str]:
    """Everything that had to come off to get at an opening."""
    waiting = [name for ref in opening.behind for name in fitted_nodes(world, Ref(ref), node.side)]
    found: set[str] = set()
    while waiting:
        name = waiting.pop()
        if name in found:
            continue
        found.add(name)
        part = world.record.parts[name.split("@")[0]]
        routes = (ref for choice in part.after_any for refs in choice.values() for ref in refs)
        side = name.partition("@")[2] or None
        for ref in (*part.after, *covers(part, world.car, side), *routes):
            waiting.extend(fitted_nodes(world, ref, side))
    return found


def lies_behind(world: World, node: Node, part: Part, side: str | None) -> bool:
    """Whether a part is reached only with the part of a node off."""
    meant = node.id.partition("@")[0]
    refs = (ref for ref in (*part.after, *covers(part, world.car, side)) if ref.part == meant)
    return any(node.id in fitted_nodes(world, ref, side) for ref in refs)
