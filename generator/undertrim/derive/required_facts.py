"""Which facts an opening wants by its kind, which of them are known, and what to do about the others."""

from undertrim.derive.kinds import required
from undertrim.derive.opening_fact import Fact
from undertrim.record.model import Opening, VehicleRecord


def required_facts(record: VehicleRecord, opening: Opening) -> tuple[Fact, ...]:
    """All facts that an opening wants."""
    return tuple(required(record, opening))


def lacking(record: VehicleRecord, opening: Opening) -> tuple[Fact, ...]:
    """Those that are not recorded, or recorded as unknown."""
    return tuple(fact for fact in required_facts(record, opening) if not fact.known)
