"""What must not be left when the last step is done."""

from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import fasteners, powered, tethers
from undertrim.derive.simulation.fault import Fault, Faults, at, fault
from undertrim.derive.simulation.world import Open, World


def end(world: World) -> Faults:
    """Nothing open, untested, unsealed, off, left over or undone, and the ignition off."""
    yield from tethers.left_open(world)
    for (name, _), item in world.untested.items():
        yield never_tested(name.partition("@")[0], item, None)
    for step in world.unsealed.values():
        assert step.node
        yield fault("unsealed", "unsealed", step, None, at(step.node))
    for name, step in world.off.items():
        if name not in world.gone and step.node:
            yield fault("left-off", "left-off", step, None, at(step.node))
    yield from fasteners.left_over(world)
    yield from powered.never_tried(world)
    for step in world.unrestored.values():
        assert step.node
        yield fault("unrestored", "unrestored", step, None, at(step.node, "restore"))
    if world.values["ignition"] == "on":
        yield fault("state", "ignition-left-on", world.set_by.get("ignition"), None, ())


def never_tested(part: str, item: Open, before: Step | None) -> Fault:
    """A cable that is joined and not tested by hand, or not before a step shuts it in."""
    pointer = ("parts", part, "tethers", item.tether.id)
    code = "untested-before" if before else "untested"
    return fault("untested", code, item.step, before, pointer, tether=item.tether.name)
