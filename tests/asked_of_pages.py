"""What the pages are asked of gear of the shelf, and what they and the program say, for tests that hold both together."""

import random
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from in_node import Run
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.encoding import said
from undertrim.publish.facts import electrical_tables, fit_page, shelf
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierGear
from undertrim.record.store import Workspace
from undertrim.words import Message

ROOT = Path(__file__).parents[1]
SPACE = Workspace(ROOT)
PATHS = SPACE.files([SPACE.records / "vehicles"])
MODULES = ("fit-place",)
FOUND = {item.id: item for item in stock(SPACE).items}


def known(path: Path) -> Vehicle:
    entry = SPACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(reckoned(entry.record), entry.address, stock(SPACE), clearances())


def asked(vehicle: Vehicle, opening: Opening, car: Mapping[str, str]) -> dict[str, Any]:
    """What a page has of a question, without the shelf: what was chosen to stand between is taken off that there."""
    return {
        "place": said(fit_page.form(vehicle, opening)),
        "vehicle": vehicle.address,
        "written": opening.written,
        "variants": {name: list(one.choices) for name, one in cars.variants(vehicle.record).items()},
        "labels": {},
        "car": dict(car),
        "kept": [item.id for item in vehicle.shelf(opening.id).items],
        "fitted": {name: item.id for name, item in vehicle.visit.items()},
    }


BEGIN = """({ units, electrical, usual, stock, asks }) => {
  fit_place.use({ units, electrical });
  const byId = Object.fromEntries(stock.map((item) => [item.id, item]));
  const whole = (one) => ({ ...one, usual, stock: stock.filter((item) => one.kept.includes(item.id)), fitted: Object.fromEntries(Object.keys(one.fitted).map((name) => [name, byId[one.fitted[name]]])) });
  const told = (fit, notes) => ({ kind: fit.kind, headline: fit.headline, reason: fit.reason, checks: fit.checks.map((check) => check.words), notes, parts: fit.parts, to_get: fit.to_get, alters: fit.alters });
"""
RANKED = (
    BEGIN
    + "return asks.map((one) => fit_place.ranked(whole(one)).map((row) => ({ gear: row.gear.id, ...told(row.fit, one.place.feeding ? row.fit.notes : []) }))); }"
)
ONE = (
    BEGIN
    + """return asks.map((one) => { const made = whole(one), { free } = fit_place.open(made), found = free.length ? fit_place.verdict(made, byId[one.gear], free) : null;
  return free.length ? { gear: one.gear, ...told(found.fit, one.place.feeding ? found.fit.notes : []) } : null; }); }"""
)


def put(run: Run, program: str, asks: list[dict[str, Any]], held: Stock | None = None) -> Any:
    items = (held or stock(SPACE)).items
    made = {
        "units": shelf.length_units(),
        "electrical": electrical_tables.tables(),
        "usual": shelf.usual_data(clearances()),
        "stock": list(map(shelf.of, items)),
    }
    return run(program, {**said(made), "asks": asks}, *MODULES)


def told(fit: Fit) -> dict[str, Any]:
    amplifier = isinstance(FOUND[fit.gear].facts, AmplifierGear)  # a receiver's notes of its joint stand in its joint
    altering = [note for note in fit.notes if isinstance(note, Message) and note.code == "fit/altering"]
    found: dict[str, Any] = said(
        {
            "gear": fit.gear,
            "kind": fit.kind,
            "headline": fit.headline,
            "reason": fit.reason,
            "checks": [check.words for check in fit.checks],
            "notes": [note for note in fit.notes if note not in altering] if amplifier else [],
            "parts": list(fit.parts),
            "to_get": list(fit.to_get),
            "alters": altering,
        }
    )
    return found


def worst(answers: list[Answer]) -> list[Fit]:
    """Of each piece of gear what it comes to in the car that it suits least, in the order of a list."""
    found: dict[str, Fit] = {}
    for fit in (fit for one in answers for fit in one.fits):
        found[fit.gear] = max(found.get(fit.gear, fit), fit, key=lambda each: each.rank)
    return sorted(found.values(), key=lambda each: each.rank)


def channels(record: VehicleRecord, chance: random.Random) -> tuple[str, ...]:
    """Some of the channels of a record, or none said."""
    every = sorted({one.channel for one in record.openings.values() if one.on_channel and one.channel})
    return tuple(chance.sample(every, chance.randint(0, len(every))))
