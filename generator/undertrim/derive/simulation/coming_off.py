"""Steps that take a part off."""

from undertrim.derive.procedure import states
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import fasteners, preparing, reach, restraints, tethers, ways
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Part


def remove(world: World, step: Step) -> Faults:
    """A part comes off, with its tethers and fasteners."""
    assert step.node
    node, part = step.node, step.node.thing
    assert isinstance(part, Part)
    if node.id in world.off:
        yield fault("twice", "twice", step, world.off[node.id], at(node))
    yield from preparing.needs(world, step, node, states.needs_of(part))
    yield from reach.parts_off(world, step, node, (*part.after, *ways.covers(part, world.car, node.side)))
    yield from reach.routes_open(world, step, node)
    yield from restraints.touched(world, step, node)
    yield from tethers.come_off(world, step, node)
    yield from fasteners.take_out(world, step, node)
    if part.replaced == "no" and (part.seal or part.release == "peel"):
        world.unsealed[node.id] = step
    world.off[node.id] = step
