"""The factory sound system of one car, and what wakes its amplifier."""

from collections.abc import Mapping

from undertrim.record.model import SoundSystem, VehicleRecord


def systems(record: VehicleRecord, car: Mapping[str, str]) -> list[SoundSystem]:
    """The sound systems that a car may have: one, if the record is right."""
    return [system for system in record.sound.values() if system.when.holds(car)]


TURN_ON = "amplifier-turn-on"


def woken_by_data(record: VehicleRecord, car: Mapping[str, str]) -> bool:
    """Whether data switches the factory amplifier of one car on, so that something must send them."""
    return any(system.turn_on == "data" for system in systems(record, car))
