"""A record of format 2 that says each thing once, the whole that it stands for, and what is told of it."""

from pathlib import Path

from undertrim.check import one_file
from undertrim.record.source import Source, read_text
from undertrim.record.spreading import spread
from undertrim.record.store import entry

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
HEAD = """format: 2
demo: yes
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  drive_side: left
  high_voltage: no
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}
  e2: {how: seen, on: 2026-03-02, by: rk, car: "2016"}
"""
BODY = """parts:
  front-door:
    each: [left, right]
    source: e2
    parts:
      handle-cap: {release: lift, source: e1, takes: 30 s}
      door-panel:
        release: pull
        held_by: {clip: push, at: {front: 2, rear: 3}, under: handle-cap}
        takes: 1 min
openings:
  front-door:
    kind: speaker
    behind: door-panel
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm, datum: skin, over: whole-travel, obstruction: glass, to: Glass}
    source: e1
"""
LINES = len(HEAD.splitlines())


def whole(text: str) -> Source:
    return spread(read_text(text, PATH))


def told(text: str) -> list[str]:
    """What a check of one file says, with line and column; file names and evidence aside."""
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [
        f"{p.position.line}:{p.position.column}: {p.message} ({p.hint})"
        for p in sorted(found, key=lambda p: p.position)
    ]
