"""What stands on every sheet in words: what it shows, cautions, notes, sources."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.publish.encoding import said
from undertrim.publish.facts import evidence, words
from undertrim.publish.paper.drawing import Template
from undertrim.publish.paper.pieces import Drawing
from undertrim.record.model import Opening, VehicleRecord
from undertrim.words import say

DEFER = "The maker's information, local codes and licensed practice come first."
SCALE = (
    "Print at 100 %, never “fit to page”. Before use measure this square both ways and the bar: if any is off by more "
    "than 0.5 mm, do not use the sheet."
)
_OFFER = "This sheet is for offering up only."
_SENSOR = {
    "yes": f"WARNING Crash pressure sensor behind this panel: no cutting, no drilling. {_OFFER}",
    "unknown": "WARNING Whether a crash pressure sensor is behind this panel is unknown: no cutting, no drilling until "
    f"it is answered. {_OFFER}",
}
_VOLTAGE = {
    "yes": "DANGER High-voltage vehicle: do not touch, move or open orange cables.",
    "unknown": "WARNING Whether this vehicle has a high-voltage system is not recorded: look it up before you start.",
}


@dataclass(frozen=True, slots=True)
class Words:
    """The texts of a sheet; `data_date` is the newest date of any evidence."""

    title: str
    shows: str
    demo: bool
    alerts: tuple[str, ...]
    notes: tuple[str, ...]
    data_date: str
    address: str


def text(template: Template, drawn: Drawing) -> Words:
    """The texts for a drawing, as yet of any length and in any characters."""
    record, opening = template.record, template.opening
    return Words(
        title=" ".join(filter(None, (record.vehicle.make, record.vehicle.model, _years(record), record.vehicle.phase))),
        shows=_shows(template),
        demo=record.demo == "yes",
        alerts=tuple(_alerts(record, opening)),
        notes=(*drawn.notes, *_notes(template)),
        data_date=max((item.on for item in record.evidence.values()), default="not recorded"),
        address=template.address,
    )


def _years(record: VehicleRecord) -> str:
    years, built = record.vehicle.model_years, record.vehicle.built
    first, last = (years.first, years.last) if years else (built.from_.year, built.to.year)
    return f"{first}–{last}" if first != last else str(first)


def _shows(template: Template) -> str:
    sides = " and ".join(template.opening.each)
    opening = f"{template.opening.name}, {sides}" if sides else template.opening.name
    return f"{opening}, with {template.gear.name}" if template.gear else opening


def _alerts(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    if record.vehicle.high_voltage in _VOLTAGE:
        yield _VOLTAGE[record.vehicle.high_voltage]
    sensor = doors.sensor(record, opening)
    if sensor in _SENSOR:
        yield _SENSOR[sensor]


def _notes(template: Template) -> Iterator[str]:
    record, opening = template.record, template.opening
    if opening.when.clauses:
        yield f"Only in cars with: {say(words.when(record, opening.when))}."
    yield from _suits(template)
    yield from _disputed(record, opening)
    yield "Marks show the middles of bolt holes, not their size. Depth and what lies behind are not on this sheet."
    yield from _sources(record, opening)


def _suits(template: Template) -> Iterator[str]:
    """For what the gear is made, where its record names openings."""
    gear, opening = template.gear, template.opening
    if gear is None or not gear.facts.suits:
        return
    conditions = gear.conditions(template.address, opening.id)
    if not conditions:
        yield f"{gear.name} is made for another opening: its record does not name this one."
    elif all(condition.clauses for condition in conditions):
        cars = "; ".join(say(words.when(template.record, condition)) for condition in conditions)
        yield f"{gear.name} is made for this opening only in cars with: {cars}."


def _disputed(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    """What of the drawing the sources do not agree on."""
    drawn = tuple(f"openings/{opening.id}/{key}/" for key in ("hole", "bolts", "face"))
    for entry in said(evidence.conflicts(record)):
        if not entry["settled"] and entry["about"].startswith(drawn):
            yield f"{entry['word']}, {entry['fact']}: {entry['text']} Drawn: {entry['stands']}."


def _sources(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    found = [record.evidence[name] for name in opening.source if name in record.evidence]
    if found:
        said = (f"{item.id} {item.how} {item.on} by {item.by}{item.with_ and f' with {item.with_}'}" for item in found)
        yield f"Sources: {'; '.join(said)}."
