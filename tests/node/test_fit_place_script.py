"""What the pages say of gear of the shelf is what the program says: every piece of stock at every opening of every shipped vehicle, and random visits."""

import random
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from asked_of_pages import ONE, PATHS, RANKED, asked, channels, known, put, told, worst
from in_node import Run
from undertrim.derive import cars
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.duty_kinds import kinds as kinds_of_duty
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.visit.between import kinds, left, suiting
from undertrim.record.model import Claim, Conflict, Opening, SoundSystem, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear, KitGear, ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear
from vectors.printed import printed

EACH = 40
ROUNDS = 2


def openings(vehicle: Vehicle) -> list[Opening]:
    return [*vehicle.record.openings.values()]


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_the_whole_stock_is_ranked_as_the_program_ranks_it(run: Run, path: Path) -> None:
    """With the car left open, and in each group of cars in which the program gives one answer."""
    vehicle, asks, expected = known(path), [], []
    for opening in openings(vehicle):
        every = answer(vehicle, opening, None, {})
        for group in [every, *([one] for one in every if one.fits)]:
            car = group[0].cars[0] if len(group) == 1 and group[0].cars else {}
            asks.append(asked(vehicle, opening, car))
            expected.append([told(fit) for fit in worst(group)])
    found = put(run, RANKED, asks)
    assert len(found) > 2
    for ours, theirs in zip(expected, found, strict=True):
        assert printed(theirs) == printed(ours)


def chosen(vehicle: Vehicle, chance: random.Random) -> Iterator[tuple[Vehicle, Opening, Gear, dict[str, str]]]:
    """Visits at random: some answers, gear at other openings, what stands between chosen at times."""
    record = vehicle.record
    for _ in range(EACH):
        car = {
            name: chance.choice(list(one.choices))
            for name, one in cars.variants(record).items()
            if chance.random() < 0.5
        }
        opening = chance.choice(openings(vehicle))
        fitted = {
            one.id: chance.choice(taken)
            for one in record.openings.values()
            if chance.random() < 0.5 and (taken := vehicle.stock.taken(one))
        }
        fitted[opening.id] = gear = chance.choice(vehicle.stock.taken(opening))
        shelves: dict[str, Stock] = {}
        for kind, sort in kinds(opening).items():
            held = suiting(vehicle, opening, sort, cars.assignments(record))
            if chance.random() < 0.2:
                shelves[opening.id] = left(
                    shelves.get(opening.id, vehicle.stock),
                    opening,
                    {kind: tuple(chance.sample(held, min(len(held), chance.randint(0, 1))))},
                )
        yield replace(vehicle, visit=fitted, shelves=shelves), opening, gear, car


def varied(vehicle: Vehicle, chance: random.Random) -> Vehicle:
    """The vehicle as it might have been: with duties, sound and functions of any sort, facts in dispute, and a place inside the high-voltage system."""
    record, shut = vehicle.record, chance.choice([*vehicle.record.openings, "", ""])
    made = replace(
        record,
        vehicle=replace(record.vehicle, high_voltage="yes" if shut else record.vehicle.high_voltage),
        duties={name: replace(one, kept_by=chance.choice(KEPT)) for name, one in record.duties.items()},
        sound={name: sounding(one, record, chance) for name, one in record.sound.items()},
        functions={name: replace(one, by=chance.choice(BY)) for name, one in record.functions.items()},
        conflicts={**record.conflicts, **doubts(record, chance)},
        openings={name: placed(one, name == shut, record, chance) for name, one in record.openings.items()},
    )
    alike = [replace(item, id=f"{item.id}-2", facts=replace(item.facts, model=f"{item.facts.model} II")) for item in vehicle.stock.items if isinstance(item.facts, HarnessGear | InterfaceGear)]  # fmt: skip
    every = chance.sample([*vehicle.stock.items, *alike], len(vehicle.stock.items) + len(alike))
    return replace(vehicle, record=made, stock=Stock(tuple(other(item, chance) for item in every)))


KEPT = ("stays", "moved", "none", "interface", "interface", "unknown")
BY = ("wire", "data", "absent", "unknown")


def sounding(one: SoundSystem, record: VehicleRecord, chance: random.Random) -> SoundSystem:
    return replace(
        one,
        powers=channels(record, chance),
        output=chance.choice(["speaker", "line", "line", "digital-ring"]),
        amplifier=chance.choice(["", "Under the seat"]),
        turn_on=chance.choice(["", "wire", "data", "data"]),
    )


def placed(one: Opening, shut: bool, record: VehicleRecord, chance: random.Random) -> Opening:
    """An opening that may be inside the high-voltage system; one for an amplifier says what that drives."""
    found: Opening = replace(one, high_voltage="inside" if shut else one.high_voltage)
    return replace(found, powers=channels(record, chance)) if isinstance(found, AmplifierOpening) else found


def doubts(record: VehicleRecord, chance: random.Random) -> dict[str, Conflict]:
    """Disputes on what some contacts carry and how some functions are had."""
    contacts = [f"connectors/{plug.id}/pins/{pin.id}/function" for plug in record.connectors.values() for pin in plug.pins.values() if pin.function]  # fmt: skip
    facts = [f"functions/{name}/by" for name in record.functions]
    evidence = [*record.evidence][:2]
    claims = tuple(Claim(says, (name,)) for says, name in zip(("camera", "reverse"), evidence, strict=True))
    about = [*chance.sample(contacts, 3), *chance.sample(facts, min(2, len(facts)))]
    return {f"d{number}": Conflict(f"d{number}", one, claims) for number, one in enumerate(about)}


def other(item: Gear, chance: random.Random) -> Gear:
    """A piece of gear that brings and keeps other things, or alters the car."""
    facts = item.facts
    if isinstance(facts, ReceiverGear | HarnessGear | InterfaceGear) and chance.random() < 0.5:
        return replace(item, facts=replace(facts, keeps=tuple(chance.sample([*kinds_of_duty()], 6))))
    if isinstance(facts, SpacerGear | KitGear) and chance.random() < 0.3:
        return replace(item, facts=replace(facts, alters=("drill",)))
    if isinstance(facts, AmplifierGear) and chance.random() < 0.5:
        return replace(item, facts=replace(facts, channels=1))
    return item


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_so_it_is_with_records_that_say_something_else(run: Run, path: Path) -> None:
    chance, vehicle = random.Random(path.stem), known(path)  # noqa: S311
    for _ in range(ROUNDS):
        made = varied(vehicle, chance)
        every = list(chosen(made, chance))
        asks = [{**asked(one, opening, car), "gear": gear.id} for one, opening, gear, car in every]
        found = put(run, ONE, asks, made.stock)
        for (one, opening, gear, car), theirs in zip(every, found, strict=True):
            ours = worst(answer(one, opening, [gear], car))
            assert printed(theirs) == printed(told(ours[0]) if ours else None), (opening.id, gear.id, car)


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_gear_of_a_visit_gets_the_verdict_of_the_program(run: Run, path: Path) -> None:
    chance = random.Random(path.stem)  # noqa: S311 - repeatable picks of visits
    every = list(chosen(known(path), chance))
    found = put(run, ONE, [{**asked(made, opening, car), "gear": gear.id} for made, opening, gear, car in every])
    for (made, opening, gear, car), theirs in zip(every, found, strict=True):
        ours = worst(answer(made, opening, [gear], car))
        assert printed(theirs) == printed(told(ours[0]) if ours else None), (opening.id, gear.id, car)
