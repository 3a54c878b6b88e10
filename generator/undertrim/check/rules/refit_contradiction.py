"""`refit_after` agrees with what lies behind what.

## What it finds

A part that is to go back after another which, in some car, must go back after it: because that other was only reached once
the part was off, or because it has a `refit_after` of its own. The message shows the circle, each arrow meaning "goes back
after".

## Why it matters

What lies behind a part goes in before the part covers it. A tech who follows such a record stands with one of the two in
hand and no place to put it.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        refit_after: [radio, tray]
      radio:
        name: Factory radio
        release: slide
        after: [bezel]
        replaced: yes
      tray:
        name: Tray
        release: pull
        after: [radio]
        refit_after: [{part: shelf, when: {drive-side: left}}]    # here
      shelf:
        name: Shelf
        release: pull
        after: [radio]
        refit_after: [tray]
      knob:
        name: Gear knob
        release: turn
        refit_after: [knob]    # here
    openings:
      floor:
        name: Floor speakers
        kind: speaker
        behind: [tray, shelf, knob]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}

error: 'tray' goes back before and after 'shelf': tray -> shelf -> tray ('tray' has 'shelf' in 'refit_after', 'shelf' has 'tray' in 'refit_after': take out what is not so)
error: 'knob' goes back before and after itself: knob -> knob ('knob' has 'knob' in 'refit_after': take out what is not so)

    parts:
      bezel:
        name: Radio bezel
        release: pull
      radio:
        name: Factory radio
        release: slide
        after: [bezel]
        replaced: yes
        refit_after: [bezel]    # here

error: 'radio' goes back before and after 'bezel': radio -> bezel -> radio ('radio' has 'bezel' in 'refit_after', but 'radio' has 'bezel' in 'after': take out what is not so)

## Good

    parts:
      bezel:
        name: Radio bezel
        release: pull
        refit_after: [radio, tray]
      radio:
        name: Factory radio
        release: slide
        after: [bezel]
        replaced: yes
      tray:
        name: Tray
        release: pull
        after: [radio]
    openings:
      floor:
        name: Floor speakers
        kind: speaker
        behind: [tray]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}
"""

from collections.abc import Iterator
from itertools import pairwise

from undertrim.check.affected import found_in, which
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.check.reasons import bare, reason, trail, way
from undertrim.derive.procedure.nodes import Layout
from undertrim.derive.procedure.walks import shortest_cycles
from undertrim.derive.procedure.way_back import waits
from undertrim.record.model import Assignment, Part
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Items, Message, Value, message

LEVEL = Level.ERROR

Cycle = tuple[str, ...]


def check(subject: Subject) -> Iterator[Finding]:
    """Every circle on the way back that a `refit_after` closes, once."""
    if not read_in_full(subject) or not any(part.refit_after for part in subject.record.parts.values()):
        return

    def find(car: Assignment) -> Iterator[tuple[Cycle, tuple[Layout, Cycle]]]:
        layout = subject.planner.layout(car)
        for cycle in _cycles(layout):
            yield trail(cycle), (layout, cycle)

    for names, ((layout, cycle), cars) in found_in(subject.cars, find).items():
        yield _finding(layout, cycle, which(cars, subject.cars), way(names))


def _cycles(layout: Layout) -> list[Cycle]:
    """The circles with a `refit_after` in them, each begun there; `order-cycle` finds the others."""
    edges = {
        name: layout.graph.in_file_order(rest) for name, rest in waits(layout.graph.before, layout.refit_after).items()
    }
    return [turned for cycle in shortest_cycles(edges) if (turned := _turned(layout, cycle))]


def _turned(layout: Layout, cycle: Cycle) -> Cycle:
    ring = cycle[:-1]
    for number, (later, earlier) in enumerate(pairwise(cycle)):
        if earlier in layout.refit_after.get(later, ()):
            return (*ring[number:], *ring[: number + 1])
    return ()


def _finding(layout: Layout, cycle: Cycle, where: Value, shown: Items) -> Finding:
    told = dict.fromkeys(_said(layout, later, earlier) for later, earlier in pairwise(cycle))
    facts: dict[str, Value] = {"where": where, "way": shown, "reasons": Items(tuple(told), "comma")}
    name, other = bare(cycle[0]), bare(cycle[1])
    if other == name:
        found = message("rules/refit-contradiction/before-itself", name=name, **facts)
    else:
        found = message("rules/refit-contradiction/before-another", name=name, other=other, **facts)
    return Finding(_pointer(layout, cycle), found, about=tuple(map(bare, cycle)))


def _said(layout: Layout, later: str, earlier: str) -> Message:
    """Why one part goes back after another."""
    if earlier in layout.refit_after.get(later, ()):
        return message("rules/refit-contradiction/refit-after", later=bare(later), earlier=bare(earlier))
    if found := reason(layout, earlier, later):
        return message("rules/refit-contradiction/but", reason=found.said)
    return message("rules/refit-contradiction/but-behind", later=bare(later), earlier=bare(earlier))


def _pointer(layout: Layout, cycle: Cycle) -> Pointer:
    part = layout.nodes[cycle[0]].thing
    assert isinstance(part, Part)
    names = [ref.part for ref in part.refit_after]
    return ("parts", part.id, "refit_after", names.index(bare(cycle[1])))
