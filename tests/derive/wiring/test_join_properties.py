"""What holds for every joint of every shipped vehicle, lead set and harness, whatever the records say."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from functools import cache, cached_property
from pathlib import Path
from random import Random
from typing import Any, TypeVar

import pytest

from undertrim.check import defeats
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.stock import Gear, Stock, Stocked
from undertrim.derive.wiring.groups import joints
from undertrim.derive.wiring.join import Joint, join
from undertrim.derive.wiring.leads import is_sound
from undertrim.derive.wiring.needs import points
from undertrim.derive.wiring.row import State
from undertrim.publish.facts.joint import table
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import ConverterGear, HarnessGear, InterfaceGear, LeadsGear
from undertrim.record.store import Workspace
from undertrim.words import say

ROOT = Path(__file__).parents[3]
GOOD = (State.JOINED, State.OTHER_COLOUR)
T = TypeVar("T")


@dataclass
class Case:
    vehicle: VehicleRecord
    car: Mapping[str, str]
    leads: Gear
    harness: Gear | None
    between: tuple[Gear, ...]

    @cached_property
    def joint(self) -> Joint:
        return join(self.vehicle, self.car, self.leads.facts, self.harness, self.between)


@cache
def workspace() -> Workspace:
    return Workspace.holding(ROOT)


@cache
def shelf() -> Stock:
    return stock(workspace())


def vehicles() -> Iterator[tuple[str, VehicleRecord]]:
    for path in workspace().files([ROOT / "records" / "vehicles"]):
        found = workspace().load(path)
        if isinstance(found.record, VehicleRecord):
            yield found.address, found.record


@cache
def cases() -> tuple[Case, ...]:
    """Every sort of car with every lead set and every harness, also such as are made for another; without and with all that goes between."""
    more = tuple(item for item in shelf().items if isinstance(item.facts, InterfaceGear | ConverterGear))
    return tuple(
        Case(record, car, leads, harness, between)
        for _, record in vehicles()
        for car in _unlike(record)
        for leads in shelf().of(LeadsGear)
        for harness in (None, *shelf().of(HarnessGear))
        for between in ((), more)
    )


def _unlike(record: VehicleRecord) -> Iterator[Mapping[str, str]]:
    """One of the cars of each sort: in those of one sort the same contacts do the same, and the same is said of what has none."""
    found: dict[str, Mapping[str, str]] = {}
    for car in cars.assignments(record):
        said = [name for name, fact in record.functions.items() if fact.when.holds(car)]
        found.setdefault(f"{points(record, car)} {said}", car)
    return iter(found.values())


def test_there_is_something_to_hold_for() -> None:
    assert len(cases()) > 500
    found = Counter(row.state for case in cases() for row in case.joint.rows)
    assert set(found) == set(State)


def test_every_lead_is_in_one_row_and_so_is_every_contact_of_the_car() -> None:
    for case in cases():
        joint = case.joint
        assert Counter(row.lead.id for row in joint.rows if row.lead) == Counter(list(case.leads.facts.leads))
        addresses = Counter(point.address for row in joint.rows for point in row.car if point.address)
        assert set(addresses) == {point.address for point in points(case.vehicle, case.car)}
        alone = Counter(row.car[0].address for row in joint.rows if row.lead is None)
        assert set(alone.values()) <= {1}
        assert not set(alone) & {point.address for row in joint.rows if row.lead for point in row.car}
        ids = [row.id for row in joint.rows]
        assert len(ids) == len(set(ids))


def test_a_speaker_function_is_joined_at_most_once() -> None:
    for case in cases():
        joined = Counter(
            row.function for row in case.joint.rows if row.lead and row.state in GOOD and is_sound(row.function)
        )
        assert set(joined.values()) <= {1}


def test_nothing_is_joined_but_what_has_one_function_at_every_end() -> None:
    for case in cases():
        for row in case.joint.rows:
            ends = {point.function for point in row.car} | {contact.lead.function for contact in row.contacts}
            assert row.lead is None or row.lead.function == row.function
            if row.state is not State.NEVER:
                assert ends <= {row.function}
            assert (row.state is State.NEVER) == bool(row.reasons)
            if row.state in GOOD:
                assert {point.by for point in row.car} <= {"pin", "wire", "data"}
                assert row.car
                assert all(point.by != "data" or row.through for point in row.car)


def test_exceptions_come_first() -> None:
    order = list(State)
    for case in cases():
        ranks = [order.index(row.state) for row in case.joint.rows]
        assert ranks == sorted(ranks)


def test_the_order_of_the_files_changes_nothing() -> None:
    chance = Random(26)  # noqa: S311 - it mixes files
    for case in chance.sample(cases(), 300):
        mixed = replace(case, vehicle=_mixed(case.vehicle, chance), leads=_mixed_gear(case.leads, chance))
        if case.harness:
            mixed = replace(mixed, harness=_mixed_gear(case.harness, chance))
        assert [_told(row) for row in mixed.joint.rows] == [_told(row) for row in case.joint.rows]


def _told(row: object) -> str:
    return "".join(f"{getattr(row, name)}" for name in ("id", "state", "car", "lead", "reasons", "words", "do"))


def _mixed(record: VehicleRecord, chance: Random) -> VehicleRecord:
    plugs = {name: replace(plug, pins=_shuffled(plug.pins, chance)) for name, plug in record.connectors.items()}
    return replace(record, connectors=_shuffled(plugs, chance), functions=_shuffled(record.functions, chance))


def _mixed_gear(gear: Gear, chance: Random) -> Gear:
    plugs = {name: _shuffled(held, chance) for name, held in gear.facts.plugs.items()}
    changed = {"leads": _shuffled(gear.facts.leads, chance), "plugs": _shuffled(plugs, chance)}
    facts: Any = gear.facts
    held = {name: value for name, value in changed.items() if name in {one.name for one in fields(facts)}}
    return Stocked(gear.id, replace(facts, **held))


def _shuffled(things: Mapping[str, T], chance: Random) -> dict[str, T]:
    names = list(things)
    chance.shuffle(names)
    return {name: things[name] for name in names}


def test_no_text_tells_a_way_round_a_safety_device() -> None:
    """The texts are read by the same finder that refuses such words in records, with the function as the place they stand at."""
    seen: set[tuple[str, str]] = set()
    for case in cases():
        for row in case.joint.rows:
            reasons = (f"{say(reason.words)}. {say(reason.do)}" for reason in row.reasons)
            seen |= {(row.function, text) for text in (say(row.do), *map(say, row.words), *reasons)}
    assert any(function == "parking-brake" for function, _ in seen)
    for function, text in seen:
        assert list(defeats.find(text, function.replace("-", " "))) == [], text


@pytest.mark.parametrize("address", [address for address, _ in vehicles()])
def test_groups_cover_every_car_once(address: str) -> None:
    record = dict(vehicles())[address]
    opening = next(item for item in record.openings.values() if item.takes_over)
    for leads in shelf().of(LeadsGear):
        found = joints(record, address, opening, leads, shelf())
        assert found
        assert len(found) == 1 or all(group.cars for group in found)
        for car in cars.assignments(record):
            holding = [group for group in found if not group.cars or any(_agrees(kind, car) for kind in group.cars)]
            assert len(holding) == 1
        assert all(sum(table(record, group).head.counts.values()) == len(group.joint.rows) for group in found)


def _agrees(kind: Mapping[str, str], car: Mapping[str, str]) -> bool:
    return all(car[name] == choice for name, choice in kind.items())


def test_harnesses_are_made_for_their_cars() -> None:
    """Behind the harness that suits a car nothing is refused for being another function."""
    for address, record in vehicles():
        for group in _auto(address, record):
            wrong = [reason.name for row in group.rows for reason in row.reasons if row.contacts]
            assert not {"other-function", "switched-to-permanent", "parking-brake-to-ground"} & set(wrong)


def _auto(address: str, record: VehicleRecord) -> Sequence[Joint]:
    opening = next(item for item in record.openings.values() if item.takes_over)
    return [
        group.joint for leads in shelf().of(LeadsGear) for group in joints(record, address, opening, leads, shelf())
    ]
