"""What holds under power: what may not lie loose, what a test needs joined, and that all that was joined is tried in the end."""

from undertrim.derive.procedure import states
from undertrim.derive.procedure.fates import STAYING, TetherLine
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.fault import Faults, at, fault, stands
from undertrim.derive.simulation.world import World
from undertrim.record.model import Opening, Part, Tether
from undertrim.record.model.kinds.usual import usual_for
from undertrim.record.source import Pointer
from undertrim.resources import table


def as_shown(world: World, step: Step) -> Faults:
    """The state printed beside a step is the car's, and no caution of the step takes another for granted."""
    for state, value in step.state.items():
        if (now := world.values[state]) != value:
            both = {"shown": stands(state, value), "now": stands(state, now)}
            yield fault("state-shown", "state-shown", step, world.set_by.get(state), _place(step), **both)
    for caution in step.cautions:
        for state, value in caution.state:
            if (now := world.values[state]) != value:
                both = {"taken": stands(state, value), "now": stands(state, now)}
                yield fault("caution-state", "caution-state", step, world.set_by.get(state), _place(step), **both)


def _place(step: Step) -> Pointer:
    return at(step.node) if step.node else ()


def ignition_off(world: World, step: Step, node: Node) -> Faults:
    """Nothing is joined or put back with the ignition on."""
    if world.values["ignition"] == "on":
        yield fault("state", "back-with-ignition-on", step, world.set_by.get("ignition"), at(node))


def nothing_loose(world: World, step: Step) -> Faults:
    """With the ignition on no seat is unbolted, and nothing that may fire lies about."""
    for off_in in world.off.values():
        part = off_in.node.thing if off_in.node else None
        if off_in.node is None or not isinstance(part, Part) or off_in.node.id in world.gone:
            continue
        bolts = [
            n for n, f in enumerate(part.held_by) if f.role == "seat" and f.leave == "no" and f.when.holds(world.car)
        ]
        if bolts and part.area in ("", "seat"):
            yield fault("seat-loose", "seat-loose", step, off_in, at(off_in.node, "held_by", bolts[0]))
        for tether in part.tethers.values():
            if (
                tether.circuit == "restraint"
                and tether.then in STAYING
                and tether.when.holds(world.car)
                and _fires(tether)
            ):
                pointer = at(off_in.node, "tethers", tether.id)
                yield fault("restraint-loose", "restraint-loose", step, off_in, pointer, tether=tether.name)


def _fires(tether: Tether) -> bool:
    known = table("purposes")["purpose"]
    return not tether.serves or not all(known[name].get("loose") for name in tether.serves)


def what_it_uses(world: World, step: Step, opening: Opening) -> Faults:
    """A test of fitted gear is done only with everything joined that it may use, and a window only where one may move."""
    assert step.node
    entry = usual_for(opening.kind).test.get(step.detail)
    for place, item in world.undone.items():
        if _ordinary(item.tether) and _serves(item.tether, entry.uses if entry else ()):
            part, _, _ = place[0].partition("@")
            pointer = ("parts", part, "tethers", place[1])
            yield fault("test-unjoined", "test-unjoined", step, item.step, pointer, tether=item.tether.name)
    if entry and entry.only in ("window", "window-unknown") and not _window_there(opening):
        yield fault("test-without-window", "test-without-window", step, None, at(step.node))


def before_it_is_heard(world: World, step: Step, node: Node, opening: Opening) -> Faults:
    """What drives speakers is fitted before any of them is tried; it then waits to be seen on."""
    if opening.drives:
        world.silent[node.id] = step
        if world.heard:
            yield fault("driver-late", "fitted-after-sound", step, world.heard, at(node))


def driven(world: World, step: Step, node: Node, opening: Opening) -> Faults:
    """Speakers are tried only with all that drives them joined and seen on."""
    entry = usual_for(opening.kind).test.get(step.detail)
    if opening.drives:
        world.silent.pop(node.id, None)
    elif entry and "sound" in entry.uses:
        world.heard = step
        for fitted in world.silent.values():
            yield fault("driver-late", "driver-not-on", step, fitted, at(node))


def _window_there(opening: Opening) -> bool:
    """Whether a window may be behind an opening: the record speaks of glass there, or does not say that a door has none."""
    over, ends_at = (opening.depth.over, opening.depth.obstruction) if opening.depth else ("", "")
    return ends_at == "glass" or (over != "no-glass" and (bool(over) or opening.in_a_door))


def _ordinary(tether: Tether) -> bool:
    return tether.circuit == "ordinary" and states.tether_kind(tether.kind).electric


def _serves(tether: Tether, used: tuple[str, ...]) -> bool:
    known = {*tether.serves, *table("tethers")["kind"][tether.kind].get("serves", ())}
    return bool(used) and (not known or not known.isdisjoint(used))


def joined_already(world: World, step: Step, node: Node, line: TetherLine) -> Faults:
    """A plug that a refit takes for joined is joined."""
    item = world.undone.get((node.id, line.tether.id))
    if item:
        pointer = at(node, "tethers", line.tether.id)
        yield fault("tether-open", "taken-for-joined", step, item.step, pointer, tether=line.tether.name)


def fed(world: World, step: Step) -> Faults:
    """Something is tried only with battery and ignition on."""
    for state in ("battery", "ignition"):
        if (now := world.values[state]) != "on":
            pointer = at(step.node) if step.node else ()
            yield fault("state", "tried-without-power", step, world.set_by.get(state), pointer, now=stands(state, now))


def tried(world: World, step: Step) -> Faults:
    """Count what a step tries; it is joined, and its part is back."""
    if step.node is None:
        world.lamp = None
        return
    if step.node.id in world.off and step.node.id not in world.gone:
        yield fault("try-before-refit", "try-before-refit", step, world.off[step.node.id], at(step.node))
    for line in step.tethers:
        world.untried.pop((step.node.id, line.tether.id), None)


def asleep(world: World, step: Step) -> Faults:
    """The current at rest is measured with everything off and the battery on."""
    for state, value in (("battery", "on"), ("ignition", "off")):
        if (now := world.values[state]) != value:
            both = {"now": stands(state, now), "wanted": stands(state, value)}
            yield fault("state", "measured-in-another-state", step, world.set_by.get(state), (), **both)


def never_tried(world: World) -> Faults:
    """At the end everything that was joined has been tried, and the airbag lamp watched."""
    for (name, _), item in world.untried.items():
        if item.tether.circuit == "ordinary" or item.tether.test:
            part, _, _ = name.partition("@")
            pointer = ("parts", part, "tethers", item.tether.id)
            yield fault("untried", "untried", item.step, None, pointer, tether=item.tether.name)
    if world.lamp:
        yield fault("lamp-unwatched", "lamp-unwatched", world.lamp, None, ())
