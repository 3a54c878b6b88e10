"""Two routes of one choice must differ, and none may contain another.

## What it finds

In one entry of `after_any`, in every car that has the part: two routes with the same parts, or a route that
contains all of another, counting what its parts need off first. A route whose parts are only absent from
some cars is fine.

## Why it matters

A longer way that takes in the shorter one is never worth going, so the choice is no choice: most often a
part is missing from one of them.

## Bad

    parts:
      vent-trim:
        name: Vent trim
        release: pull
      lower-trim:
        name: Lower trim
        release: pull
      tray:
        name: Tray
        release: lift
        after: [vent-trim]
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        after_any:
          - from-above: [vent-trim, lower-trim]
            from-below: [lower-trim, vent-trim]    # here
          - plain: [vent-trim]
            longer: [vent-trim, lower-trim]    # here
          - by-tray:    # here
              - tray
            by-vent:
              - vent-trim

warning: routes 'from-above' and 'from-below' of 'radio' need the same parts off (remove one, or add what is missing)
warning: route 'longer' of 'radio' takes in all of 'plain', so it is never the shorter way (remove it, or write what it does without)
warning: route 'by-tray' of 'radio' takes in all of 'by-vent', so it is never the shorter way (remove it, or write what it does without)

## Good

    variants:
      dash:
        ask: Which dash does it have?
        choices:
          early: {label: Early dash, tell: Round vents}
          late: {label: Late dash, tell: Square vents}
    parts:
      vent-trim:
        name: Vent trim
        release: pull
      lower-trim:
        name: Lower trim
        release: pull
      knee-panel:
        name: Knee panel
        release: pull
        when: {dash: late}
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        after_any:
          - from-above: [vent-trim, lower-trim]
            from-below: [lower-trim, knee-panel]
          - from-left: [vent-trim, knee-panel]
            from-right: [lower-trim]
          - early-way: [{part: vent-trim, when: {dash: early}}, {part: knee-panel, when: {dash: late}}]
            late-way: [vent-trim]
"""

from collections.abc import Iterator
from itertools import combinations

from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.derive.procedure.graph import Graph, ancestors
from undertrim.record.model import Part
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.WARNING

Taken = list[tuple[frozenset[str], frozenset[str]]]
"""One route in every car and side that has the part: what it names, and that with all it needs first."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every route that another one makes needless."""
    known = subject.record.parts.keys() | subject.record.preps.keys()
    graphs = [subject.planner.layout(car).graph for car in subject.cars] if _any_choice(subject) else []
    if not read_in_full(subject):
        return
    for part in subject.record.parts.values():
        for number, choice in enumerate(part.after_any):
            routes = {
                name: _taken(graphs, part, number, index)
                for index, (name, refs) in enumerate(choice.items())
                if all(ref.part in known for ref in refs)
            }
            yield from _needless(part, number, {name: taken for name, taken in routes.items() if taken})


def _any_choice(subject: Subject) -> bool:
    return any(part.after_any for part in subject.record.parts.values())


def _taken(graphs: list[Graph], part: Part, number: int, index: int) -> Taken:
    nodes = {part.id, *(f"{part.id}@{side}" for side in part.each)}
    routes = [(graph, graph.any_of[node][number][index]) for graph in graphs for node in graph.any_of if node in nodes]
    return [(route, ancestors(graph, route)) for graph, route in routes]


def _needless(part: Part, number: int, routes: dict[str, Taken]) -> Iterator[Finding]:
    done: set[str] = set()
    for (one, first), (other, second) in combinations(routes.items(), 2):
        if one in done or other in done:
            continue
        wide_first, wide_second = _takes_in(first, second), _takes_in(second, first)
        if wide_first and wide_second:
            done.add(other)
            same = message("rules/route-not-distinct/same-parts", one=one, other=other, part=part.id)
            yield _finding(part, number, other, same)
        elif wide_first or wide_second:
            wide, narrow = (one, other) if wide_first else (other, one)
            done.add(wide)
            longer = message("rules/route-not-distinct/never-shorter", wide=wide, part=part.id, narrow=narrow)
            yield _finding(part, number, wide, longer)


def _takes_in(wide: Taken, narrow: Taken) -> bool:
    """Whether in every car going the one way does all of the other."""
    return all(named <= whole for (_, whole), (named, _) in zip(wide, narrow, strict=True))


def _finding(part: Part, number: int, route: str, said: Message) -> Finding:
    return Finding(("parts", part.id, "after_any", number, route), said, key=True)
