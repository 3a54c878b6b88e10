"""Where a vehicle stands among the phases of its model: what came before it, and where its facts may change."""

from undertrim.publish.facts.words import listed
from undertrim.record.model import VehicleRecord
from undertrim.words import Value, message


def before(record: VehicleRecord) -> Value:
    """The record of the phase right before, in words; empty where none is named."""
    facts = record.vehicle
    if not facts.follows:
        return ""
    return message("vehicle/follows", make=facts.make, record=facts.follows, month=str(facts.built.from_))


def changed(record: VehicleRecord) -> Value:
    """The months in which the model changed, and across which of them this record's facts were confirmed; empty where none is known."""
    facts = record.vehicle
    months, confirmed = (listed(*map(str, found)) for found in (facts.boundaries, facts.confirmed_across))
    return listed(
        message("vehicle/changed", months=months) if months else "",
        message("vehicle/confirmed", months=confirmed) if confirmed else "",
        joined="semicolon",
    )
