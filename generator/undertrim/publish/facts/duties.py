"""What becomes of what the factory unit also does, as data and in words: the same on page, sheet, terminal and in the JSON."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit import duty_texts
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.duties import Fate
from undertrim.derive.fit.duty_groups import Becomes, becomes
from undertrim.derive.fit.stock import Stock
from undertrim.publish.facts import doubts, words
from undertrim.record.model import VehicleRecord, When
from undertrim.words import Message, Value, message, say


@dataclass(frozen=True, slots=True)
class ShownDuty:
    """One outcome of a duty of the factory unit; `word` is STOP, LOST, UNKNOWN, NEEDED or empty, `kept_words` says what becomes of it."""

    id: str
    name: Value
    kept_by: str
    becomes: Message
    kept_words: Message
    fate: str
    weight: str
    weight_words: Value
    word: str
    conflicts: Sequence[Value]
    note: str
    openings: Sequence[str]
    when: Value
    clauses: words.Clauses
    source: Sequence[str]


def duties(record: VehicleRecord, address: str, stock: Stock) -> list[ShownDuty]:
    """Every duty with what becomes of it, one entry for each outcome; `word` is STOP, LOST, UNKNOWN, NEEDED or empty."""
    counted = reckoned(record)
    return [duty(counted, item) for item in becomes(counted, address, stock)]


def duty(record: VehicleRecord, item: Becomes) -> ShownDuty:
    """One outcome of a duty; `kept_words` says what becomes of it."""
    return ShownDuty(
        id=item.duty.id,
        name=item.outcome.name,
        kept_by=item.duty.kept_by,
        becomes=item.outcome.said,
        kept_words=duty_texts.kept_words(item),
        fate=str(item.outcome.fate),
        weight=item.outcome.kind.weight,
        weight_words=item.outcome.kind.words,
        word=duty_texts.word(item),
        conflicts=doubts.marks(record, ("duties", item.duty.id)),
        note=item.duty.note,
        openings=item.openings,
        when=words.when(record, item.when),
        clauses=words.clauses(item.when),
        source=item.duty.source,
    )


def going(found: Collection[ShownDuty], opening: str, car: Mapping[str, str]) -> list[ShownDuty]:
    """Those of the duties that do not simply stay, at one opening, in the cars that `car` leaves open."""
    return [
        item for item in found
        if opening in item.openings and item.fate != Fate.STAYS and _holds(item.clauses, car)
    ]  # fmt: skip


def of_answer(vehicle: Vehicle, found: Answer) -> list[ShownDuty]:
    """Those at the opening of an answer, in its cars. What stays is left out, and what gear keeps: each fit says by what."""
    if not found.there or not found.opening.takes_over:
        return []
    kinds = found.cars or ({},)
    every = [
        item for item in duties(vehicle.record, vehicle.address, vehicle.stock)
        if item.fate != Fate.KEPT
    ]  # fmt: skip
    return [item for item in every if any(going([item], found.opening.id, car) for car in kinds)]


def line(duty: Value, becomes: Value, cars: Value) -> str:
    """`hazard switch [Map radio]: STOP, not a plain replacement: LOST with the factory unit`."""
    if cars:
        return say(message("duties/line-in", duty=duty, becomes=becomes, cars=cars))
    return say(message("duties/outcome", duty=duty, becomes=becomes))


def _holds(clauses: words.Clauses, car: Mapping[str, str]) -> bool:
    return When(tuple((name, tuple(choices)) for name, choices in clauses.items())).holds(car)
