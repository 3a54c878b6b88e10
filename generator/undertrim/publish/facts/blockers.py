"""What can stop the job or costs the owner something: it stands above everything else."""

from collections.abc import Iterator
from typing import Any

from undertrim.publish.facts import wiring, words
from undertrim.record.model import ALWAYS, Blank, VehicleRecord, When

Data = dict[str, Any]


def blockers(record: VehicleRecord) -> list[Data]:
    """In order of weight: `weight` is stop, lost, unknown or need."""
    found = [*_voltage(record), *_duties(record), *_safety(record), *_needs(record)]
    order = ("stop", "lost", "unknown", "need")
    return sorted(found, key=lambda item: order.index(item["weight"]))


def _item(record: VehicleRecord, weight: str, title: str, text: str, when: When = ALWAYS) -> Data:
    return {
        "weight": weight,
        "title": title,
        "text": text,
        "when": words.when(record, when),
        "clauses": words.clauses(when),
    }


def _voltage(record: VehicleRecord) -> Iterator[Data]:
    if record.vehicle.high_voltage == "unknown":
        yield _item(record, "stop", "High voltage: unknown", "Nobody has recorded whether this vehicle has a high-voltage system. Look it up before you start.")
    if record.vehicle.high_voltage != "yes":
        return
    near = [name for name, area in record.areas.items() if area.high_voltage in ("near", "inside")]
    where = f" It comes near the: {', '.join(near)}." if near else ""
    yield _item(record, "stop", "High-voltage vehicle", f"Orange cables are high voltage: do not touch, move or open them.{where} Stop where you see orange in your way.")


def _duties(record: VehicleRecord) -> Iterator[Data]:
    for duty in record.duties.values():
        name = duty.id.replace("-", " ")
        if duty.kept_by == "none":
            yield _item(record, "lost", f"Lost: {name}", duty.note or "The owner must agree before the work starts.", duty.when)
        elif duty.kept_by == "unknown":
            yield _item(record, "unknown", f"May be lost: {name}", duty.note or "Nobody has recorded whether it can be kept.", duty.when)


def _safety(record: VehicleRecord) -> Iterator[Data]:
    for prep in record.preps.values():
        if prep.wait and prep.wait.time is Blank.UNKNOWN:
            yield _item(record, "unknown", "Restraint wait: unknown", f"{prep.wait.why}. Look the wait up in the maker's information.", prep.when)
    for opening in record.openings.values():
        if opening.crash_sensor == "yes":
            yield _item(record, "stop", f"Crash pressure sensor: {opening.name}", "This door fires the side airbags by its air pressure. No cutting, no drilling, no compressed air; refit every seal.", opening.when)
        elif opening.crash_sensor == "unknown" or (opening.crash_sensor is None and opening.in_a_door):
            yield _item(record, "unknown", f"Crash pressure sensor unknown: {opening.name}", "No cutting and no drilling in this door until the maker's information says there is none.", opening.when)


def _needs(record: VehicleRecord) -> Iterator[Data]:
    data = [wiring.function_name(item.id) for item in wiring.by_data(record)]
    if data:
        noun = "function" if len(data) == 1 else "functions"
        yield _item(record, "need", "Data interface needed", f"{len(data)} {noun} by data, not wire: {', '.join(data)}.")
    for opening in record.openings.values():
        if opening.kit == "needed":
            yield _item(record, "need", f"Dash kit needed: {opening.name}", "The new receiver does not hold in this opening by itself.", opening.when)
