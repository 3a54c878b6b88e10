"""Restraint wiring is touched only with the battery off and the maker's wait over."""

from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Blank, Part
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity


def touched(world: World, step: Step, node: Node) -> Faults:
    """Faults for a step at a part that restraint wiring hangs on."""
    part = node.thing
    assert isinstance(part, Part)
    wiring = [t for t in part.tethers.values() if t.circuit == "restraint" and t.when.holds(world.car)]
    if not wiring:
        return
    world.lamp = step
    pointer = at(node, "tethers", wiring[0].id)
    if world.values["battery"] != "off":
        yield fault("restraint-live", "restraint-live", step, world.set_by.get("battery"), pointer)
        return
    yield from _waited(world, step, world.set_by["battery"], pointer)


def _waited(world: World, step: Step, off: Step, pointer: Pointer) -> Faults:
    needed = world.record.restraint.wait if world.record.restraint else Blank.UNKNOWN
    if isinstance(needed, Quantity):
        if world.waited < needed.value:
            place = ("restraint", "wait")
            yield fault("wait-short", "wait-short", step, off, place, waited=world.waited, wait=needed.text)
    elif not world.wait_unknown and not world.waited:
        yield fault("wait-missing", "wait-missing", step, off, pointer)
