"""The plugs of a record: the table of pins, the drawn face, and what a meter should show."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.wiring import ends
from undertrim.publish.encoding import Spread
from undertrim.publish.facts import doubts, expecting, meter, plugs, wiring, words
from undertrim.publish.facts.photos import Shown, ShownPhoto
from undertrim.record.model import Connector, VehicleRecord
from undertrim.words import Message, Value, Word


@dataclass(frozen=True, slots=True)
class Expected:
    """What a meter should show on a pin, a line for each kind of reading."""

    id: str
    function_words: Word
    conflicts: Sequence[Value]
    lines: Sequence[Message]
    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class ShownConnector:
    """A plug with its drawing, and what a meter should show on it; `meter` is None where nobody meters it.

    `jobs` are those for which it is met; none where that is not known, as of a plug on no way to any opening.
    """

    table: Spread[wiring.ConnectorTable]
    jobs: Sequence[str]
    drawn: plugs.Plug
    meter: meter.MeterPlug | None
    expect: Sequence[Expected]
    photos: Sequence[ShownPhoto]


def connectors(record: VehicleRecord, photos: Shown) -> list[ShownConnector]:
    """Every plug of a record, in file order."""
    return [
        ShownConnector(
            table=wiring.connector(record, item),
            jobs=ends.serves(record, item),
            drawn=plugs.plug(record, item),
            meter=meter.guide(record, item),
            expect=_expected(record, item),
            photos=photos.of(item),
        )
        for item in record.connectors.values()
    ]


def _expected(record: VehicleRecord, plug: Connector) -> list[Expected]:
    """What a meter should show on each pin of a plug; nothing for one that nobody meters."""
    if meter.guide(record, plug) is None:
        return []
    found = ((pin, expecting.of_pin(pin)) for pin in plug.pins.values())
    return [
        Expected(
            id=pin.id,
            function_words=wiring.function_name(pin.function),
            conflicts=doubts.marks(record, ("connectors", plug.id, "pins", pin.id)),
            lines=lines,
            when=words.when(record, pin.when),
            clauses=words.clauses(pin.when),
        )
        for pin, lines in found
        if lines
    ]
