"""Steps that bring the car into a state, wait in it, and bring it back."""

from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import fasteners, reach
from undertrim.derive.simulation.fault import Faults, at, fault, stands
from undertrim.derive.simulation.world import World
from undertrim.record.model import Closure, Part, Prep
from undertrim.record.units import Quantity
from undertrim.words import Word, word

_AREAS = {"boot": "boot", "bonnet": "engine-bay"}
"""The work area that a closure shuts."""
_LASTING = ("battery",)
"""States that a preparation needs to be undone as well as to be done."""


def needs(world: World, step: Step, node: Node, wanted: dict[str, str]) -> Faults:
    """Faults for states that are not as a step needs them."""
    for state, value in wanted.items():
        now = world.values.get(state)
        if now == value:
            continue
        other = world.set_by.get(state)
        stated = isinstance(node.thing, Part | Prep) and state in node.thing.needs
        pointer = at(node, "needs", state) if stated else at(node)
        code = "needs-state-since" if other else "needs-state"
        yield fault("state", code, step, other, pointer, wanted=stands(state, value), now=stands(state, str(now)))


def prepare(world: World, step: Step) -> Faults:
    """A state of the car is set."""
    assert step.node
    prep = step.node.thing
    assert isinstance(prep, Prep)
    yield from needs(world, step, step.node, prep.needs)
    yield from reach.parts_off(world, step, step.node, prep.after)
    if prep.sets.get("battery") == "off":
        yield from _battery_going_off(world, step, step.node, prep)
    for state, value in prep.sets.items():
        if value != states.initial().get(state) and states.undoing(prep):
            world.unrestored[state] = step
        elif value == states.initial().get(state):
            world.unrestored.pop(state, None)
    world.set(prep.sets, step)
    yield from fasteners.take_out(world, step, step.node)


def _battery_going_off(world: World, step: Step, node: Node, prep: Prep) -> Faults:
    if world.values["ignition"] == "on":
        yield fault("battery-under-load", "battery-under-load", step, world.set_by.get("ignition"), at(node))
    for name, area in _AREAS.items():
        if prep.area == area and _locks_in(world, name) and world.values[name] != "open":
            yield fault("locked-in", "locked-in", step, None, at(node), name=name, lid=_lid(name))


def _locks_in(world: World, name: str) -> bool:
    """Whether a lid stays shut without power: its latch is electric and no key is known to open it."""
    closure: Closure | None = world.record.closures.get(name)
    return closure is not None and closure.latch == "electric" and closure.key != "yes"


def _lid(name: str) -> Word:
    return word("states", "state", name, "label")


def wait(world: World, step: Step) -> Faults:
    """Time goes by; with the battery off it counts for the restraint wiring."""
    assert step.wait
    if world.values["battery"] != "off":
        return
    if isinstance(step.wait.time, Quantity):
        world.waited += step.wait.time.value
    else:
        world.wait_unknown = True
    yield from ()


def restore(world: World, step: Step) -> Faults:
    """A state of the car is undone."""
    assert step.node
    prep = step.node.thing
    assert isinstance(prep, Prep)
    lasting = {state: value for state, value in prep.needs.items() if state not in prep.sets and state in _LASTING}
    yield from needs(world, step, step.node, lasting)
    for name in _AREAS:
        if prep.sets.get(name) == "open" and _locks_in(world, name) and world.values["battery"] == "off":
            other = world.set_by.get("battery")
            yield fault("locked-in", "shut-in", step, other, ("closures", name), lid=_lid(name))
    if prep.sets.get("battery") == "off":
        for item in world.open_restraints():
            assert item.step.node
            pointer = at(item.step.node, "tethers", item.tether.id)
            yield fault("restraint-open", "battery-on-open", step, item.step, pointer, tether=item.tether.name)
    yield from fasteners.put_in(world, step, step.node)
    for state in prep.sets:
        world.unrestored.pop(state, None)
    world.set({state: states.initial()[state] for state in prep.sets}, step)
