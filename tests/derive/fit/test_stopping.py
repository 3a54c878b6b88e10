"""Why a receiver is stopped, by receiver and cars: what the page's form says is what the ranked list says."""

from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pytest

from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.duties import outcomes
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.stopping import TYPED, stopping
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.words import say
from wired import PLACE, VEHICLES, stem

STOCK = stock(PLACE)


def every_car(record: VehicleRecord) -> Iterator[dict[str, str]]:
    known = cars.variants(record)
    return map(dict, product(*([(name, choice) for choice in variant.choices] for name, variant in known.items())))


def directly(
    record: VehicleRecord, address: str, opening: Opening, car: dict[str, str], receiver: Stocked[ReceiverGear]
) -> list[str]:
    """The reasons in one car, asked for without any grouping."""
    shelf = STOCK.suiting(address, opening.id, car)
    found = outcomes(record, opening, car, shelf, receiver) if opening.when.holds(car) else ()
    return [say(item.words) for item in found if item.stops]


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_each_receiver_is_stopped_in_the_cars_in_which_it_is_stopped_alone(path: Path) -> None:
    entry = PLACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    record = reckoned(entry.record)
    for opening in record.openings.values():
        found = stopping(record, entry.address, STOCK, opening)
        for car, receiver in product(every_car(record), (TYPED, *STOCK.of(ReceiverGear))):
            said = [say(item.words) for item in found if receiver.id in item.gear and item.when.holds(car)]
            assert said == directly(record, entry.address, opening, car, receiver)


def test_some_shipped_receiver_is_stopped_and_a_typed_one_is_never_better() -> None:
    """A receiver of which nothing but the size is known keeps nothing that one of the stock would lose."""
    met = False
    for path in VEHICLES:
        entry = PLACE.load(path)
        assert isinstance(entry.record, VehicleRecord)
        for opening in entry.record.openings.values():
            for item in stopping(reckoned(entry.record), entry.address, STOCK, opening):
                duty = say(item.words).split(":")[0]
                typed = [
                    one
                    for one in stopping(reckoned(entry.record), entry.address, STOCK, opening)
                    if TYPED.id in one.gear
                ]
                met = True
                assert any(say(one.words).startswith(f"{duty}:") for one in typed)
    assert met
