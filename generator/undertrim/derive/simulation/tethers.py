"""The replay of tethers: each is left joined on purpose, or undone by one step and ended by one later step, as the record says."""

from undertrim.derive.procedure import states
from undertrim.derive.procedure.fates import STAYING, TAKEN, TetherLine, fate_of_tether
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import powered
from undertrim.derive.simulation.fault import Faults, fault
from undertrim.derive.simulation.world import Open, World
from undertrim.record.model import Part
from undertrim.record.source import Pointer
from undertrim.words import message


def come_off(world: World, step: Step, node: Node) -> Faults:
    """As a part comes off every tether of it is undone, or left joined because the record says so."""
    part = _part(node)
    said = {line.tether.id: line for line in step.tethers}
    for tether in part.tethers.values():
        if not tether.when.holds(world.car):
            continue
        line = said.get(tether.id)
        if line is None or (line.act in STAYING and line.act != fate_of_tether(part, tether)):
            pointer = _at(node, line, tether.id)
            yield fault("tether-missed", "tether-missed", step, None, pointer, tether=tether.name)
        elif line.act == "undo":
            world.undone[node.id, tether.id] = Open(tether, step, line.later)
        elif line.act == "goes-with":
            world.carried[node.id, tether.id] = Open(tether, step)


def end(world: World, step: Step) -> Faults:
    """The tethers that a step joins, leaves off, bridges or lays back."""
    for line in step.tethers:
        node = line.node or step.node
        assert node
        where = (node.id, line.tether.id)
        if line.act == "joined":
            yield from powered.joined_already(world, step, node, line)
            continue
        item = (world.carried if line.act == "lay-in" else world.undone).pop(where, None)
        yield from _wrong(step, node, line, item)
        if item and line.act in ("rejoin", "lay-in") and states.tether_kind(line.tether.kind).mechanical:
            world.untested[where] = Open(line.tether, step)
        if item and _wants_trying(line):
            world.untried[where] = Open(line.tether, step)


def _wants_trying(line: TetherLine) -> bool:
    """Whether a wire was joined again, or went along undisturbed and the record says how to prove it."""
    electric = states.tether_kind(line.tether.kind).electric
    return electric and (line.act == "rejoin" or (line.act == "lay-in" and bool(line.tether.test)))


def _wrong(step: Step, node: Node, line: TetherLine, item: Open | None) -> Faults:
    doing = message(f"acts/{line.act}", tether=line.tether.name)
    pointer = _at(node, line)
    if item is None:
        yield fault("tether-extra", "ends-never-undone", step, None, pointer, doing=doing)
    elif line.act in ("park", "bridge") and line.tether.circuit == "restraint":
        yield fault("restraint-open", "ends-restraint", step, item.step, pointer, doing=doing)
    elif line.act not in _allowed(step, node, line):
        yield fault("tether-fate", "ends-otherwise", step, item.step, pointer, doing=doing)
    elif item.later and line.act not in item.later:
        yield fault("tether-fate", "ends-as-not-announced", step, item.step, pointer, doing=doing)


def _allowed(step: Step, node: Node, line: TetherLine) -> tuple[str, ...]:
    """The acts that a step may end a tether with."""
    part = _part(node)
    fate = fate_of_tether(part, line.tether)
    if step.kind == "install":
        return (fate,) if part.replaced == "yes" and fate in TAKEN else ()
    if fate == "goes-with":
        return ("lay-in",)
    return ("rejoin",) if part.replaced == "yes" else (fate,)


def left_open(world: World) -> Faults:
    """What must not be undone, or hang loose on its tether, when the last step is done."""
    for (name, _), item in world.undone.items():
        yield fault("tether-open", "never-joined", item.step, None, _place(name, item), tether=item.tether.name)
    for (name, _), item in world.carried.items():
        yield fault("tether-open", "never-laid-back", item.step, None, _place(name, item), tether=item.tether.name)


def _place(node: str, item: Open) -> Pointer:
    return ("parts", node.partition("@")[0], "tethers", item.tether.id)


def _at(node: Node, line: TetherLine | None, name: str = "") -> Pointer:
    return ("parts", node.thing.id, "tethers", line.tether.id if line else name)


def _part(node: Node) -> Part:
    assert isinstance(node.thing, Part)
    return node.thing
