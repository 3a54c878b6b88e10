"""What can stop the job or costs the owner something: it stands above everything else."""

from collections.abc import Iterable, Iterator
from typing import Any

from undertrim.derive import doors
from undertrim.publish.facts import closed, evidence, wiring, words
from undertrim.record.model import ALWAYS, Blank, VehicleRecord, When

Data = dict[str, Any]


def blockers(record: VehicleRecord) -> list[Data]:
    """In order of weight: `weight` is stop, lost, unknown or need."""
    found = [
        *_closed(record),
        *_voltage(record),
        *_forty_eight(record),
        *_duties(record),
        *_safety(record),
        *_conflicts(record),
        *_needs(record),
    ]
    order = ("stop", "lost", "unknown", "need")
    return sorted(found, key=lambda item: order.index(item["weight"]))


def _item(
    record: VehicleRecord, weight: str, title: str, text: str, when: When = ALWAYS, openings: Iterable[str] = ()
) -> Data:
    """One blocker; `openings` are those it is about, none for every job."""
    return {
        "weight": weight,
        "title": title,
        "text": text,
        "openings": list(openings),
        "when": words.when(record, when),
        "clauses": words.clauses(when),
    }


def _closed(record: VehicleRecord) -> Iterator[Data]:
    for opening, cars, text in closed.closings(record):
        yield _item(record, "stop", f"{closed.TITLE}: {opening.name}", text, cars, [opening.id])


def _voltage(record: VehicleRecord) -> Iterator[Data]:
    if record.vehicle.high_voltage == "unknown":
        text = "Nobody has recorded whether this vehicle has a high-voltage system. Look it up before you start."
        yield _item(record, "stop", "High voltage: unknown", text)
    if record.vehicle.high_voltage == "yes":
        near = [
            name.replace("-", " ") for name, area in record.areas.items() if area.high_voltage in ("near", "inside")
        ]
        where = f" It comes near the {' and the '.join(near)}." if near else ""
        text = f"Orange cables are high voltage: do not touch, move or open them.{where} Stop where you see orange in your way."
        yield _item(record, "stop", "High-voltage vehicle", text)


def _forty_eight(record: VehicleRecord) -> Iterator[Data]:
    if record.vehicle.forty_eight_volt == "unknown":
        text = "Nobody has recorded whether this vehicle has a 48 V net. Look it up, and open no connector that you do not know."
        yield _item(record, "unknown", "48 V net: unknown", text)
    if record.vehicle.forty_eight_volt == "yes":
        near = [name.replace("-", " ") for name, area in record.areas.items() if area.forty_eight_volt == "yes"]
        where = f"Its parts are in these areas: {', '.join(near)}." if near else "Where its parts are is not recorded."
        text = f"{where} The 12 V battery does not switch it off; a 48 V connector that is opened draws an arc. Leave it joined."
        yield _item(record, "stop", "48 V net", text)


def _receivers(record: VehicleRecord) -> list[str]:
    return [opening.id for opening in record.openings.values() if opening.kind == "receiver"]


def _duties(record: VehicleRecord) -> Iterator[Data]:
    for duty in record.duties.values():
        name = duty.id.replace("-", " ").capitalize()
        if duty.kept_by == "none":
            text = duty.note or "It goes with the factory unit. The owner must agree before the work starts."
            yield _item(record, "lost", name, text, duty.when, _receivers(record))
        elif duty.kept_by == "unknown":
            text = duty.note or "Nobody has recorded whether it can be kept."
            yield _item(record, "unknown", f"{name}: may be lost", text, duty.when, _receivers(record))


def _safety(record: VehicleRecord) -> Iterator[Data]:
    facts = record.restraint
    if facts is None or facts.wait is Blank.UNKNOWN:
        text = "The restraint unit keeps reserve power. Look the maker's wait up before touching airbag or belt wiring."
        yield _item(record, "unknown", "Wait after the battery is off", text)
    if facts and facts.memory_keeper == "forbidden":
        text = "The maker forbids a supply that keeps the memories alive while the battery is off."
        yield _item(record, "stop", "No memory keeper", text)
    for opening in record.openings.values():
        sensor = doors.sensor(record, opening)
        if sensor == "yes":
            text = "This door fires the side airbags by its air pressure. No cutting, no drilling, no compressed air; refit every seal."
            yield _item(record, "stop", f"Crash pressure sensor: {opening.name}", text, opening.when, [opening.id])
        elif sensor == "unknown":
            text = "Whether this door has one is not recorded. No cutting and no drilling until the maker's information says there is none."
            yield _item(record, "unknown", f"Crash pressure sensor: {opening.name}", text, opening.when, [opening.id])


def _conflicts(record: VehicleRecord) -> Iterator[Data]:
    for item in evidence.conflicts(record):
        if not item["settled"]:
            section, name = item["about"].split("/")[:2]
            thing = getattr(record, section).get(name) if section in ("parts", "preps", "openings") else None
            title = f"{item['word']}: {item['fact']}"
            openings = [name] if section == "openings" else []
            yield _item(record, "unknown", title, item["text"], thing.when if thing else ALWAYS, openings)


def _needs(record: VehicleRecord) -> Iterator[Data]:
    data = [wiring.function_name(item.id) for item in wiring.by_data(record)]
    if data:
        noun = "function comes" if len(data) == 1 else "functions come"
        text = f"{len(data)} {noun} by data, not by wire: {', '.join(data)}."
        yield _item(record, "need", "Data interface", text, ALWAYS, _receivers(record))
    for opening in record.openings.values():
        if opening.kit == "needed":
            text = "The new receiver does not hold in this opening by itself."
            yield _item(record, "need", f"Dash kit: {opening.name}", text, opening.when, [opening.id])
