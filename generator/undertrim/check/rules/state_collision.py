"""A state of the car that a step needs must be there when its turn comes.

## What it finds

A part or preparation that needs a state, such as the battery on, and must come after something that has
taken it away. Only what no order solves is reported: whatever needs the battery on is put before it goes off
by itself. Also a state that is needed and that nothing sets, neither a preparation of the record nor a usual
one, and a part that needs the battery on while its restraint wiring is moved.

## Why it matters

With the battery off and the trim half out, the lever stays locked in Park, the seat on its bolts, and the
boot shut over the battery.

## Bad

    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          hazard: {name: Hazard switch plug, kind: plug}
      lower-trim:
        name: Lower trim
        release: pull
        after: [vent-trim]
        needs: {battery: on}    # here

error: 'lower-trim' needs battery on, but comes after 'battery', which sets battery off (lower-trim -> vent-trim -> battery, each needs the next first: break this chain, or find a way without battery on)

    variants:
      boot:
        ask: How does the boot open?
        choices:
          key: {label: With a key, tell: A lock barrel in the boot lid}
          button: {label: With a button, tell: No lock barrel}
    preps:
      boot-open:
        name: Boot open
        sets: {boot: open}
        needs: {battery: on}    # here
        when: {boot: button}
        after: [sill]
        how: Press the button.
    parts:
      sill:
        name: Sill trim
        release: pull
        each: [left, right]
        tethers:
          lamp: {name: Sill lamp plug, kind: plug}
      cover:
        name: Cover in the boot
        release: lift
        needs: {boot: open}

error: 'boot-open' needs battery on where boot=button, but comes after 'battery', which sets battery off (boot-open -> sill -> battery, each needs the next first: break this chain, or find a way without battery on)

    preps:
      brake:
        name: Parking brake set
        sets: {parking-brake: on}
        after: [console-lid]
        how: Pull the lever out of the console.
    parts:
      console-lid:
        name: Console lid
        release: lift
        tethers:
          lamp: {name: Lamp plug, kind: plug}
      lever-trim:
        name: Lever trim
        release: lift
        needs: {gear: neutral}    # here

error: the usual way to set gear neutral needs battery on, but comes after 'battery', which sets battery off (gear-neutral (usual) -> brake -> console-lid -> battery, each needs the next first: break this chain, or find a way without battery on)

    preps:
      seats-forward:
        name: Seats forward
        sets: {seat: forward}
        how: Slide the seats forward.
      seats-rearward:
        name: Seats rearward
        sets: {seat: rearward}
        how: Slide the seats rearward.
    parts:
      front-bolts:
        name: Front seat bolts
        release: unscrew
        needs: {seat: rearward}
      rear-bolts:
        name: Rear seat bolts
        release: unscrew
        after: [front-bolts]
        needs: {seat: forward}    # here
      belt-anchor:
        name: Belt anchor
        release: unscrew
        after: [rear-bolts]
        needs: {seat: rearward}    # here

error: 'rear-bolts' needs seat forward, but comes after 'seats-rearward', which sets seat rearward (rear-bolts -> front-bolts -> seats-rearward, each needs the next first: break this chain, or find a way without seat forward)
error: 'belt-anchor' needs seat rearward, but comes after 'seats-forward', which sets seat forward (belt-anchor -> rear-bolts -> seats-forward, each needs the next first: break this chain, or find a way without seat rearward)

    parts:
      brake-cover:
        name: Parking brake cover
        release: lift
        needs: {parking-brake: off}    # here
      seat:
        name: Driver seat
        release: lift
        needs: {battery: on}    # here
        tethers:
          belt: {name: Belt tensioner plug, kind: plug, circuit: restraint, then: rejoin}

error: 'brake-cover' needs parking-brake off, but nothing sets it (add a preparation that has it under 'sets')
error: 'seat' needs battery on, but its restraint plug 'belt' needs battery off (move what needs the battery on into a preparation, which is then done before)

## Good

    preps:
      lever-back:
        name: Lever back
        sets: {gear: lowest}
        needs: {battery: on, parking-brake: on}
        how: Pull the lever back.
      seats-rearward:
        name: Seats rearward
        sets: {seat: rearward}
        how: Slide the seats rearward.
      seats-forward:
        name: Seats forward
        sets: {seat: forward}
        how: Slide the seats forward.
    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          hazard: {name: Hazard switch plug, kind: plug}
      lower-trim:
        name: Lower trim
        release: pull
        after: [vent-trim]
        needs: {gear: lowest}
      rear-bolts:
        name: Rear seat bolts
        release: unscrew
        after: [front-bolts]
        needs: {seat: forward}
      front-bolts:
        name: Front seat bolts
        release: unscrew
        needs: {seat: rearward}
      boot-trim:
        name: Boot trim
        release: pull
        needs: {boot: open}
        tethers:
          lamp: {name: Lamp plug, kind: plug}
      powered-rail:
        name: Cover driven out by its motor
        release: slide
        needs: {battery: on}
        tethers:
          motor: {name: Motor plug, kind: plug}
"""

# Long because its page, which stands above, is half of it.

# Long for its page above, which shows every way the rule can speak; the rule itself is short.

from collections.abc import Iterator

from undertrim.check import needs
from undertrim.check.affected import found_in, which
from undertrim.check.collisions import Collision, collisions, lacking
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.check.reasons import bare, named, trail, way
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.nodes import Layout
from undertrim.derive.procedure.states import USUAL
from undertrim.record.model import Assignment, Prep
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, Value, message, quoted, word

LEVEL = Level.ERROR

Key = tuple[str, str, str]
"""What one problem is told by in all cars: two ids and a state, or an id, a state and its value."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every state that is needed and cannot be there."""
    if not read_in_full(subject):
        return
    yield from _taken_away(subject)
    yield from _never_set(subject)
    yield from _restraint_live(subject)


def _taken_away(subject: Subject) -> Iterator[Finding]:
    def find(car: Assignment) -> Iterator[tuple[Key, tuple[Collision, Layout]]]:
        layout = subject.planner.layout(car)
        for item in collisions(layout):
            yield (bare(item.user), item.state, bare(item.changer)), (item, layout)

    for (item, layout), cars in found_in(subject.cars, find).values():
        yield _collided(item, layout, which(cars, subject.cars))


def _collided(item: Collision, layout: Layout, where: Value) -> Finding:
    user = layout.nodes[item.user]
    facts: dict[str, Value] = {
        "who": _who(user),
        "state": item.state,
        "need": item.need,
        "value": item.value,
        "where": where,
        "changer": named(bare(item.changer)),
        "way": way(trail(item.path)),
    }
    if item.turned:
        found = message("rules/state-collision/wrong-turn", **facts)
    else:
        found = message("rules/state-collision/taken-away", **facts)
    return Finding(needs.said_at_node(layout, user, item.state), found, about=(bare(item.user), bare(item.changer)))


def _who(node: Node) -> Message:
    if isinstance(node.thing, Prep) and node.id.startswith(USUAL):
        state, value = next(iter(node.thing.sets.items()))
        return message("rules/state-collision/usual-way", state=state, value=value)
    return quoted(named(bare(node.id)))


def _never_set(subject: Subject) -> Iterator[Finding]:
    def find(car: Assignment) -> Iterator[tuple[Key, Pointer]]:
        layout = subject.planner.layout(car)
        for node, state, value in lacking(layout):
            yield (bare(node.id), state, value), needs.said_at_node(layout, node, state)

    for (name, state, value), (place, cars) in found_in(subject.cars, find).items():
        where = which(cars, subject.cars)
        found = message("rules/state-collision/never-set", name=named(name), state=state, value=value, where=where)
        yield Finding(place, found, about=(name,))


def _restraint_live(subject: Subject) -> Iterator[Finding]:
    for part in subject.record.parts.values():
        tether = next((tether for tether in part.tethers.values() if tether.circuit == "restraint"), None)
        if tether and part.needs.get("battery") == "on":
            kind = word("tethers", "kind", tether.kind, "noun")
            found = message("rules/state-collision/restraint-live", part=part.id, kind=kind, tether=tether.id)
            yield Finding(needs.said_at(part, "battery"), found, about=(part.id, tether.id))
