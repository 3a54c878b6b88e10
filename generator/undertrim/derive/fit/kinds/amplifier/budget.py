"""What amplifiers leave of alternator and battery, with all that is assumed said beside it. None of it decides whether gear fits."""

from collections.abc import Iterator

from undertrim.derive.electrical.bounds import Refused, usual
from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.electrical.rest import rest
from undertrim.derive.fit.place import Place
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening, Supply
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Message, message

_HOURS = 24


def notes(place: Place, opening: AmplifierOpening, amps: float | None) -> Iterator[Message]:
    """The budget of a current at full power in A: at idle against the alternator, and with the engine off against the battery."""
    given = supply(place.vehicle.record, opening)
    if amps is None:
        return
    average = amps * _usual("music")
    if given and isinstance(given.alternator, Quantity):
        yield _idle(given.alternator.value, average)
    else:
        yield message("fit-amplifier/alternator-unknown", average=Amount(average, "A"))
    if given and isinstance(given.battery, Quantity):
        yield from _engine_off(given.battery.value, average)


def supply(record: VehicleRecord, opening: AmplifierOpening) -> Supply | None:
    """What this place says of alternator and battery, else another of the record."""
    every = (opening, *record.openings_of(AmplifierOpening))
    return next((one.supply for one in every if one.supply), None)


def spare(plate: float) -> float:
    """What a warm alternator at idle leaves beside the car itself, in A: plate x share at idle - the car's own (data/amplifiers.toml)."""
    return plate * _usual("idle") - _usual("car")


def _idle(plate: float, average: float) -> Message:
    left = spare(plate)
    code = "alternator-enough" if left >= average else "alternator-short"
    given = {"average": Amount(average, "A"), "music": Amount(_usual("music"), "share"), "plate": Amount(plate, "A")}
    assumed = {
        "idle": Amount(_usual("idle"), "share"),
        "car": Amount(_usual("car"), "A"),
        "left": Amount(max(left, 0.0), "A"),
    }
    return message(f"fit-amplifier/{code}", **given, **assumed)


def _engine_off(capacity: float, average: float) -> Iterator[Message]:
    """How long music plays until the usual share of the battery is gone (`electrical/rest`)."""
    try:
        found = rest(capacity, average)
    except Refused:
        return
    yield message(
        "fit-amplifier/engine-off",
        hours=round(found.days * _HOURS, 1),
        capacity=Amount(capacity, "Ah"),
        share=Amount(usual("rest_share"), "share"),
        average=Amount(average, "A"),
    )


def _usual(name: str) -> float:
    return float(table("amplifiers")["usual"][name])
