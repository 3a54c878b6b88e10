"""Makes small cars, lead sets, harnesses and interfaces in memory, and reads joint tables."""

import textwrap
from pathlib import Path

from making import record
from undertrim.derive.fit.stock import Gear, Stock, Stocked
from undertrim.derive.wiring.join import Joint, join
from undertrim.derive.wiring.row import Row
from undertrim.record.gear import GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.source import read_text
from undertrim.record.store import entry

ADDRESS = "brindleway/otter-2014-2018"
SPEAKERS = """
sound:
  factory: {output: speaker}
"""
AMPLIFIED = """
variants:
  sound: {ask: "Amplifier?", choices: {plain: {label: None, tell: No badge}, amplified: {label: One, tell: A badge}}}
sound:
  plain: {output: speaker, when: {sound: plain}}
  amplified: {output: line, when: {sound: amplified}, amplifier: Behind the seat, turn_on: wire}
"""
"""A car with or without an amplifier from the factory."""
_CAR = """
parts:
  factory-radio: {replaced: yes, tethers: {radio-main: {name: Plug, kind: plug}}}
openings:
  dash: {behind: [factory-radio], clear_front: {width: 300 mm, height: 200 mm}, depth: {clear: 170 mm, datum: face}}
"""


def car(pins: str = "", *more: str) -> VehicleRecord:
    """A car with one main radio plug that has these pins, and more sections as in a file."""
    held = textwrap.indent(textwrap.dedent(pins).strip(), "      ")
    plug = "connectors:\n  radio-main:\n    name: Main radio plug\n    view: wires\n    rows: 2\n    columns: 8\n"
    return record(_CAR, f"{plug}    pins:\n{held}\n" if held else "", *more)


def gear(kind: str, body: str, model: str = "Knot") -> Gear:
    """A piece of gear whose own fields are `body`; the schema must have nothing against it."""
    own = textwrap.indent(textwrap.dedent(body).strip(), "  ")
    text = f"format: 1\ndemo: yes\ngear:\n  kind: {kind}\n  maker: Pellworth\n  model: {model}\n{own}\n"
    path = Path("records", "gear", f"{kind}s", f"pellworth-{model.lower()}.yaml")
    source = read_text(text, path)
    assert not source.problems, source.problems
    item = entry(path, "gear", source)
    assert not item.problems, [problem.message for problem in item.problems]
    assert isinstance(item.record, GearRecord)
    return Stocked(path.stem, item.record.gear)


def leads(body: str, model: str = "Cord") -> Gear:
    """A lead set with these leads."""
    return gear("leads", f"leads:\n{textwrap.indent(textwrap.dedent(body).strip(), '  ')}", model)


def harness(body: str, model: str = "Knot") -> Gear:
    """A harness for this car with these contacts in the main radio plug."""
    return gear(
        "harness", f"{_SUITS}plugs:\n  radio-main:\n{textwrap.indent(textwrap.dedent(body).strip(), '    ')}", model
    )


def interface(body: str, model: str = "Weir") -> Gear:
    """An interface for this car."""
    return gear("interface", f"{_SUITS}{textwrap.dedent(body).strip()}", model)


_SUITS = f"suits:\n  - {{vehicle: {ADDRESS}, opening: dash}}\n"
DATA = interface("provides: [switched-feed, illumination, parking-brake]")
"""It makes of the car's messages what a receiver needs."""


def joined(about: VehicleRecord, wanted: str, *between: Gear, **choices: str) -> Joint:
    """The joint of leads with a car, through a harness and interfaces if there are any."""
    harnesses = [item for item in between if item.facts.kind == "harness"]
    others = [item for item in between if item.facts.kind != "harness"]
    return join(about, choices, leads(wanted).facts, harnesses[0] if harnesses else None, others)


def row(joint: Joint, name: str) -> Row:
    """The row of a lead, or of a pin that no lead takes (`radio-main/4`)."""
    found = [item for item in joint.rows if (item.lead.id if item.lead else item.car[0].address) == name]
    assert len(found) == 1, [item.id for item in joint.rows]
    return found[0]


def only(about: VehicleRecord, lead: str, *between: Gear, **choices: str) -> Row:
    """The row of the one lead called `it`."""
    return row(joined(about, f"it: {{{lead}}}", *between, **choices), "it")


def reasons(item: Row) -> list[str]:
    """The names of the reasons not to join."""
    return [reason.name for reason in item.reasons]


def shelf(*items: Gear) -> Stock:
    """A stock."""
    return Stock(items)
