"""Steps that fit new gear."""

from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import powered, preparing, reach, restraints, tethers
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Opening, Ref
from undertrim.record.model.kinds.usual import usual_for


def install(world: World, step: Step) -> Faults:
    """Gear goes into an opening, in the place of what is replaced."""
    assert step.node
    node, opening = step.node, step.node.thing
    assert isinstance(opening, Opening)
    yield from preparing.needs(world, step, node, usual_for(opening.kind).needs)
    yield from reach.parts_off(world, step, node, [*map(Ref, opening.behind), *reach.over_the_way(world, opening)])
    world.fitted.add(node.id)
    yield from powered.before_it_is_heard(world, step, node, opening)
    taken = {name for name in world.ways.making_room(node, opening) if name in world.off}
    world.gone |= taken
    for line in step.tethers:
        if line.node and line.node.id not in taken:
            pointer, other = at(line.node, "tethers", line.tether.id), world.off.get(line.node.id)
            part = line.node.thing.name
            yield fault("tether-fate", "no-room-made", step, other, pointer, tether=line.tether.name, part=part)
    wired = {item.node.id: item.node for item in step.tethers if item.node and item.tether.circuit == "restraint"}
    for part_node in wired.values():
        yield from restraints.touched(world, step, part_node)
    yield from tethers.end(world, step)
