"""Button ladders as data: the band of each button in ohm."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.wiring import ends, ladder
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.meter import ranged
from undertrim.record.model import Ladder, VehicleRecord
from undertrim.words import Value, message, named


@dataclass(frozen=True, slots=True)
class RungWords:
    """A button and the resistance it shows, in words."""

    name: Value
    band: Value


@dataclass(frozen=True, slots=True)
class ShownLadder:
    """A button ladder with the band of each of its buttons; `jobs` are those for which its plug is met."""

    id: str
    name: str
    pin: str
    against: str
    tolerance: Value
    rungs: Sequence[RungWords]
    jobs: Sequence[str]
    when: Value
    clauses: words.Clauses
    conflicts: Sequence[Value]
    source: Sequence[str]


def ladders(record: VehicleRecord) -> list[ShownLadder]:
    """Every ladder of a record."""
    return [_ladder(record, item) for item in record.ladders.values()]


def _ladder(record: VehicleRecord, item: Ladder) -> ShownLadder:
    plug = record.connectors.get(item.pin.partition("/")[0])
    return ShownLadder(
        id=item.id,
        name=item.written.replace("-", " "),
        pin=item.pin,
        against=item.return_,
        tolerance=words.quantity(item.tolerance),
        rungs=[RungWords(_named(rung), ranged(rung.low, rung.high, "ohm")) for rung in ladder.rungs(item)],
        jobs=ends.serves(record, plug) if plug else (),
        when=words.when(record, item.when),
        clauses=words.clauses(item.when),
        conflicts=doubts.marks(record, ("ladders", item.id)),
        source=item.source,
    )


def _named(rung: ladder.Rung) -> Value:
    return message("ladders/none-pressed") if rung.idle else named("buttons", rung.name)
