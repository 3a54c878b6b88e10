"""Where a vehicle stands among the phases of its model: what came before it, and where its facts may change."""

from undertrim.record.model import VehicleRecord


def before(record: VehicleRecord) -> str:
    """The record of the phase right before, in words; empty where none is named."""
    facts = record.vehicle
    return f"{facts.make} {facts.follows}, until {facts.built.from_}" if facts.follows else ""


def changed(record: VehicleRecord) -> str:
    """The months in which the model changed, and across which of them this record's facts were confirmed; empty where none is known."""
    facts = record.vehicle
    months = ", ".join(map(str, facts.boundaries))
    confirmed = ", ".join(map(str, facts.confirmed_across))
    parts = (f"with {months}" if months else "", f"confirmed on both sides of {confirmed}" if confirmed else "")
    return "; ".join(part for part in parts if part)
