"""A small car with places for two amplifiers on one run, and amplifiers for them, for tests of fit."""

from collections.abc import Mapping
from typing import Any

from fitting import gear
from making import record
from undertrim.derive.fit import answers
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.place import Place, Vehicle
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import VehicleRecord
from undertrim.words import say

CAR = """
    parts:
      cover:
      door-speaker: {replaced: yes}
    openings:
      bay:
        kind: amplifier
        behind: [cover]
        space: {width: 300 mm, height: 90 mm, depth: 220 mm}
        way_in: {width: 400 mm, height: 200 mm}
        air: open
        run: to-boot
        ground_point: {at: Stud, paint: yes}
        fuse_place: {at: Tray, from_battery: 0.3 m}
        switched_on_by: wire
        supply: {alternator: 100 A, battery: 60 Ah}
      shelf:
        kind: amplifier
        behind: [cover]
        space: {width: 300 mm, height: 90 mm, depth: 220 mm}
        way_in: {width: 400 mm, height: 200 mm}
        air: open
        run: to-boot
        switched_on_by: wire
      front-door: {kind: speaker, behind: [door-speaker], channel: front, each: [left, right], impedance: 4 ohm}
    runs:
      to-boot: {name: Battery to boot, from: Battery, to: Boot, length: 5 m, engine: no}
    sound: {plain: {output: speaker, least_load: 4 ohm}}
"""
AMPLIFIER: dict[str, Any] = {
    "kind": "amplifier",
    "maker": "Skerrowe",
    "model": "Weir",
    "size": {"width": "240 mm", "height": "48 mm", "depth": "165 mm"},
    "channels": "4",
    "least_load": "2 ohm",
    "bridged_load": "4 ohm",
    "rated": {"power": "400 W", "efficiency": "60 %"},
    "inputs": ["speaker", "line"],
    "wakes_by": ["wire"],
    "turn_on_draws": "60 mA",
}


def amplifier(**changed: Any) -> Gear:
    """An amplifier, some of its facts replaced."""
    return gear(AMPLIFIER, **changed)


def car(old: str = "", new: str = "") -> VehicleRecord:
    """The car, one piece of its text replaced."""
    assert old in CAR
    return record(CAR.replace(old, new) if old else CAR)


def place(
    about: VehicleRecord, opening: str = "bay", stock: tuple[Gear, ...] = (), visit: Mapping[str, Gear] | None = None
) -> Place:
    """An opening of the car, with what is fitted besides."""
    vehicle = Vehicle(about, "brindleway/otter-2014-2018", Stock(stock), clearances(), visit or {})
    return Place(vehicle, about.openings[opening], (), {}, {})


def fitted(about: VehicleRecord, one: Gear, stock: tuple[Gear, ...] = (), **visit: Gear) -> Fit:
    """The answer for an amplifier in the bay."""
    at = place(about, stock=(one, *stock), visit=visit)
    return answers.answer(at.vehicle, at.opening, [one], {})[0].fits[0]


def noted(found: Fit) -> str:
    """All its notes."""
    return "\n".join(say(note) for note in found.notes)
