"""Two records of one folder, of which one takes from the other."""

from pathlib import Path

from undertrim.check import runner
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.words import sentence, way_out

OTTER = """\
format: 2
demo: yes
vehicle: {make: Brindleway, model: Otter, built: {from: 2014-01, to: 2018-01}, drive_side: [left, right], high_voltage: no}
variants:
  radio:
    ask: Which radio?
    choices: {plain: [Plain radio, Knobs], map: [Map radio, A MAP key]}
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, with: Calliper 0.05 mm}
parts:
  dash:
    source: e1
    parts:
      vent: {name: Upper vent, release: pull, direction: up, held_by: {clip: push, count: 4}, takes: 2 min}
      brace: {when: {radio: map}, after: vent, release: unscrew, held_by: {screw: T20, count: 2}, takes: 2 min}
      radio:
        after: [vent, brace]
        release: slide
        direction: rearward
        held_by: {screw: T20, count: 4}
        tethers: {main: [Main plug, plug, sound], map-lead: {name: Map lead, kind: coax, when: {radio: map}}}
        replaced: yes
        takes: 4 min
  front-door:
    each: [left, right]
    source: e1
    parts:
      panel: {release: lift, direction: up, held_by: {clip: push, count: 8}, takes: 5 min}
  seat: {area: seat, release: lift, takes: 4 min, held_by: {bolt: T50, count: 4, role: seat, torque: 40 N.m, source: e1}}
openings:
  dash: {name: Radio opening, kind: receiver, behind: radio, kit: needed, face: {width: 182 mm, height: 112 mm}, depth: {clear: 170 mm}, source: e1}
  front-door:
    name: Front door speakers
    kind: speaker
    behind: panel
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm, datum: skin}
    room_to_grille: unknown
    crash_sensor: no
    source: e1
connectors:
  main:
    name: Main plug
    at: radio/main
    view: wires
    rows: 1
    columns: 4
    source: e1
    pins: {1: [yellow, battery-feed], 2: [black, ground], 3: [red, switched-feed]}
"""
VOLE = """\
format: 2
demo: yes
vehicle: {make: Wetmoor, model: Vole, built: {from: 2015-01, to: 2018-01}, drive_side: [left, right], high_voltage: no}
evidence:
  e1: {how: seen, on: 2026-05-02, by: tw}
"""
ALL = "shares:\n  otter-2014-2018: {variants: all, parts: all, openings: all, connectors: all}\n"


class Place:
    """A workspace of two records."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.write("brindleway/otter-2014-2018", OTTER)

    def write(self, name: str, text: str) -> Path:
        path = self.folder / "records" / "vehicles" / f"{name}.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        return path

    def vole(self, text: str, *, head: str = VOLE) -> Entry:
        return Workspace(self.folder).load(self.write("wetmoor/vole-2015-2018", head + text))

    def record(self, text: str) -> VehicleRecord:
        found = self.vole(text)
        assert found.problems == ()
        assert isinstance(found.record, VehicleRecord)
        return found.record

    def told(self, text: str, level: str = "") -> list[tuple[int, str, str]]:
        """Line, rule and sentence of each problem of the record that takes."""
        self.vole(text)
        found = runner.check(Workspace(self.folder)).problems
        return [
            (item.position.line, item.rule, item.message)
            for item in found
            if "vole" in str(item.file) and level in ("", item.level)
        ]


def faults(found: Entry) -> list[tuple[int, str, str]]:
    return [(item.position.line, sentence(item.said), way_out(item.said)) for item in found.problems]
