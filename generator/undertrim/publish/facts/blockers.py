"""What can stop the job or costs the owner something: it stands above everything else."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from undertrim.derive import doors
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.factory_sound import TURN_ON
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.publish.facts import closed, duties, evidence, wiring, words
from undertrim.publish.facts.kinds import room
from undertrim.record.model import ALWAYS, Blank, VehicleRecord, When
from undertrim.record.model.kinds.receiver import InterfaceGear
from undertrim.words import Value, message, say

Data = dict[str, Any]


def blockers(record: VehicleRecord, address: str = "", stock: Stock = NOTHING) -> list[Data]:
    """In order of weight: `weight` is stop, lost, unknown or need. `stock` is the gear that may keep what the factory unit does."""
    kept = duties.duties(record, address, stock)
    found = [
        *_closed(record),
        *_voltage(record),
        *_forty_eight(record),
        *_duties(record, kept),
        *_safety(record),
        *_conflicts(record),
        *_lids(record),
        *_needs(record),
        *_amplifier(record, address, stock),
    ]
    order = ("stop", "lost", "unknown", "need")
    return sorted(found, key=lambda item: order.index(item["weight"]))


def _item(
    record: VehicleRecord, weight: str, title: Value, text: Value, when: When = ALWAYS, openings: Iterable[str] = ()
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
    return [opening.id for opening in record.openings.values() if opening.takes_over]


def _duties(record: VehicleRecord, found: Sequence[Data]) -> Iterator[Data]:
    """What is lost with the factory unit, what may be, and what keeps the rest."""
    for item in found:
        name = item["name"].capitalize()
        if item["word"] in _WEIGHTS:
            title = _TITLES[item["word"], item["fate"]].format(name)
            yield _of_duty(_WEIGHTS[item["word"]], title, duties.text(item), item)
    for keepers, when in dict.fromkeys((" or ".join(item["by"]), item["when"]) for item in found if item["by"]):
        kept = [item for item in found if (" or ".join(item["by"]), item["when"]) == (keepers, when)]
        notes = " ".join(item["note"] for item in kept if item["note"])
        names = ", ".join(item["name"] for item in kept)
        yield _of_duty(
            "need",
            f"{keepers}: it keeps what the factory unit also does",
            f"Order it for: {names}. {notes}".strip(),
            kept[0],
        )


_WEIGHTS = {"STOP": "stop", "LOST": "lost", "UNKNOWN": "unknown"}
_TITLES = {
    ("STOP", "lost"): "{}: lost, not a plain replacement",
    ("STOP", "unknown"): "{}: may be lost, not a plain replacement",
    ("LOST", "lost"): "{}",
    ("UNKNOWN", "unknown"): "{}: may be lost",
}


def _of_duty(weight: str, title: str, text: Value, item: Data) -> Data:
    shown = {key: item[key] for key in ("openings", "when", "clauses")}
    return {"weight": weight, "title": title, "text": text, **shown}


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


def _lids(record: VehicleRecord) -> Iterator[Data]:
    """What opens boot and bonnet while the battery is off, where that is not simply a key or a cable."""
    for lid in record.closures.values():
        if lid.latch != "mechanical":
            title = f"{lid.id.capitalize()}: {_LATCHES[lid.latch]}"
            yield _item(record, "need" if lid.latch == "electric" else "unknown", title, _OPENS[lid.key])


_LATCHES = {"electric": "electric latch", "unknown": "nobody has recorded what frees its latch"}
_OPENS = {
    "yes": "With the battery off only the key opens it: have the key in your hand.",
    "no": "With the battery off nothing opens it, no key either. Open it first, and leave it open until the battery is back on.",
    "unknown": "Whether a key opens it with the battery off is not recorded. Leave it open until the battery is back on.",
}


def _conflicts(record: VehicleRecord) -> Iterator[Data]:
    for dispute in open_disputes(record):
        item = evidence.conflict(record, dispute)
        section, name = dispute.keys[:2]
        title = f"{item['word']}: {item['fact']}"
        openings = [name] if section == "openings" else []
        yield _item(record, "unknown", title, item["text"], _holding(record, section, name), openings)


def _holding(record: VehicleRecord, section: str, name: str) -> When:
    """In which cars the thing that a dispute is about is there."""
    things = getattr(record, section)
    when = getattr(things.get(name), "when", ALWAYS) if isinstance(things, dict) else ALWAYS
    return when if isinstance(when, When) else ALWAYS


def _amplifier(record: VehicleRecord, address: str, stock: Stock) -> Iterator[Data]:
    """What wakes a factory amplifier that has no wire for it."""
    for system in record.sound.values():
        if system.turn_on != "data":
            continue
        for opening in _receivers(record):
            waking = [
                item.name
                for item in stock.of(InterfaceGear)
                if TURN_ON in item.facts.brings and item.conditions(address, opening)
            ]
            how = (
                f"Order {' or '.join(waking)}, which switches it on."
                if waking
                else "No interface in stock that suits this car does: without one it stays silent."
            )
            yield _item(record, "need", "Factory amplifier: switched on by data", how, system.when, [opening])


def _needs(record: VehicleRecord) -> Iterator[Data]:
    data = [say(wiring.function_name(item.id)) for item in wiring.by_data(record)]
    if data:
        noun = "function comes" if len(data) == 1 else "functions come"
        text = f"{len(data)} {noun} by data, not by wire: {', '.join(data)}."
        yield _item(record, "need", "Data interface", text, ALWAYS, _receivers(record))
    for opening in record.openings.values():
        for what, need in room(opening).needs():
            title = message("fit/check", title=what, found=opening.name)
            yield _item(record, "need", title, need, opening.when, [opening.id])
