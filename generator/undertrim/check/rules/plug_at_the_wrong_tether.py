"""A plug is drawn where a plug is undone.

## What it finds

A plug under `connectors` whose `at` is a tether that is no plug, and two plugs at one tether in the same car.

## Why it matters

The page shows the pins beside the step at which the plug is undone. At the wrong step the tech meters the wrong plug.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        tethers:
          main: {name: Main plug, kind: plug}
          antenna: {name: Antenna plug, kind: coax}
    connectors:
      antenna: {name: Antenna, at: radio/antenna, view: wires, rows: 1, columns: 1, pins: {1: {function: antenna-feed}}}    # here
      main: {name: Main plug, at: radio/main, view: wires, rows: 1, columns: 1, pins: {1: {function: ground}}}
      aux: {name: Second plug, at: radio/main, view: wires, rows: 1, columns: 1, pins: {1: {function: mute}}}    # here

warning: 'radio/antenna' is a coax, and 'antenna' has pins (name the tether that is this plug, or correct the tether's 'kind')
warning: 'main' is at 'radio/main' too (name the tether that is this plug, or say in 'when' which cars have which)

## Good

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        tethers:
          main: {name: Main plug, kind: plug}
    connectors:
      main: {name: Main plug, at: radio/main, when: {radio: map}, view: wires, rows: 1, columns: 1, pins: {1: {function: ground}}}
      old: {name: Old plug, at: radio/main, when: {radio: plain}, view: wires, rows: 1, columns: 1, pins: {1: {function: ground}}}
"""

from collections.abc import Iterator, Mapping

from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import tether_of
from undertrim.derive import cars
from undertrim.derive.wiring.differences import one_place
from undertrim.record.model import Connector
from undertrim.record.problem import Level
from undertrim.words import message, word

LEVEL = Level.WARNING

_HOLDS_PINS = ("plug", "fibre")


def check(subject: Subject) -> Iterator[Finding]:
    """Every plug at a tether that it cannot be at."""
    plugs = subject.record.connectors
    for plug in plugs.values():
        found = tether_of(subject.record, plug) if subject.intact(("connectors",)) else None
        place, at = ("connectors", plug.id, "at"), tuple(plug.at.split("/"))
        if found and found[1].kind not in _HOLDS_PINS:
            kind = word("tethers", "kind", found[1].kind, "noun")
            no_pins = message("rules/plug-at-the-wrong-tether/no-pins", at=plug.at, kind=kind, plug=plug.id)
            yield Finding(place, no_pins, about=at)
        elif found and (other := _earlier(plugs, plug)):
            two = message("rules/plug-at-the-wrong-tether/two-plugs", other=other, at=plug.at)
            yield Finding(place, two, about=(other, *at))


def _earlier(plugs: Mapping[str, Connector], plug: Connector) -> str:
    """An earlier plug at the same tether in some car; empty for none."""
    for other in plugs.values():
        if other is plug:
            return ""
        if one_place(other, plug) and cars.together(other.when, plug.when):
            return other.id
    return ""
