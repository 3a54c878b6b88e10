"""What people are shown of a vehicle, as text: page, sheets, and the answers on a terminal."""

import json
import re
from collections.abc import Callable, Iterator
from datetime import date

from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.derive.procedure.planning import targets
from undertrim.derive.wiring.groups import joints
from undertrim.publish.encoding import Published
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.joint import joints as joints_data
from undertrim.publish.facts.visit import visit
from undertrim.publish.printed.sheet import view, wiring
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
    """The page as it is seen."""
    return seen(told(entry, shelf))


def seen(made: Published) -> str:
    """The page without what only scripts, links and styles read."""
    return _UNSEEN.sub("", all_pages(made))


def sheets(made: Published) -> str:
    """What the two sheets are given to print."""
    return json.dumps([print_(made, "", "a4", _DAY) for print_ in (view, wiring.view)], ensure_ascii=False)


def told(entry: Entry, shelf: Stock) -> Published:
    """The facts of which page and sheets are made."""
    return facts.vehicle(entry, _DAY, shelf)


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
