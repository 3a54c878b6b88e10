"""The replay itself: one function per kind of step, each yielding the faults of its instant."""

from collections.abc import Callable, Iterator, Sequence

from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import Node, node_id
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.derive.simulation import powered, tethers
from undertrim.derive.simulation.fault import Fault, Faults, at
from undertrim.derive.simulation.world import Open, World
from undertrim.record.model import Assignment, Blank, Opening, Part, Prep, Ref, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.resources import table


def replay(record: VehicleRecord, car: Assignment, steps: Sequence[Step]) -> list[Fault]:
    """The faults of the first wrong instant, or of the end; an empty list for a safe procedure."""
    world = World(record, car)
    for step in steps:
        faults = list(_ACTS[step.kind](world, step)) or list(powered.as_shown(world, step))
        if faults:
            return faults
    return list(_end(world))


_at = at


def _needs(world: World, step: Step, node: Node, needs: dict[str, str]) -> Faults:
    """Faults for states that are not as a step needs them."""
    for state, value in needs.items():
        if world.values.get(state) == value:
            continue
        other = world.set_by.get(state)
        now = f"{states.label(state).lower()} {world.values.get(state)}"
        since = f" since '{other.title}'" if other else ""
        message = f"'{step.title}' needs {states.label(state).lower()} {value}, but at that point it is {now}{since}"
        stated = isinstance(node.thing, Part | Prep) and state in node.thing.needs
        pointer = _at(node, "needs", state) if stated else _at(node)
        yield Fault(
            "state",
            message,
            step,
            other,
            pointer,
            "put what needs it before what takes it away, or set it again in between",
        )


def _todo(_: World, __: Step) -> Faults:
    yield from ()


def _prepare(world: World, step: Step) -> Faults:
    assert step.node
    prep = step.node.thing
    assert isinstance(prep, Prep)
    yield from _needs(world, step, step.node, prep.needs)
    yield from _parts_off(world, step, step.node, prep.after)
    if prep.sets.get("battery") == "off":
        yield from _battery_going_off(world, step, step.node, prep)
    for state, value in prep.sets.items():
        if value != states.initial().get(state) and prep.restore:
            world.unrestored[state] = step
        elif value == states.initial().get(state):
            world.unrestored.pop(state, None)
    world.set(prep.sets, step)
    yield from _take_out(world, step, step.node)


def _battery_going_off(world: World, step: Step, node: Node, prep: Prep) -> Faults:
    if world.values["ignition"] == "on":
        other = world.set_by.get("ignition")
        yield Fault(
            "battery-under-load",
            f"'{step.title}' takes the battery off while the ignition is on",
            step,
            other,
            _at(node),
            "switch the ignition off first",
        )
    for name in ("boot", "bonnet"):
        closure = world.record.closures.get(name)
        if (
            prep.area == _AREA[name]
            and closure
            and closure.latch == "electric"
            and closure.key != "yes"
            and world.values[name] != "open"
        ):
            message = (
                f"'{step.title}' takes the battery off with the {name} shut: its latch is electric and no key opens it"
            )
            yield Fault(
                "locked-in", message, step, None, _at(node), f"add 'needs: {{{name}: open}}' to this preparation"
            )


_AREA = {"boot": "boot", "bonnet": "engine-bay"}


def _wait(world: World, step: Step) -> Faults:
    assert step.wait
    if world.values["battery"] != "off":
        return
    if isinstance(step.wait.time, Quantity):
        world.waited += step.wait.time.value
    else:
        world.wait_unknown = True
    yield from ()


def _remove(world: World, step: Step) -> Faults:
    assert step.node
    node, part = step.node, step.node.thing
    assert isinstance(part, Part)
    if node.id in world.off:
        yield Fault("twice", f"'{step.title}' is off already", step, world.off[node.id], _at(node))
    yield from _needs(world, step, node, states.needs_of(part))
    yield from _parts_off(world, step, node, (*part.after, *_covers(part, world.car)))
    yield from _routes_open(world, step, node)
    yield from _restraint_touched(world, step, node)
    yield from tethers.come_off(world, step, node)
    yield from _take_out(world, step, node)
    if part.replaced == "no" and (part.seal or part.release == "peel"):
        world.unsealed[node.id] = step
    world.off[node.id] = step


def _covers(part: Part | Prep, car: Assignment) -> Iterator[Ref]:
    """The parts under which fasteners sit."""
    for fastener in part.held_by:
        if fastener.under and fastener.leave == "no" and fastener.when.holds(car):
            yield Ref(fastener.under)


def _fitted_nodes(world: World, ref: Ref, side: str | None) -> list[str]:
    """The node ids that a reference means in this car; empty where the part is not fitted."""
    thing = world.record.parts.get(ref.part)
    if thing is None or not thing.when.holds(world.car) or not ref.when.holds(world.car):
        return []
    if not thing.each:
        return [ref.part]
    wanted = ref.side or side
    return [node_id(ref.part, each) for each in thing.each if wanted in (None, each)]


def _parts_off(world: World, step: Step, node: Node, refs: Sequence[Ref]) -> Faults:
    """Faults for parts that should be off by now."""
    for ref in refs:
        for name in _fitted_nodes(world, ref, node.side):
            if name not in world.off:
                title = world.record.parts[ref.part].name
                message = f"'{step.title}' comes before '{title}' is off, which must come first"
                yield Fault("order", message, step, None, _at(node, "after"), f"take '{ref.part}' off first")


def _routes_open(world: World, step: Step, node: Node) -> Faults:
    assert isinstance(node.thing, Part)
    for number, choice in enumerate(node.thing.after_any):
        done = any(
            all(n in world.off for ref in refs for n in _fitted_nodes(world, ref, node.side))
            for refs in choice.values()
        )
        if not done:
            message = f"'{step.title}' comes before any of its routes is open: {', '.join(choice)}"
            yield Fault("order", message, step, None, _at(node, "after_any", number), "do one route in full first")


def _restraint_touched(world: World, step: Step, node: Node) -> Faults:
    """Restraint wiring is touched only with the battery off and the maker's wait over."""
    part = node.thing
    assert isinstance(part, Part)
    touched = [t for t in part.tethers.values() if t.circuit == "restraint" and t.when.holds(world.car)]
    if not touched:
        return
    world.lamp = step
    pointer = _at(node, "tethers", touched[0].id)
    if world.values["battery"] != "off":
        other = world.set_by.get("battery")
        yield Fault(
            "restraint-live",
            f"'{step.title}' touches restraint wiring with the battery on",
            step,
            other,
            pointer,
            "take the battery off first",
        )
        return
    off = world.set_by["battery"]
    needed = world.record.restraint.wait if world.record.restraint else Blank.UNKNOWN
    if isinstance(needed, Quantity) and world.waited < needed.value:
        message = f"'{step.title}' touches restraint wiring {world.waited:g} s after '{off.title}'; the maker's wait is {needed.text}"
        yield Fault("wait-short", message, step, off, ("restraint", "wait"), "wait the maker's time in full")
    elif not isinstance(needed, Quantity) and not world.wait_unknown and not world.waited:
        message = f"'{step.title}' touches restraint wiring with no wait after '{off.title}'"
        yield Fault(
            "wait-missing", message, step, off, pointer, "record the maker's wait under 'restraint', or 'unknown'"
        )


def _take_out(world: World, step: Step, node: Node) -> Faults:
    """Count what comes out; a look-alike that must stay is not touched."""
    for index, line in enumerate(step.fasteners):
        if line.fate == "out" and line.fastener.leave == "yes":
            message = f"'{step.title}' takes out '{line.fastener.what}', which must not be touched"
            yield Fault("look-alike", message, step, None, _at(node, "held_by", index), "leave it alone")
        if line.fate == "out" and _counted(line):
            slot = (node.id, _slot(node, line))
            world.out[slot] = world.out.get(slot, 0) + _number(line)
    assert isinstance(node.thing, Part | Prep)
    out = [line.fastener for line in step.fasteners]
    for index, fastener in enumerate(node.thing.held_by):
        if fastener.when.holds(world.car) and fastener not in out:
            message = f"'{step.title}' forgets {fastener.kind} '{fastener.what}'"
            yield Fault("fastener-missed", message, step, None, _at(node, "held_by", index), "it still holds the part")


def _slot(node: Node, line: FastenerLine) -> int:
    """Which entry of the part's `held_by` a line is about."""
    assert isinstance(node.thing, Part | Prep)
    return node.thing.held_by.index(line.fastener)


def _counted(line: FastenerLine) -> bool:
    counted: bool = table("fasteners")[line.fastener.kind]["counted"]
    return counted


def _number(line: FastenerLine) -> int:
    return line.count if isinstance(line.count, int) else 0


def _put_in(world: World, step: Step, node: Node) -> Faults:
    """What goes back is what came out; single-use ones are new. Lines that say the same are counted together."""
    back: dict[int, int] = {}
    for line in step.fasteners:
        if line.fate == "leave":
            continue
        slot = _slot(node, line)
        if line.fastener.single_use and line.fate == "back":
            message = f"'{step.title}' puts {line.fastener.kind} '{line.fastener.what}' back, which is single-use"
            yield Fault("single-use", message, step, world.off.get(node.id), _at(node, "held_by", slot), "fit new ones")
        if _counted(line):
            back[slot] = back.get(slot, 0) + _number(line)
    for slot, number in back.items():
        yield from _balance(world, step, node, slot, number)


def _balance(world: World, step: Step, node: Node, slot: int, number: int) -> Faults:
    assert isinstance(node.thing, Part | Prep)
    fastener = node.thing.held_by[slot]
    was = world.out.pop((node.id, slot), None)
    pointer = _at(node, "held_by", slot)
    if was is None:
        message = f"'{step.title}' puts in {fastener.kind} '{fastener.what}', which never came out"
        yield Fault("fastener-extra", message, step, world.off.get(node.id), pointer)
    elif was != number:
        message = f"'{step.title}' puts in {number} of {was} {fastener.kind} '{fastener.what}'"
        yield Fault("fastener-left-over", message, step, world.off.get(node.id), pointer)


def _move(world: World, step: Step) -> Faults:
    assert step.node
    yield from _must_be_off(world, step, step.node)
    yield from _restraint_touched(world, step, step.node)
    yield from _others_back(world, step, step.node)
    yield from _renewed(step, step.node)
    yield from _put_in(world, step, step.node)
    yield from tethers.end(world, step)
    _seal(world, step, step.node)
    world.gone.add(step.node.id)


def _install(world: World, step: Step) -> Faults:
    assert step.node
    node, opening = step.node, step.node.thing
    assert isinstance(opening, Opening)
    yield from _needs(world, step, node, table("kinds")[opening.kind]["needs"])
    yield from _parts_off(world, step, node, [Ref(name) for name in opening.behind])
    world.fitted.add(node.id)
    taken = {name for name in _behind(world, node, opening) if name in world.off and _makes_room(world, name, opening)}
    world.gone |= taken
    for line in step.tethers:
        if line.node and line.node.id not in taken:
            message = (
                f"'{step.title}' deals with '{line.tether.name}', but '{line.node.thing.name}' makes no room there"
            )
            pointer = _at(line.node, "tethers", line.tether.id)
            yield Fault("tether-fate", message, step, world.off.get(line.node.id), pointer, "leave 'replaced' out")
    restraint = {item.node.id: item.node for item in step.tethers if item.node and item.tether.circuit == "restraint"}
    for part in restraint.values():
        yield from _restraint_touched(world, step, part)
    yield from tethers.end(world, step)


def _makes_room(world: World, node: str, opening: Opening) -> bool:
    """Whether new gear here takes the place of a part: one that is replaced, and that no other opening claims by its `behind`."""
    name = node.partition("@")[0]
    claims = [one for one in world.record.openings.values() if name in one.behind]
    return world.record.parts[name].replaced == "yes" and (not claims or opening in claims)


def _behind(world: World, node: Node, opening: Opening) -> set[str]:
    """Everything that had to come off to get at an opening."""
    waiting = [name for ref in opening.behind for name in _fitted_nodes(world, Ref(ref), node.side)]
    found: set[str] = set()
    while waiting:
        name = waiting.pop()
        if name in found:
            continue
        found.add(name)
        part = world.record.parts[name.split("@")[0]]
        routes = (ref for choice in part.after_any for refs in choice.values() for ref in refs)
        for ref in (*part.after, *_covers(part, world.car), *routes):
            waiting.extend(_fitted_nodes(world, ref, name.partition("@")[2] or None))
    return found


def _power(world: World, step: Step) -> Faults:
    turned = step.id.split(":")[1]
    if turned == "on":
        if world.values["battery"] != "on":
            yield Fault(
                "state",
                f"'{step.title}' switches on with the battery off",
                step,
                world.set_by.get("battery"),
                (),
                "join the battery first",
            )
        for item in world.open_restraints():
            message = f"'{step.title}' switches the ignition on while '{item.tether.name}' is undone since '{item.step.title}'"
            assert item.step.node
            yield Fault(
                "restraint-open",
                message,
                step,
                item.step,
                _at(item.step.node, "tethers", item.tether.id),
                "join every restraint plug before power is on",
            )
        yield from powered.nothing_loose(world, step)
    world.set({"ignition": turned}, step)


def _test(world: World, step: Step) -> Faults:
    assert step.node
    if isinstance(step.node.thing, Opening):
        yield from _needs(world, step, step.node, {"battery": "on", "ignition": "on"})
        yield from powered.what_it_uses(world, step, step.node.thing)
        if step.node.id not in world.fitted:
            yield Fault("order", f"'{step.title}' tests what is not fitted yet", step, None, _at(step.node))
        return
    world.untested.pop((step.node.id, step.id.rpartition(":")[2]), None)


def _refit(world: World, step: Step) -> Faults:
    assert step.node
    node, part = step.node, step.node.thing
    assert isinstance(part, Part)
    yield from _must_be_off(world, step, node)
    yield from powered.ignition_off(world, step, node)
    yield from _nothing_shut_in(world, step, node)
    yield from _restraint_touched(world, step, node)
    yield from _others_back(world, step, node)
    yield from _renewed(step, node)
    yield from _put_in(world, step, node)
    yield from tethers.end(world, step)
    _seal(world, step, node)
    world.gone.discard(node.id)
    world.off.pop(node.id, None)


def _seal(world: World, step: Step, node: Node) -> None:
    """A step seals a part with what its record says it is sealed with."""
    if isinstance(node.thing, Part) and step.seal and step.seal == node.thing.seal:
        world.unsealed.pop(node.id, None)


def _must_be_off(world: World, step: Step, node: Node) -> Faults:
    moved = node.id in world.gone and isinstance(node.thing, Part) and node.thing.replaced == "no"
    if node.id not in world.off or moved:
        yield Fault("order", f"'{step.title}' puts back what is not off", step, world.off.get(node.id), _at(node))


def _others_back(world: World, step: Step, node: Node) -> Faults:
    """What a part is refitted after is back, or has made room for new gear."""
    assert isinstance(node.thing, Part)
    for index, ref in enumerate(node.thing.refit_after):
        for name in _fitted_nodes(world, ref, node.side):
            if name in world.off and name not in world.gone and ref.when.holds(world.car):
                message = f"'{step.title}' goes back before '{world.off[name].title}', after which it is refitted"
                pointer = _at(node, "refit_after", index)
                yield Fault("order", message, step, world.off[name], pointer, "put the other part back first")


def _renewed(step: Step, node: Node) -> Faults:
    """A part that is spoilt as it comes off is a new one as it goes back, and no other is."""
    assert isinstance(node.thing, Part)
    if step.new != (node.thing.reuse == "no"):
        which = "takes a new part, though the old one is good" if step.new else "puts a part back that is single-use"
        yield Fault("single-use", f"'{step.title}' {which}", step, None, _at(node, "reuse"), "fit a new one")


def _nothing_shut_in(world: World, step: Step, node: Node) -> Faults:
    """What lies behind a part is back, or replaced, before the part covers it again."""
    for name, off_in in world.off.items():
        other = off_in.node
        if name in world.gone or other is None or not isinstance(other.thing, Part) or name == node.id:
            continue
        behind = [*other.thing.after, *_covers(other.thing, world.car)]
        if any(node.id in _fitted_nodes(world, ref, other.side) for ref in behind):
            message = f"'{step.title}' goes back before '{off_in.title}', which lies behind it"
            yield Fault("order", message, step, off_in, _at(other, "after"), "refit in reverse order")
    for place, item in world.untested.items():
        holder = world.record.parts[place[0].split("@")[0]]
        if any(
            node.id in _fitted_nodes(world, ref, place[0].partition("@")[2] or None)
            for ref in (*holder.after, *_covers(holder, world.car))
        ):
            yield _never_tested(place[0], item, step)


def _joining(world: World, step: Step) -> Faults:
    """Plugs joined for the tests, their part still off."""
    assert step.node
    yield from _must_be_off(world, step, step.node)
    yield from powered.ignition_off(world, step, step.node)
    yield from tethers.end(world, step)


def _try(world: World, step: Step) -> Faults:
    yield from powered.fed(world, step)
    yield from powered.tried(world, step)


def _measure(world: World, step: Step) -> Faults:
    yield from powered.asleep(world, step)


def _restore(world: World, step: Step) -> Faults:
    assert step.node
    prep = step.node.thing
    assert isinstance(prep, Prep)
    yield from _needs(
        world, step, step.node, {k: v for k, v in prep.needs.items() if k not in prep.sets and k in _LASTING}
    )
    for name in ("boot", "bonnet"):
        closure = world.record.closures.get(name)
        if (
            prep.sets.get(name) == "open"
            and closure
            and closure.latch == "electric"
            and closure.key != "yes"
            and world.values["battery"] == "off"
        ):
            message = f"'{step.title}' shuts the {name} with the battery off: its latch is electric and no key opens it"
            yield Fault(
                "locked-in",
                message,
                step,
                world.set_by.get("battery"),
                ("closures", name),
                "shut it once the battery is on again",
            )
    if prep.sets.get("battery") == "off":
        for item in world.open_restraints():
            assert item.step.node
            message = f"'{step.title}' joins the battery while '{item.tether.name}' is undone since '{item.step.title}'"
            yield Fault(
                "restraint-open",
                message,
                step,
                item.step,
                _at(item.step.node, "tethers", item.tether.id),
                "join every restraint plug first",
            )
    yield from _put_in(world, step, step.node)
    for state in prep.sets:
        world.unrestored.pop(state, None)
    world.set({state: states.initial()[state] for state in prep.sets}, step)


_LASTING = ("battery",)
"""States that a preparation needs to be undone as well as to be done."""


def _end(world: World) -> Faults:
    """What must not be left when the last step is done."""
    yield from tethers.left_open(world)
    for (name, _), item in world.untested.items():
        yield _never_tested(name, item, None)
    for step in world.unsealed.values():
        assert step.node
        message = f"'{step.title}' is peeled off and never sealed again"
        yield Fault("unsealed", message, step, None, _at(step.node), "add 'seal' with what it is sealed with")
    for name, step in world.off.items():
        if name not in world.gone and step.node:
            yield Fault("left-off", f"'{step.title}' comes off and never goes back", step, None, _at(step.node))
    yield from _left_over(world)
    yield from powered.never_tried(world)
    for step in world.unrestored.values():
        assert step.node
        yield Fault("unrestored", f"'{step.title}' is never undone", step, None, _at(step.node, "restore"))
    if world.values["ignition"] == "on":
        yield Fault("state", "the ignition is left on at the end", world.set_by.get("ignition"), None, ())


def _left_over(world: World) -> Faults:
    """Fasteners that came out of something that is back, and did not go back with it."""
    for (name, slot), count in world.out.items():
        base = name.split("@")[0]
        part = world.record.parts.get(base)
        thing = part or world.record.preps.get(base)
        if thing is None or not count or (part and part.replaced == "yes") or name in world.off:
            continue
        fastener = thing.held_by[slot]
        section = "parts" if part else "preps"
        message = f"{count} {fastener.kind} '{fastener.what}' of '{thing.name}' left over"
        yield Fault("fastener-left-over", message, None, None, (section, base, "held_by", slot), "put them back")


def _never_tested(name: str, item: Open, before: Step | None) -> Fault:
    part, _, _ = name.partition("@")
    late = f" before '{before.title}'" if before else ""
    message = f"'{item.tether.name}' is joined in '{item.step.title}' and not tested{late}"
    return Fault(
        "untested",
        message,
        item.step,
        before,
        ("parts", part, "tethers", item.tether.id),
        "test it with the door or lid open",
    )


_ACTS: dict[str, Callable[[World, Step], Faults]] = {
    "todo": _todo,
    "prepare": _prepare,
    "wait": _wait,
    "remove": _remove,
    "move": _move,
    "install": _install,
    "power": _power,
    "join": _joining,
    "test": _test,
    "refit": _refit,
    "restore": _restore,
    "try": _try,
    "measure": _measure,
}
