"""A page of gear says into which openings it goes as `undertrim fit --everywhere` does: every piece of the stock in every shipped vehicle."""

import json
from typing import Any

import pytest

from asked_of_pages import FOUND, PATHS, SPACE
from in_node import Run
from publishing import DAY
from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.publish.encoding import compact, said
from undertrim.publish.facts import electrical_tables, everywhere, shelf
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.terminal.everywhere import everywhere as answered
from undertrim.publish.terminal.everywhere import everywhere_data, places
from undertrim.record.model import VehicleRecord
from undertrim.record.photo_files import album
from vectors.printed import printed

ASKED = """({ units, electrical, usual, stock, vehicles, gear }) => {
  fit_place.use({ units, electrical });
  return Object.fromEntries(gear.map((id) => {
    const item = stock.find((one) => one.id === id), there = vehicles[item.kind] || [];
    return [id, gear_places.inOrder(there.flatMap((vehicle) => gear_places.inVehicle(vehicle, item, { stock, usual })))];
  }));
}"""
KEYS = ("vehicle", "title", "demo", "opening", "name", "cars", "verdict", "headline", "seen")


@pytest.fixture(scope="module")
def entries() -> list[Any]:
    found = [SPACE.load(path) for path in PATHS]
    assert all(isinstance(entry.record, VehicleRecord) for entry in found)
    return found


def on_pages(run: Run, entries: list[Any], gear: list[str]) -> Any:
    vehicles: dict[str, list[Any]] = {}
    for entry in entries:
        made = facts.vehicle(entry, DAY, album(entry.path))
        for kind, one in everywhere.places(entry.record, made).items():
            vehicles.setdefault(kind, []).append(json.loads(compact(one)))
    shared = {
        "units": shelf.length_units(),
        "electrical": electrical_tables.tables(),
        "usual": shelf.usual_data(clearances()),
        "stock": list(map(shelf.of, stock(SPACE).items)),
    }
    return run(ASKED, {**said(shared), "vehicles": vehicles, "gear": gear}, "fit-place", "gear-places")


def test_pages_and_terminal_say_the_same_of_all_gear(run: Run, entries: list[Any]) -> None:
    shown = on_pages(run, entries, list(FOUND))
    seen = 0
    for id, item in FOUND.items():
        found = [place for entry in entries for place in places(Vehicle(entry.record, entry.address, stock(SPACE), clearances()), item)]  # fmt: skip
        told = everywhere_data(answered(item, found, []))["places"]
        ours = [{key: place[key] for key in KEYS} for place in told]
        theirs = [{key: place[key] for key in KEYS} for place in shown[id]]
        assert printed(theirs) == printed(ours), id
        seen += len(ours)
    assert seen > 100
    assert any(place["seen"] for of in shown.values() for place in of)
    assert any(place["cars"] for of in shown.values() for place in of)
