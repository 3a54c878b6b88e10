"""What lies before what: parts that must be off, and what is behind a part or an opening."""

from collections.abc import Iterator, Sequence

from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Opening, Part, Ref


def parts_off(world: World, step: Step, node: Node, refs: Sequence[Ref]) -> Faults:
    """Faults for parts that should be off by now."""
    for ref in refs:
        for name in world.ways.fitted(ref, node.side):
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
            all(n in world.off for ref in refs for n in world.ways.fitted(ref, node.side)) for refs in choice.values()
        )
        if not done:
            pointer = at(node, "after_any", number)
            yield fault("order", "before-any-route", step, None, pointer, routes=", ".join(choice))
