"""What stands on every sheet in words: what it shows, cautions, notes, sources."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.publish.facts import doubts, evidence, words
from undertrim.publish.printed.paper.drawing import Template
from undertrim.publish.printed.paper.pieces import Drawing, sentences
from undertrim.record.model import Evidence, Opening, VehicleRecord
from undertrim.words import Items, Message, Value, all_of, message, say

_SENSOR = {"yes": message("paper/sensor"), "unknown": message("paper/sensor-unknown")}
_VOLTAGE = {"yes": message("paper/high-voltage"), "unknown": message("paper/high-voltage-unknown")}


@dataclass(frozen=True, slots=True)
class Words:
    """The texts of a sheet in the language of the reader; `data_date` is the newest date of any evidence."""

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
        shows=say(_shows(template)),
        demo=record.demo == "yes",
        alerts=tuple(_alerts(record, opening)),
        notes=(*drawn.notes, *_notes(template, drawn)),
        data_date=max((item.on for item in record.evidence.values()), default=say(message("paper/no-date"))),
        address=template.address,
    )


def _years(record: VehicleRecord) -> str:
    years, built = record.vehicle.model_years, record.vehicle.built
    first, last = (years.first, years.last) if years else (built.from_.year, built.to.year)
    return f"{first}–{last}" if first != last else str(first)


def _shows(template: Template) -> Value:
    opening: Value = template.opening.name
    if template.opening.each:
        sides = all_of(*(message(f"sides/{side}") for side in template.opening.each))
        opening = message("paper/on-sides", opening=opening, sides=sides)
    return message("paper/with-gear", opening=opening, gear=template.gear.name) if template.gear else opening


def _alerts(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    if record.vehicle.high_voltage in _VOLTAGE:
        yield sentences(_VOLTAGE[record.vehicle.high_voltage])
    sensor = doors.sensor(record, opening)
    if sensor in _SENSOR:
        yield sentences(_SENSOR[sensor], message("paper/offering-up-only"))


def _notes(template: Template, drawn: Drawing) -> Iterator[str]:
    record, opening = template.record, template.opening
    if opening.when.clauses:
        yield sentences(message("paper/only-in", cars=words.when(record, opening.when)))
    yield from _suits(template)
    for said in doubts.unseen(record, ("openings", opening.id)):
        yield sentences(said)
    yield from _disputed(record, opening)
    marked = (message("paper/marks-show"),) if any(key.marks for key in drawn.keys) else ()
    yield sentences(*marked, message("paper/not-on-sheet"))
    yield from _sources(record, opening)


def _suits(template: Template) -> Iterator[str]:
    """For what the gear is made, where its record names openings."""
    gear, opening = template.gear, template.opening
    if gear is None or not gear.facts.suits:
        return
    conditions = gear.conditions(template.address, opening.id)
    if not conditions:
        yield sentences(message("paper/made-for-another", gear=gear.name))
    elif all(condition.clauses for condition in conditions):
        cars = Items(tuple(words.when(template.record, condition) for condition in conditions), "semicolon")
        yield sentences(message("paper/made-for-cars", gear=gear.name, cars=cars))


def _disputed(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    """What of the drawing the sources do not agree on."""
    drawn = tuple(f"openings/{opening.id}/{key}/" for key in ("hole", "bolts", "face"))
    for entry in evidence.conflicts(record):
        if not entry.settled and entry.about.startswith(drawn):
            said = {"word": entry.word, "fact": entry.fact, "text": entry.text, "drawn": entry.stands}
            yield sentences(message("paper/disputed", **said))


def _sources(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    found = [_source(record.evidence[name]) for name in opening.source if name in record.evidence]
    if found:
        yield sentences(message("paper/sources", sources=Items(tuple(found), "semicolon")))


def _source(item: Evidence) -> Message:
    code = "paper/source-with" if item.with_ else "paper/source"
    return message(code, id=item.id, how=evidence.how(item), day=item.on, by=item.by, instrument=item.with_)
