"""The plugs of a record: the table of pins, the drawn face, and what a meter should show."""

from typing import Any

from undertrim.publish.facts import doubts, expecting, meter, plugs, wiring, words
from undertrim.record.model import Connector, VehicleRecord

Data = dict[str, Any]


def connectors(record: VehicleRecord) -> list[Data]:
    """Every plug of a record, in file order."""
    return [
        {
            **wiring.connector(record, item),
            "drawn": plugs.plug(record, item),
            "meter": meter.guide(record, item),
            "expect": _expected(record, item),
        }
        for item in record.connectors.values()
    ]


def _expected(record: VehicleRecord, plug: Connector) -> list[Data]:
    """What a meter should show on each pin of a plug; nothing for one that nobody meters."""
    if meter.guide(record, plug) is None:
        return []
    found = ((pin, expecting.of_pin(pin)) for pin in plug.pins.values())
    return [
        {
            "id": pin.id,
            "function_words": wiring.function_name(pin.function),
            "conflicts": doubts.marks(record, ("connectors", plug.id, "pins", pin.id)),
            "lines": lines,
            "when": words.when(record, pin.when),
            "clauses": words.clauses(pin.when),
        }
        for pin, lines in found
        if lines
    ]
