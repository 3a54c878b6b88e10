"""Steps that put a part back, move it over to new gear, or join its plugs for the tests."""

from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import ending, fasteners, powered, restraints, tethers
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Part


def refit(world: World, step: Step) -> Faults:
    """A part goes back into the car."""
    assert step.node
    node = step.node
    yield from _must_be_off(world, step, node)
    yield from powered.ignition_off(world, step, node)
    yield from _nothing_shut_in(world, step, node)
    yield from _with_all_that_it_has(world, step, node)
    world.gone.discard(node.id)
    world.off.pop(node.id, None)


def move(world: World, step: Step) -> Faults:
    """A part goes over to the new gear."""
    assert step.node
    yield from _must_be_off(world, step, step.node)
    yield from _with_all_that_it_has(world, step, step.node)
    world.gone.add(step.node.id)


def join(world: World, step: Step) -> Faults:
    """Plugs are joined for the tests, their part still off."""
    assert step.node
    yield from _must_be_off(world, step, step.node)
    yield from powered.ignition_off(world, step, step.node)
    yield from tethers.end(world, step)


def _with_all_that_it_has(world: World, step: Step, node: Node) -> Faults:
    """Whatever a part goes back to, its wiring, neighbours, fasteners, tethers and seal are as they must be."""
    yield from restraints.touched(world, step, node)
    yield from _others_back(world, step, node)
    yield from _renewed(step, node)
    yield from fasteners.put_in(world, step, node)
    yield from tethers.end(world, step)
    _seal(world, step, node)


def _seal(world: World, step: Step, node: Node) -> None:
    """A step seals a part with what its record says it is sealed with."""
    if isinstance(node.thing, Part) and step.seal and step.seal == node.thing.seal:
        world.unsealed.pop(node.id, None)


def _must_be_off(world: World, step: Step, node: Node) -> Faults:
    moved = node.id in world.gone and isinstance(node.thing, Part) and node.thing.replaced == "no"
    if node.id not in world.off or moved:
        yield fault("order", "not-off", step, world.off.get(node.id), at(node))


def _others_back(world: World, step: Step, node: Node) -> Faults:
    """What a part is refitted after is back, or has made room for new gear."""
    assert isinstance(node.thing, Part)
    for index, ref in enumerate(node.thing.refit_after):
        for name in world.ways.fitted(ref, node.side):
            if name in world.off and name not in world.gone and ref.when.holds(world.car):
                pointer = at(node, "refit_after", index)
                yield fault("order", "before-refit-after", step, world.off[name], pointer)


def _renewed(step: Step, node: Node) -> Faults:
    """A part that is spoilt as it comes off is a new one as it goes back, and no other is."""
    assert isinstance(node.thing, Part)
    if step.new != (node.thing.reuse == "no"):
        code = "new-part-needless" if step.new else "part-single-use"
        yield fault("single-use", code, step, None, at(node, "reuse"))


def _nothing_shut_in(world: World, step: Step, node: Node) -> Faults:
    """What lies behind a part is back, or replaced, before the part covers it again; and what must be tested there is."""
    for name, off_in in world.off.items():
        other = off_in.node
        if name in world.gone or other is None or not isinstance(other.thing, Part) or name == node.id:
            continue
        if node.id in world.ways.before(other.thing, other.side):
            yield fault("order", "shuts-in", step, off_in, at(other, "after"))
    for (name, _), item in world.untested.items():
        part, _, side = name.partition("@")
        if node.id in world.ways.before(world.record.parts[part], side or None):
            yield ending.never_tested(part, item, step)
