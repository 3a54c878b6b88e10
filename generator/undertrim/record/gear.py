"""A gear record as typed, frozen data; the schema says what each field means."""

from dataclasses import dataclass, field

from undertrim.record.model import Conflict, Decided, Evidence, VehicleRecord
from undertrim.record.model.gear import AnyGear, Assembly, Lead, Place, Tried
from undertrim.record.model.kinds import GEAR, GearFacts
from undertrim.record.whose import NOBODYS, Whose

__all__ = ["GEAR", "AnyGear", "AnyRecord", "Assembly", "GearFacts", "GearRecord", "Lead", "Place", "Tried"]


@dataclass(frozen=True, slots=True, weakref_slot=True)
class GearRecord:
    """One gear record."""

    format: int
    gear: GearFacts
    demo: Decided = "no"
    lang: str = ""
    evidence: dict[str, Evidence] = field(default_factory=dict)
    conflicts: dict[str, Conflict] = field(default_factory=dict)
    whose: Whose = NOBODYS
    """Whose it is where collections lie on each other: no field of a file."""


AnyRecord = VehicleRecord | GearRecord
"""A record of either sort: both have evidence and conflicts."""
