"""Every opening must be reachable in every car that has it.

## What it finds

An opening that no order of steps reaches in some car because every route of an `after_any` on the way to it
leads back to itself; a plain circle is left to `order-cycle`. Also an opening with nothing in front of it in
some car, because none of its `behind` parts is fitted there.

## Why it matters

The page would promise a job and have no steps for it, or begin at a speaker that is still behind its panel.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        after: [bezel]
      bezel:
        name: Radio bezel
        release: pull
        after_any:
          - from-above: [vent-trim]
            from-below: [lower-trim]
      vent-trim:
        name: Vent trim
        release: pull
        after: [bezel]
      lower-trim:
        name: Lower trim
        release: pull
        after: [vent-trim]
    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]    # here
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 170 mm}

error: 'dash' cannot be reached: every route of 'bezel' is closed (dash -> radio -> bezel -> vent-trim -> bezel, each needs the next first: give 'bezel' a route that does not)

    variants:
      sound:
        ask: Which sound system does it have?
        choices:
          plain: {label: Plain, tell: No badge on the grilles}
          better: {label: Better, tell: A badge on the grilles}
    parts:
      door-panel:
        name: Door panel
        release: lift
        each: [left, right]
        when: {sound: better}
    openings:
      door:
        name: Door speakers
        kind: speaker
        each: [left, right]
        behind: [door-panel]    # here
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}

error: 'door' has nothing in front of it where sound=plain: no part in 'behind' is fitted there (name the part that is, or limit the opening by 'when')

    parts:
      door-panel:
        name: Door panel
        release: lift
        each: [left]
    openings:
      door:
        name: Door speakers
        kind: speaker
        each: [left, right]
        behind: [door-panel]    # here
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}

error: 'door' on the right has nothing in front of it: no part in 'behind' is fitted there (name the part that is, or say under 'each' where it is)

## Good

    # file: brindleway/early-2014-2018.yaml
    variants:
      sound:
        ask: Which sound system does it have?
        choices:
          plain: {label: Plain, tell: No badge on the grilles}
          better: {label: Better, tell: A badge on the grilles}
    parts:
      door-panel:
        name: Door panel
        release: lift
        each: [left, right]
        when: {sound: better}
      door-card:
        name: Door card
        release: lift
        each: [left, right]
        when: {sound: plain}
      bezel:
        name: Radio bezel
        release: pull
        after_any:
          - from-above: [vent-trim]
            from-below: [lower-trim]
      vent-trim:
        name: Vent trim
        release: pull
        after: [bezel]
      lower-trim:
        name: Lower trim
        release: pull
    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [bezel]
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 170 mm}
      door:
        name: Door speakers
        kind: speaker
        each: [left, right]
        behind: [door-panel, door-card]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}

    # file: brindleway/late-2018-2020.yaml
    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        after: [bezel]
      bezel:
        name: Radio bezel
        release: pull
        after: [radio]
"""

from collections.abc import Iterator

from undertrim.check.affected import found_in, which
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.check.reasons import bare, trail, way
from undertrim.check.without_cycles import without_cycles
from undertrim.derive.procedure.cycles import Block, blocked
from undertrim.derive.procedure.node import OPENING, node_id
from undertrim.derive.procedure.nodes import Layout
from undertrim.record.model import Assignment, Opening
from undertrim.record.problem import Level
from undertrim.words import Value, message

LEVEL = Level.ERROR

Path = tuple[str, ...]


def check(subject: Subject) -> Iterator[Finding]:
    """Every opening with no way to it, and every one with nothing in front of it."""
    if not read_in_full(subject):
        return
    yield from _closed(subject)
    yield from _bare(subject)


def _closed(subject: Subject) -> Iterator[Finding]:
    found = found_in(subject.cars, lambda car: _stuck(subject.planner.layout(car)))
    for opening, ((culprit, path), cars) in found.items():
        where, shown = which(cars, subject.cars), way(path)
        closed = message(
            "rules/unreachable-opening/routes-closed", opening=opening, part=culprit, where=where, way=shown
        )
        yield Finding(("openings", opening, "behind"), closed, about=(culprit,))


def _stuck(layout: Layout) -> Iterator[tuple[str, tuple[str, Path]]]:
    """(opening, (part whose routes are closed, way round)) for each that plain circles do not explain."""
    graph = without_cycles(layout.graph)
    if len(graph.freeable) == len(graph.costs):
        return
    blocks = blocked(graph)
    for name, block in blocks.items():
        if name.startswith(OPENING):
            culprit = next(node for node in block.cycle if blocks[node].choice is not None)
            yield bare(name), (bare(culprit), _way_round(block))


def _way_round(block: Block) -> Path:
    """From the opening into the circle and once round it."""
    start = block.cycle.index(block.path[-1])
    circle = (*block.cycle[start:], *block.cycle[1 : start + 1])
    return (*trail(block.path), *trail(circle)[1:])


def _bare(subject: Subject) -> Iterator[Finding]:
    for opening in subject.record.openings.values():
        behind = [subject.record.parts[name] for name in opening.behind if name in subject.record.parts]
        if not behind or not all(any(part.when.holds(car) for car in subject.cars) for part in behind):
            continue  # a part or a choice that does not exist: other rules say so
        sides: dict[Value, list[str]] = {}
        for side in opening.each or ("",):
            if hit := _bare_at(subject, opening, side):
                sides.setdefault(which(hit, subject.cars), []).append(side)
        for cars, bare_sides in sides.items():
            yield _nothing_before(opening, cars, bare_sides)


def _bare_at(subject: Subject, opening: Opening, side: str) -> list[Assignment]:
    """The cars in which the opening is there and none of the parts it is behind."""
    node = OPENING + node_id(opening.id, side)
    layouts = ((car, subject.planner.layout(car)) for car in subject.cars)
    return [car for car, layout in layouts if node in layout.nodes and not _in_front(layout, node, opening)]


def _in_front(layout: Layout, node: str, opening: Opening) -> bool:
    return any(bare(name) in opening.behind for name in layout.graph.before[node])


def _nothing_before(opening: Opening, where: Value, sides: list[str]) -> Finding:
    if len(sides) < len(opening.each):
        side = message(f"sides/{sides[0]}")
        found = message("rules/unreachable-opening/nothing-at-side", opening=opening.id, side=side, where=where)
    else:
        found = message("rules/unreachable-opening/nothing-in-front", opening=opening.id, where=where)
    return Finding(("openings", opening.id, "behind"), found)
