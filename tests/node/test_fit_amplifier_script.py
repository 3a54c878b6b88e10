"""Whether an amplifier goes into its place, and what it is fed, loaded and switched on with, is on the pages as in the program: the shipped places and amplifiers, varied at random."""

import os
import random
from dataclasses import replace
from pathlib import Path

import pytest

from asked_of_pages import ONE, asked, channels, known, put, told, worst
from in_node import Run
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.record.model import Blank, Face, Opening, VehicleRecord, When
from undertrim.record.model import Run as CableRun
from undertrim.record.model.basics import Known
from undertrim.record.model.kinds.amplifier import (
    AmplifierGear,
    AmplifierOpening,
    Box,
    FusePlace,
    GroundPoint,
    Rated,
    Supply,
)
from undertrim.record.model.kinds.receiver import ConverterGear, LeadsGear, ReceiverGear
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.record.units import Quantity, parse
from vectors.printed import printed

ROOT = Path(__file__).parents[2] / "records" / "vehicles"
PLACES = ("kelbrook/finch-2014-2018", "orlock/bramble-2019-2023")
EACH = 250 if os.environ.get("UNDERTRIM_TESTS") == "thorough" else 150
LEVELS = ("line", "speaker", "digital-ring")
KNOWN: tuple[Known, ...] = ("yes", "no", "unknown")
FED = ("", "direct", "capacitor", "unknown")


def some(chance: random.Random, kind: str, unit: str, values: list[float]) -> Quantity | Blank | None:
    """One of some values; now and then unknown, or not recorded."""
    if chance.random() < 0.1:
        return chance.choice([Blank.UNKNOWN, None])
    return parse(f"{chance.choice(values):g} {unit}", kind)


def mm(chance: random.Random, least: int, most: int) -> Quantity | Blank:
    """A length; now and then unknown, or a lower bound."""
    if chance.random() < 0.05:
        return Blank.UNKNOWN
    found = parse(f"{chance.randint(least * 2, most * 2) / 2:g} mm", "length")
    return replace(found, least=True) if chance.random() < 0.15 else found


def box(chance: random.Random, width: int, height: int, depth: int) -> Box:
    """A box of about these sides in mm."""
    return Box(*(mm(chance, side * 4 // 5, side * 6 // 5) for side in (width, height, depth)))


def placed(one: Opening, record: VehicleRecord, chance: random.Random) -> Opening:
    """An opening in which what an amplifier rests on may be another, or not recorded; others load their channel otherwise."""
    if not isinstance(one, AmplifierOpening):
        return fed(one, chance)
    return replace(
        one,
        space=chance.choice([box(chance, 300, 85, 240), box(chance, 240, 90, 330), None]),
        way_in=chance.choice([Face(mm(chance, 200, 400), mm(chance, 55, 120)), None]),
        air=chance.choice(["", "open", "closed", "unknown"]),
        run=chance.choice([one.run, one.run, one.run, *record.runs]),
        ground_point=chance.choice([None, GroundPoint("Stud", chance.choice(KNOWN)), GroundPoint("Sill")]),
        fuse_place=chance.choice([None, FusePlace("Tray", some(chance, "length", "m", [0.2, 0.45, 0.46, 2]))]),
        finds=chance.choice(["", *LEVELS, "none", "unknown"]),
        switched_on_by=chance.choice(["", "wire", "data", "signal", "none", "unknown"]),
        powers=channels(record, chance) if chance.random() < 0.5 else (),
        supply=chance.choice([None, Supply(some(chance, "current", "A", [60, 90, 120, 180]), some(chance, "charge", "Ah", [45, 60, 95]))]),
    )  # fmt: skip


def fed(one: Opening, chance: random.Random) -> Opening:
    """A speaker's or tweeter's place with another impedance, way to be fed, and channel."""
    channel, impedance = chance.choice([one.channel, one.channel, "front", ""]), some(chance, "resistance", "ohm", [2, 3, 4, 8])  # fmt: skip
    if isinstance(one, SpeakerOpening):
        return replace(one, impedance=impedance, channel=channel, fed_through=chance.choice(FED))
    return replace(one, impedance=impedance, channel=channel) if isinstance(one, TweeterOpening) else one


def run_of(one: CableRun, chance: random.Random) -> CableRun:
    length = some(chance, "length", "m", [1.5, 3, 4.2, 6, 40])
    return replace(one, length=Blank.UNKNOWN if length is None else length, engine=chance.choice(["yes", "no", "unknown"]))  # fmt: skip


def other(item: Gear, chance: random.Random) -> Gear:
    """A piece of gear with other numbers."""
    facts = item.facts
    if isinstance(facts, AmplifierGear):
        rated = Rated(some(chance, "power", "W", [50, 180, 300, 900, 30000]) or Blank.UNKNOWN, some(chance, "share", "%", [45, 82, 5]), some(chance, "current", "A", [8, 27, 60, 250]))  # fmt: skip
        inputs = tuple(chance.sample(LEVELS[:2], chance.randint(1, 2)))
        wakes = tuple(chance.sample(["wire", "signal"], chance.randint(1, 2)))
        return replace(item, facts=replace(facts, size=chance.choice([box(chance, 280, 60, 200), None]), cooling=some(chance, "length", "mm", [10, 20, 30, 60]), channels=chance.choice([1, 2, 4]), least_load=some(chance, "resistance", "ohm", [1, 2, 4]), bridged_load=chance.choice([Blank.NONE, some(chance, "resistance", "ohm", [2, 4])]), rated=chance.choice([rated, rated, rated, None]), inputs=inputs, wakes_by=wakes, turn_on_draws=some(chance, "current", "mA", [12, 90, 160])))  # fmt: skip
    if isinstance(facts, ConverterGear):
        return replace(item, facts=replace(facts, takes=chance.choice(LEVELS), gives=chance.choice(LEVELS), makes_turn_on=chance.choice(KNOWN)))  # fmt: skip
    if isinstance(facts, ReceiverGear):
        return replace(item, facts=replace(facts, outputs=tuple(chance.sample(LEVELS, chance.randint(0, 2)))))
    if isinstance(facts, LeadsGear):
        limit = some(chance, "current", "mA", [100, 250, 500])
        leads = {name: replace(lead, limit=limit) for name, lead in facts.leads.items()}
        return replace(item, facts=replace(facts, leads=leads))
    return item


def varied(vehicle: Vehicle, chance: random.Random) -> tuple[Vehicle, AmplifierOpening, Gear]:
    """A vehicle, a place in it and an amplifier for that, with others of its visit."""
    record = vehicle.record
    bays = {f"{one.id}-2": replace(one, id=f"{one.id}-2", when=When()) for one in record.openings_of(AmplifierOpening)}
    every = {**record.openings, **bays}
    runs = {**record.runs, **{f"{name}-2": replace(one, id=f"{name}-2") for name, one in record.runs.items()}}
    record = replace(record, runs=runs)
    made = replace(
        record,
        openings={name: placed(one, record, chance) for name, one in every.items()},
        runs={name: run_of(one, chance) for name, one in record.runs.items()},
        sound={name: replace(one, output=chance.choice(LEVELS)) for name, one in record.sound.items()},
    )
    more = [replace(item, id=f"{item.id}-2", facts=replace(item.facts, model=f"{item.facts.model} II")) for item in vehicle.stock.of(ConverterGear)]  # fmt: skip
    stock = Stock(tuple(other(item, chance) for item in (*vehicle.stock.items, *more)))
    visit = {one.id: chance.choice(stock.taken(one)) for one in made.openings.values() if chance.random() < 0.4 and stock.taken(one)}  # fmt: skip
    opening = chance.choice(made.openings_of(AmplifierOpening))
    visit[opening.id] = gear = chance.choice(stock.taken(opening))
    return replace(vehicle, record=made, stock=stock, visit=visit), opening, gear


@pytest.mark.parametrize("path", PLACES)
def test_an_amplifier_gets_the_verdict_of_the_program(run: Run, path: str) -> None:
    chance, vehicle, met = random.Random(path), known(ROOT / f"{path}.yaml"), set()  # noqa: S311
    for _ in range(EACH // 10):
        # the stock is one for a call, so ten ask of the same
        base, *_ = varied(vehicle, chance)
        every = [replaced(base, *varied(vehicle, chance)) for _ in range(10)]
        asks = [{**asked(one, opening, {}), "gear": gear.id} for one, opening, gear in every]
        for (one, opening, gear), theirs in zip(every, put(run, ONE, asks, base.stock), strict=True):
            ours = worst(answer(one, opening, [gear], {}))
            assert printed(theirs) == printed(told(ours[0]) if ours else None), (opening, gear)
            met |= {(ours[0].kind, bool(ours[0].parts), bool(ours[0].to_get))} if ours else set()
    assert len(met) > 6


def replaced(base: Vehicle, made: Vehicle, opening: AmplifierOpening, gear: Gear) -> tuple[Vehicle, AmplifierOpening, Gear]:  # fmt: skip
    """The same with the stock of another."""
    held = {item.id: item for item in base.stock.items}
    return replace(made, stock=base.stock, visit={name: held[one.id] for name, one in made.visit.items()}), opening, held[gear.id]  # fmt: skip
