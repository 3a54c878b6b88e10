"""Everything that a record still wants to know, the most useful first."""

from collections.abc import Iterator, Sequence

from undertrim.derive.claims.addresses import address_of
from undertrim.derive.measuring import Task, next_to_measure
from undertrim.derive.questions import coarse, disputed, unsaid
from undertrim.derive.questions.asked import Asked
from undertrim.derive.questions.fields import fields, there
from undertrim.derive.questions.handbook import section
from undertrim.derive.questions.question import Field, Question, Sort
from undertrim.record.changing.edits import at
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Pointer, Source
from undertrim.words import Message, message

_ORDER = tuple(Sort)


def questions(record: VehicleRecord, source: Source) -> tuple[Question, ...]:
    """All questions of a record; `source` is its source as a whole. No field is asked twice."""
    every = [
        *(_of_task(task) for task in next_to_measure(record) if task.kind != Sort.MISSING),
        *unsaid.openings(record),
        *disputed.asked(record),
        *unsaid.asked(record, source),
        *coarse.asked(record),
    ]
    made: list[Question] = []
    told: set[tuple[str, str]] = set()
    for one in sorted(every, key=lambda item: _ORDER.index(item.sort)):
        question = _question(record, source, one, told)
        if question.fields or one.bare:
            made.append(question)
            told |= {(field.about, str(question.cars)) for field in question.fields}
    return (*made, *_left(record, source, told))


def _of_task(task: Task) -> Asked:
    place = tuple(task.place.split("/"))
    whole = len(place) < 3 and place[0] in ("openings", "connectors", "areas")
    return Asked(Sort(task.kind), place, task.words, bare=whole, nothing=whole)


def _question(record: VehicleRecord, source: Source, one: Asked, told: set[tuple[str, str]]) -> Question:
    cars = _cars(source, one.place) if one.cars is None else one.cars
    found: Sequence[Field] = () if one.nothing else tuple(fields(source, one.place))
    if one.cars is not None:
        found = (there(source, one.place),)
    return Question(
        sort=one.sort,
        about=address_of(source, one.place),
        ask=one.ask,
        why=one.why or _why(record, one.sort, one.place),
        how=section(record, one.place),
        fields=tuple(field for field in found if (field.about, str(cars)) not in told),
        cars=cars,
    )


def _cars(source: Source, place: Pointer) -> dict[str, object]:
    """The cars that a place is about, as the conditions around it say."""
    found: dict[str, object] = {}
    for depth in range(1, len(place) + 1):
        block = at(source.data, place[:depth])
        when = block.get("when") if isinstance(block, dict) else None
        found |= when if isinstance(when, dict) else {}
    return found


def _left(record: VehicleRecord, source: Source, told: set[tuple[str, str]]) -> Iterator[Question]:
    """What stands as unknown in the record and nothing above asks for."""
    for one in unsaid.unknown(source):
        question = _question(record, source, one, told)
        if question.fields:
            told |= {(field.about, str(question.cars)) for field in question.fields}
            yield question


def _why(record: VehicleRecord, sort: Sort, place: Pointer) -> Message:
    if sort not in (Sort.DIMENSION, Sort.MISSING, Sort.COARSE):
        return message(f"questions/why-{sort}")
    thing = record.openings.get(str(place[1])) if place[0] == "openings" and len(place) > 1 else None
    return message(f"questions/why-{sort}", opening=thing.name) if thing else message("questions/why-other")
