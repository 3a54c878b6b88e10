"""What people are shown of a vehicle, as text: page, sheets, and the answers on a terminal."""

import json
import re
from collections.abc import Callable, Iterator
from datetime import date

from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.derive.procedure.planning import targets
from undertrim.derive.visit.visit import Visit
from undertrim.derive.wiring.groups import joints
from undertrim.publish.encoding import Published
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.joint import joints as joints_data
from undertrim.publish.facts.visit import visit
from undertrim.publish.facts.with_stock import with_stock
from undertrim.publish.printed.sheet import view, visited, wiring
from undertrim.publish.terminal.fit import fit_text
from undertrim.publish.terminal.plan import plan_text
from undertrim.publish.terminal.wiring import joint_text, plugs_text
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import LeadsGear
from undertrim.record.store import Entry
from vehicle_pages import all_pages

_DAY = date(2026, 11, 25)
_UNSEEN = re.compile(r'<script.*?</script>| (?:data-[\w-]+|id|class|href|for|name|value)="[^"]*"', re.DOTALL)


def page(entry: Entry, shelf: Stock) -> str:
    """The page as it is seen, and what it fetches from the shelf."""
    return seen(told(entry)) + on_shelf(entry, shelf)


def on_shelf(entry: Entry, shelf: Stock) -> str:
    """What follows from a vehicle and the stock, as its pages fetch it."""
    return json.dumps(with_stock(known(entry, shelf)), ensure_ascii=False)


def known(entry: Entry, shelf: Stock) -> Vehicle:
    """A vehicle with a stock, its record as it is reckoned with."""
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(reckoned(entry.record), entry.address, shelf, clearances())


def seen(made: Published) -> str:
    """The page without what only scripts, links and styles read."""
    return _UNSEEN.sub("", all_pages(made))


def sheets(made: Published) -> str:
    """What the two sheets are given to print."""
    return json.dumps([print_(made, "", "a4", _DAY) for print_ in (view, wiring.view)], ensure_ascii=False)


def visit_sheet(entry: Entry, shelf: Stock) -> Iterator[str]:
    """What the sheets of visits to all of a vehicle are given to print, one with each lead set."""
    vehicle = known(entry, shelf)
    for leads in shelf.of(LeadsGear):
        between = {name: {"leads": (leads,)} for name, at in vehicle.record.openings.items() if at.takes_over}
        made = Visit(vehicle, tuple(targets(vehicle.record)), between=between)
        yield json.dumps(visited.view(made, "", "a4", _DAY), ensure_ascii=False)


def told(entry: Entry) -> Published:
    """The facts of which page and sheets are made."""
    return facts.vehicle(entry, _DAY)


def on_terminal(entry: Entry, shelf: Stock) -> Iterator[Callable[[], str]]:
    """The answers of `plan`, `fit` and `wiring`."""
    record = entry.record
    assert isinstance(record, VehicleRecord)
    yield lambda: plan_text(visit(record, entry.address, targets(record), {}, shelf))
    yield lambda: _fit(Vehicle(record, entry.address, shelf, clearances()))
    yield lambda: plugs_text(car_wiring(record, entry.address, {})) + "".join(_joints(record, entry.address, shelf))


def _fit(vehicle: Vehicle) -> str:
    answers = [found for opening in vehicle.record.openings.values() for found in answer(vehicle, opening, None, {})]
    return fit_text(vehicle, answers, full=True)


def _joints(record: VehicleRecord, address: str, shelf: Stock) -> Iterator[str]:
    for opening in record.openings.values():
        for leads in shelf.of(LeadsGear) if opening.takes_over else ():
            found = joints(record, address, opening, leads, shelf)
            yield joint_text(joints_data(record, address, leads, found))
