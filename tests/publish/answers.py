"""Everything that is said of a vehicle and of gear to people, as text: plan, fit, shop, wiring, page and sheets."""

import json
import re
from collections.abc import Callable, Iterator
from datetime import date

from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.derive.procedure.planning import targets
from undertrim.derive.wiring.groups import joints
from undertrim.publish import facts, pages
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.joint import joints as joints_data
from undertrim.publish.facts.visit import visit
from undertrim.publish.fit_text import fit_text
from undertrim.publish.plan_text import plan_text
from undertrim.publish.sheet import view, wiring
from undertrim.publish.wiring_text import joint_text, plugs_text
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry

DAY = date(2026, 11, 25)
_UNSEEN = re.compile(r'<script.*?</script>| (?:data-[\w-]+|id|class|href|for|name|value)="[^"]*"', re.DOTALL)


class Answers:
    def __init__(self, made: Entry, shelf: Stock = NOTHING) -> None:
        assert isinstance(made.record, VehicleRecord)
        self.entry, self.record, self.shelf = made, made.record, shelf
        self.vehicle = Vehicle(self.record, made.address, shelf, clearances())
        self._facts = None

    @property
    def facts(self):
        if self._facts is None:
            self._facts = facts.vehicle(self.entry, DAY, self.shelf)
        return self._facts

    def plan(self) -> str:
        return plan_text(visit(self.record, self.entry.address, targets(self.record), {}, self.shelf))

    def fit(self) -> str:
        answers = [item for opening in self.record.openings.values() for item in answer(self.vehicle, opening, None, {})]
        return fit_text(self.vehicle, answers, full=True)

    def wiring(self) -> str:
        return plugs_text(car_wiring(self.record, self.entry.address, {})) + "".join(self._joints())

    def _joints(self) -> Iterator[str]:
        for opening in self.record.openings.values():
            if opening.kind == "receiver":
                for leads in self.shelf.of("leads"):
                    found = joints(self.record, self.entry.address, opening, leads, self.shelf)
                    yield joint_text(joints_data(self.record, self.entry.address, leads, found))

    def page(self) -> str:
        return _UNSEEN.sub("", pages.vehicle(self.facts))

    def sheet(self) -> str:
        return json.dumps([view(self.facts, "u", "a4", DAY), wiring.view(self.facts, "u", "a4", DAY)], ensure_ascii=False)
