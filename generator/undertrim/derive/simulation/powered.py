"""What holds under power: what may not lie loose, what a test needs joined, and that all that was joined is tried in the end."""

from typing import Any

from undertrim.derive.procedure import states
from undertrim.derive.procedure.fates import STAYING, TetherLine
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.fault import Fault, Faults, at
from undertrim.derive.simulation.world import World
from undertrim.record.model import Opening, Part, Tether
from undertrim.resources import table


def as_shown(world: World, step: Step) -> Faults:
    """The state printed beside a step is the car's, and no caution of the step takes another for granted."""
    pointer = at(step.node) if step.node else ()
    for state, value in step.state.items():
        if world.values[state] != value:
            message = f"'{step.title}' shows {states.label(state).lower()} {value}, but it is {world.values[state]}"
            yield Fault("state-shown", message, step, world.set_by.get(state), pointer)
    for caution in step.cautions:
        for state, value in caution.state:
            if world.values[state] != value:
                now = f"{states.label(state).lower()} {world.values[state]}"
                message = f"'{step.title}' warns as if {states.label(state).lower()} were {value}, with {now}"
                hint = f"bring {states.label(state).lower()} {value} about before it"
                yield Fault("caution-state", message, step, world.set_by.get(state), pointer, hint)


def ignition_off(world: World, step: Step, node: Node) -> Faults:
    """Nothing is joined or put back with the ignition on."""
    if world.values["ignition"] == "on":
        message = f"'{step.title}' goes back with the ignition on"
        yield Fault("state", message, step, world.set_by.get("ignition"), at(node), "switch the ignition off first")


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
            message = f"'{step.title}' switches the ignition on with the bolts of '{off_in.title}' out"
            yield Fault(
                "seat-loose",
                message,
                step,
                off_in,
                at(off_in.node, "held_by", bolts[0]),
                "bolt the seat down before power is on",
            )
        for tether in part.tethers.values():
            if (
                tether.circuit == "restraint"
                and tether.then in STAYING
                and tether.when.holds(world.car)
                and _fires(tether)
            ):
                message = f"'{step.title}' switches the ignition on with '{off_in.title}' lying about, and what hangs on '{tether.name}' may fire"
                hint = "put the part back before power is on; record under 'serves' what hangs on the plug"
                yield Fault("restraint-loose", message, step, off_in, at(off_in.node, "tethers", tether.id), hint)


def _fires(tether: Tether) -> bool:
    known = table("purposes")["purpose"]
    return not tether.serves or not all(known[name].get("loose") for name in tether.serves)


def what_it_uses(world: World, step: Step, opening: Opening) -> Faults:
    """A test of fitted gear is done only with everything joined that it may use, and a window only where one may move."""
    assert step.node
    entry: dict[str, Any] = next(
        (e for e in table("kinds")[opening.kind]["test"] if step.id.endswith(f":{e['id']}")), {}
    )
    for place, item in world.undone.items():
        if _ordinary(item.tether) and _serves(item.tether, entry.get("uses", ())):
            part, _, _ = place[0].partition("@")
            message = f"'{step.title}' uses what works through '{item.tether.name}', which is undone since '{item.step.title}'"
            yield Fault(
                "test-unjoined",
                message,
                step,
                item.step,
                ("parts", part, "tethers", place[1]),
                "join it before the test",
            )
    if entry.get("only", "").startswith("window") and not _window_there(opening):
        yield Fault(
            "test-without-window", f"'{step.title}' moves a window where there is none", step, None, at(step.node)
        )


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
        message = f"'{step.title}' takes '{line.tether.name}' for joined, which is undone since '{item.step.title}'"
        yield Fault("tether-open", message, step, item.step, at(node, "tethers", line.tether.id), "join it first")


def fed(world: World, step: Step) -> Faults:
    """Something is tried only with battery and ignition on."""
    for state in ("battery", "ignition"):
        if world.values[state] != "on":
            message = f"'{step.title}' is done with {states.label(state).lower()} {world.values[state]}"
            yield Fault(
                "state", message, step, world.set_by.get(state), at(step.node) if step.node else (), "switch on first"
            )


def tried(world: World, step: Step) -> Faults:
    """Count what a step tries; it is joined, and its part is back."""
    if step.node is None:
        world.lamp = None
        return
    if step.node.id in world.off and step.node.id not in world.gone:
        yield Fault(
            "try-before-refit",
            f"'{step.title}' comes before the part is back",
            step,
            world.off[step.node.id],
            at(step.node),
        )
    for line in step.tethers:
        world.untried.pop((step.node.id, line.tether.id), None)


def asleep(world: World, step: Step) -> Faults:
    """The current at rest is measured with everything off and the battery on."""
    for state, value in (("battery", "on"), ("ignition", "off")):
        if world.values[state] != value:
            message = f"'{step.title}' is done with {states.label(state).lower()} {world.values[state]}"
            yield Fault(
                "state", message, step, world.set_by.get(state), (), f"have {states.label(state).lower()} {value} first"
            )


def never_tried(world: World) -> Faults:
    """At the end everything that was joined has been tried, and the airbag lamp watched."""
    for (name, _), item in world.untried.items():
        if item.tether.circuit == "ordinary" or item.tether.test:
            part, _, _ = name.partition("@")
            message = f"'{item.tether.name}' is joined in '{item.step.title}' and never tried"
            yield Fault(
                "untried", message, item.step, None, ("parts", part, "tethers", item.tether.id), "try it at the end"
            )
    if world.lamp:
        yield Fault(
            "lamp-unwatched",
            f"'{world.lamp.title}' touches restraint wiring, and nobody watches the airbag lamp",
            world.lamp,
            None,
            (),
        )
