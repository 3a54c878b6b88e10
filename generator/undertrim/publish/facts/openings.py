"""Openings as data: rows of label and value, as measured, in both systems of units."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.derive.procedure.closed import closed_in
from undertrim.derive.wiring import ends
from undertrim.publish.facts import doubts, rows, words
from undertrim.publish.facts.dimensions import depth
from undertrim.publish.facts.kinds import room
from undertrim.record.model import Blank, Opening, VehicleRecord
from undertrim.record.model.kinds.usual import usual_word
from undertrim.record.units import Quantity
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class Row:
    """A dimension or another fact of an opening; `field` is the keys that lead from the opening to it, as conflicts name them."""

    field: str
    label: Value
    value: Value


@dataclass(frozen=True, slots=True)
class MeasuredOpening:
    """One opening with its dimensions; `outline` is whether there is something to draw in true scale."""

    id: str
    name: str
    kind: str
    kind_words: Value
    gear: str
    sides: Sequence[str]
    when: Value
    clauses: words.Clauses
    rows: Sequence[Row]
    conflicts: Sequence[Value]
    crash_sensor: str
    outline: bool
    install_how: str
    cautions: Sequence[words.Caution]
    source: Sequence[str]


def opening(record: VehicleRecord, item: Opening) -> MeasuredOpening:
    """One opening with its dimensions."""
    return MeasuredOpening(
        id=item.id,
        name=item.name,
        kind=item.kind,
        kind_words=usual_word(item.kind, "label"),
        gear=item.takes.kind,
        sides=item.each,
        when=words.others(record, item.when, item),
        clauses=words.clauses(item.when),
        rows=[
            Row(field, label, value)
            for field, label, value in (*_unseen(record, item), *_rows(record, item), *_absent(record, item))
            if value
        ],
        conflicts=doubts.disputes(record, ("openings", item.id), *([("areas", item.area)] if item.area else ())),
        crash_sensor=doors.sensor(record, item),
        outline=_outlined(item) and not closed_in(record, item),
        install_how=item.install_how,
        cautions=[words.caution(record, caution) for caution in item.cautions],
        source=item.source,
    )


def _outlined(item: Opening) -> bool:
    """Whether the outline is measured, so that there is something to draw in true scale."""
    sizes = [getattr(room(item).outline, name, None) for name in ("diameter", "width", "height")]
    return any(isinstance(size, Quantity) for size in sizes) and not any(isinstance(size, Blank) for size in sizes)


def _unseen(record: VehicleRecord, item: Opening) -> Iterator[rows.Row]:
    """That its dimensions are those of another car."""
    for found in doubts.unseen(record, ("openings", item.id)):
        yield "", message("openings/taken"), found


def _rows(record: VehicleRecord, item: Opening) -> Iterator[rows.Row]:
    at = room(item)
    yield from at.outlines()
    if item.depth:
        yield "depth", message("openings/depth"), depth(item.depth, in_a_door=item.in_a_door)
    if item.alters:
        yield "alters", message("openings/alters"), words.listed(*(message(f"altering/{way}") for way in item.alters))
    yield from at.more()
    for plug in ends.of_opening(record, item):
        yield "", message("openings/plug"), ends.pins_at(record, plug)
    if item.in_a_door or item.crash_sensor:
        yield "crash_sensor", message("openings/sensor"), message(f"openings/sensor-{doors.sensor(record, item)}")


def _absent(record: VehicleRecord, item: Opening) -> Iterator[rows.Row]:
    """The cars that do not have the opening: looked into, none."""
    cars = words.listed(*(words.when(record, clause) for clause in item.not_in), joined="semicolon")
    yield "not_in", message("openings/not-in"), cars
