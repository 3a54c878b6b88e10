"""Steps under power: switching on and off, tests of new gear, and trying at the end what was joined."""

from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import powered, preparing
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Opening


def power(world: World, step: Step) -> Faults:
    """The ignition is switched."""
    turned = step.id.split(":")[1]
    if turned == "on":
        if world.values["battery"] != "on":
            yield fault("state", "on-without-battery", step, world.set_by.get("battery"), ())
        for item in world.open_restraints():
            assert item.step.node
            pointer = at(item.step.node, "tethers", item.tether.id)
            yield fault("restraint-open", "ignition-on-open", step, item.step, pointer, tether=item.tether.name)
        yield from powered.nothing_loose(world, step)
    world.set({"ignition": turned}, step)


def test(world: World, step: Step) -> Faults:
    """New gear is tested, or a cable by hand."""
    assert step.node
    if isinstance(step.node.thing, Opening):
        yield from preparing.needs(world, step, step.node, {"battery": "on", "ignition": "on"})
        yield from powered.what_it_uses(world, step, step.node.thing)
        yield from powered.driven(world, step, step.node, step.node.thing)
        if step.node.id not in world.fitted:
            yield fault("order", "not-fitted-yet", step, None, at(step.node))
        return
    world.untested.pop((step.node.id, step.id.rpartition(":")[2]), None)


def try_it(world: World, step: Step) -> Faults:
    """Something that was joined is tried at the end."""
    yield from powered.fed(world, step)
    yield from powered.tried(world, step)


def measure(world: World, step: Step) -> Faults:
    """The current at rest is measured."""
    yield from powered.asleep(world, step)
