"""A gear record as typed, frozen data; the schema says what each field means."""

from dataclasses import dataclass

from undertrim.record.model import Decided
from undertrim.record.model.gear import AnyGear, Assembly, Lead, Place
from undertrim.record.model.kinds import GEAR, GearFacts

__all__ = ["GEAR", "AnyGear", "Assembly", "GearFacts", "GearRecord", "Lead", "Place"]


@dataclass(frozen=True, slots=True)
class GearRecord:
    """One gear record."""

    format: int
    gear: GearFacts
    demo: Decided = "no"
    lang: str = ""
