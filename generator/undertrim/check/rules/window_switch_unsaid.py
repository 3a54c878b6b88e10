"""Where a window is moved for a test, what works it is said.

## What it finds

A plug in the way of an opening behind which a window moves, with nothing under `serves`, where no plug in that way is
said to work the windows.

## Why it matters

The test of a door speaker moves the glass through its whole travel. With its switch unplugged nothing moves, and the
magnet that the glass would have hit is found by the customer.

## Bad

    parts:
      door-panel:
        name: Door panel
        release: lift
        tethers:
          switch: {name: Switch plug, kind: plug}    # here
          handle: {name: Handle cable, kind: cable}
          lamp: {name: Lamp plug, kind: plug, serves: [lamps]}
    openings:
      door:
        name: Door speaker
        kind: speaker
        area: front-door
        behind: [door-panel]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: whole-travel}

warning: the test of 'door' moves a window, and what 'switch' of 'door-panel' serves is not said (write 'serves: [windows]', or what else works through it)

## Good

    parts:
      door-panel:
        name: Door panel
        release: lift
        tethers:
          switch: {name: Switch plug, kind: plug, serves: [windows]}
          other: {name: Other plug, kind: plug}
      shelf-trim:
        name: Shelf trim
        release: lift
        tethers:
          unknown: {name: Some plug, kind: plug}
    openings:
      door:
        name: Door speaker
        kind: speaker
        area: front-door
        behind: [door-panel]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: whole-travel}
      shelf:
        name: Shelf speaker
        kind: speaker
        area: boot
        behind: [shelf-trim]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: no-glass}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.procedure import fates, purposes
from undertrim.record.model import Opening, Part, Tether
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every such plug, with the first opening whose test wants it."""
    told: set[tuple[str, str]] = set()
    for opening in subject.record.openings.values():
        if opening.often_in_doors and purposes.window(opening) == "yes":
            for part, tether in _unsaid(subject, opening):
                if (part.id, tether.id) not in told:
                    told.add((part.id, tether.id))
                    ids = {"opening": opening.id, "tether": tether.id, "part": part.id}
                    found = message("rules/window-switch-unsaid/unsaid", **ids)
                    place = ("parts", part.id, "tethers", tether.id)
                    yield Finding(place, found, key=True, about=(opening.id,))


def _unsaid(subject: Subject, opening: Opening) -> list[tuple[Part, Tether]]:
    """The plugs in the way of an opening of which nothing is said; none where one of them is said to work the windows."""
    layout = subject.planner.layout({})
    nodes = (
        layout.nodes[name]
        for name, node in layout.nodes.items()
        if node.thing is opening
        for name in layout.reached(name)
    )
    parts = {
        node.thing.id: node.thing for node in nodes if isinstance(node.thing, Part) and node.thing.replaced == "no"
    }
    plugs = [(part, tether) for part in parts.values() for tether in purposes.wiring(part, {})]
    if any("windows" in tether.serves for _, tether in plugs):
        return []
    return [
        (part, tether) for part, tether in plugs if not purposes.served(tether) and not fates.stays_joined(part, tether)
    ]
