"""A record in which most things stand that a mistake may break, and what a check says of such a text."""

from pathlib import Path

from rule_pages import BASE

from undertrim.check import runner
from undertrim.record.problem import Problem
from undertrim.record.source import read_text
from undertrim.record.store import entry

ROOT = Path(__file__).parents[2]
PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
RICH = (
    BASE.replace('car: "2016"', 'car: "2016, yes"')
    .replace("evidence:\n", 'evidence:\n  e2: {how: seen, on: 2026-03-09, by: tw, car: "2015, no"}\n')
    .replace("    replaced: yes\n", "    replaced: yes\n    after: [bezel]\n")
    .replace(
        "parts:\n",
        """variants:
  sound:
    ask: Is there an amplifier?
    choices: {plain: {label: No, tell: No badge}, loud: {label: Yes, tell: A badge}}
    source: e2
connectors:
  main:
    name: Main plug
    at: radio/main
    view: wires
    rows: 2
    columns: 4
    pins: {4: {colour: red/white, function: battery-feed, when: {sound: loud}}}
parts:
  cap: {name: Screw cap, release: unclip, held_by: [{clip: push, count: 2}]}
  bezel:
    name: Radio bezel
    release: pull
    held_by: [{clip: push, count: 4, at: {top: 2, bottom: 2}}, {screw: T20, count: 1, under: cap}]
    cautions: [{signal: NOTICE, hazard: Soft edge, consequence: It tears, avoid: Use a wide tool}]
""",
    )
)
GEAR = ROOT / "records/gear/speakers"


def check(text: str, kind: str = "vehicle", path: Path = PATH) -> tuple[Problem, ...]:
    return runner.check_entry(entry(path, kind, read_text(text, path)))


def said(problems: tuple[Problem, ...]) -> list[str]:
    return [f"{p.position.line}: {p.message} [{p.rule}]" for p in problems]
