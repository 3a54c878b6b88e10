"""No part or preparation may wait for itself.

## What it finds

Prerequisites that go round in a circle in some car, whether they stand in `after`, in `under`, or come from
a state that a preparation sets. The message shows the circle, each arrow meaning "needs first". A circle is
reported once, however many sides and cars it shows in; `where` names the cars if they are not all. Routes of
`after_any` are left to `unreachable-opening`, and "whatever needs the battery on comes before it goes off"
to `state-collision`.

## Why it matters

Of a bezel that waits for the radio behind it, the record says nothing true: the tech levers at a trim that
is still held until it cracks.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        after: [vent-screws, shifter-trim, radio]    # here
      vent-screws:
        name: Screws in the vents
        release: unscrew
        held_by: [{screw: PH2, count: 2}]
      shifter-trim:
        name: Trim round the lever
        release: lift
        after: [knob]
      knob:
        name: Gear knob
        release: turn
        needs: {parking-brake: on}
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        after: [bezel]

error: 'bezel' waits for itself: bezel -> radio -> bezel ('bezel' has 'radio' in 'after', 'radio' has 'bezel' in 'after': take out what is not so)

    variants:
      lock:
        ask: How does the boot open?
        choices:
          key: {label: With a key, tell: A lock barrel in the boot lid}
          button: {label: With a button, tell: No lock barrel}
    preps:
      battery:
        name: Battery off
        sets: {battery: off}
        after: [{part: battery-cover, when: {lock: button}}]    # here
        how: Take the clamp off.
    parts:
      battery-cover:
        name: Battery cover
        release: lift
        each: [left, right]
        held_by:
          - {screw: T20, count: 2, under: strap}    # here
        tethers:
          lamp: {name: Lamp plug, kind: plug}
      strap:
        name: Strap over the cover
        release: unhook
        each: [left, right]
        held_by:
          - {screw: T20, count: 1, under: battery-cover}

error: 'battery' waits for itself where lock=button: battery -> battery-cover -> battery ('battery' has 'battery-cover' in 'after', 'battery-cover' needs battery off, which 'battery' sets: take out what is not so)
error: 'battery-cover' waits for itself: battery-cover -> strap -> battery-cover (a screw of 'battery-cover' is under 'strap', a screw of 'strap' is under 'battery-cover': take out what is not so)

    parts:
      knob:
        name: Gear knob
        release: turn
        after: [knob]    # here

error: 'knob' waits for itself: knob -> knob ('knob' has 'knob' in 'after': take out what is not so)

## Good

    # file: brindleway/early-2014-2018.yaml
    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        after: [bezel]
      bezel:
        name: Radio bezel
        release: pull
        after: [vent-screws, shifter-trim]
      vent-screws:
        name: Screws in the vents
        release: unscrew
        held_by: [{screw: PH2, count: 2}]
      shifter-trim:
        name: Trim round the lever
        release: lift
        after: [knob]
      knob:
        name: Gear knob
        release: turn
        needs: {parking-brake: on}

    # file: brindleway/late-2018-2020.yaml
    variants:
      dash:
        ask: Which dash does it have?
        choices:
          early: {label: Early dash, tell: Round vents}
          late: {label: Late dash, tell: Square vents}
    parts:
      bezel:
        name: Radio bezel
        release: pull
        after: [{part: lower-trim, when: {dash: early}}]
        held_by:
          - {screw: T20, count: 1, leave: yes, under: cap}
      lower-trim:
        name: Lower trim
        release: pull
        after: [{part: bezel, when: {dash: late}}]
      cap:
        name: Screw cap
        release: unclip
        after: [bezel]
"""

from collections.abc import Iterator
from itertools import pairwise

from undertrim.check.affected import which
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.check.reasons import bare, named, reason, trail, way
from undertrim.derive.procedure.cycles import find_cycles
from undertrim.derive.procedure.graph import Graph
from undertrim.derive.procedure.node import home
from undertrim.derive.procedure.nodes import Layout
from undertrim.record.problem import Level
from undertrim.words import Items, Value, message

LEVEL = Level.ERROR

Cycle = tuple[str, ...]


def check(subject: Subject) -> Iterator[Finding]:
    """Every circle of prerequisites, once."""
    if not read_in_full(subject):
        return
    found: dict[Cycle, tuple[Layout, Cycle]] = {}
    for car in subject.cars:
        layout = subject.planner.layout(car)
        for cycle in _cycles(layout):
            found.setdefault(trail(cycle), (layout, cycle))
    for names, (layout, cycle) in found.items():
        cars = [car for car in subject.cars if _goes_round(subject.planner.layout(car).graph, cycle)]
        yield _finding(layout, cycle, which(cars, subject.cars), way(names))


def _cycles(layout: Layout) -> list[Cycle]:
    return [] if len(layout.graph.freeable) == len(layout.graph.costs) else find_cycles(layout.graph)


def _goes_round(graph: Graph, cycle: Cycle) -> bool:
    """Whether a circle found in one car is there in another; its shortest there may be a different one."""
    return all(needed in graph.before.get(user, ()) for user, needed in pairwise(cycle))


def _finding(layout: Layout, cycle: Cycle, where: Value, shown: Items) -> Finding:
    reasons = [found for user, needed in pairwise(cycle) if (found := reason(layout, user, needed))]
    said = Items(tuple(dict.fromkeys(found.said for found in reasons)), "comma")
    pointer = reasons[0].pointer if reasons else home(layout.nodes[cycle[0]].thing)
    name = named(bare(cycle[0]))
    return Finding(
        pointer, message("rules/order-cycle/waits-for-itself", name=name, where=where, way=shown, reasons=said)
    )
