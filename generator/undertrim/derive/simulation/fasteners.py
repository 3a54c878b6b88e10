"""The count of fasteners: what comes out, what goes in again, and what is left over."""

from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.derive.simulation.fault import Faults, at, fault
from undertrim.derive.simulation.world import World
from undertrim.record.model import Fastener, Part, Prep
from undertrim.resources import table
from undertrim.words import Value, word


def take_out(world: World, step: Step, node: Node) -> Faults:
    """Count what comes out; a look-alike that must stay is not touched."""
    for index, line in enumerate(step.fasteners):
        if line.fate == "out" and line.fastener.leave == "yes":
            pointer = at(node, "held_by", index)
            yield fault("look-alike", "look-alike", step, None, pointer, fastener=line.fastener.what)
        if line.fate == "out" and _counted(line):
            slot = (node.id, _slot(node, line))
            world.out[slot] = world.out.get(slot, 0) + _number(line)
    assert isinstance(node.thing, Part | Prep)
    out = [line.fastener for line in step.fasteners]
    for index, fastener in enumerate(node.thing.held_by):
        if fastener.when.holds(world.car) and fastener not in out:
            yield fault(
                "fastener-missed", "fastener-missed", step, None, at(node, "held_by", index), **_named(fastener)
            )


def put_in(world: World, step: Step, node: Node) -> Faults:
    """What goes back is what came out; single-use ones are new. Lines that say the same are counted together."""
    back: dict[int, int] = {}
    for line in step.fasteners:
        if line.fate == "leave":
            continue
        slot = _slot(node, line)
        if line.fastener.single_use and line.fate == "back":
            pointer = at(node, "held_by", slot)
            off_in = world.off.get(node.id)
            yield fault("single-use", "single-use-back", step, off_in, pointer, **_named(line.fastener))
        if _counted(line):
            back[slot] = back.get(slot, 0) + _number(line)
    for slot, number in back.items():
        yield from _balance(world, step, node, slot, number)


def _balance(world: World, step: Step, node: Node, slot: int, number: int) -> Faults:
    assert isinstance(node.thing, Part | Prep)
    fastener, off_in = node.thing.held_by[slot], world.off.get(node.id)
    was = world.out.pop((node.id, slot), None)
    pointer = at(node, "held_by", slot)
    if was is None:
        yield fault("fastener-extra", "never-came-out", step, off_in, pointer, **_named(fastener, number))
    elif was != number:
        yield fault(
            "fastener-left-over", "fewer-put-in", step, off_in, pointer, **_named(fastener, was), count=number, of=was
        )


def left_over(world: World) -> Faults:
    """Fasteners that came out of something that is back, and did not go back with it."""
    for (name, slot), count in world.out.items():
        base, _, side = name.partition("@")
        part = world.record.parts.get(base)
        thing = part or world.record.preps.get(base)
        if thing is None or not count or (part and part.replaced == "yes") or name in world.off:
            continue
        number = part.slots(side or None)[slot] if part else slot
        pointer = ("parts" if part else "preps", base, "held_by", number)
        named = _named(thing.held_by[number], count)
        yield fault("fastener-left-over", "left-over", None, None, pointer, **named, count=count, part=thing.name)


def _named(fastener: Fastener, count: int = 1) -> dict[str, Value]:
    """What fasteners are called in a sentence: their kind, and their size or shape as typed."""
    form = "label" if count == 1 else "plural"
    return {"kind": word("fasteners", fastener.kind, form), "what": fastener.what}


def _slot(node: Node, line: FastenerLine) -> int:
    """Which entry of the part's `held_by` a line is about."""
    assert isinstance(node.thing, Part | Prep)
    return node.thing.held_by.index(line.fastener)


def _counted(line: FastenerLine) -> bool:
    counted: bool = table("fasteners")[line.fastener.kind]["counted"]
    return counted


def _number(line: FastenerLine) -> int:
    return line.count if isinstance(line.count, int) else 0
