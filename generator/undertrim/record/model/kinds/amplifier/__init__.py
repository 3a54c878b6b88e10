"""A place for an amplifier, and the gear that is for it."""

from undertrim.record.model.kinds.amplifier.gear import AmplifierGear, Box, Rated
from undertrim.record.model.kinds.amplifier.opening import AmplifierOpening, FusePlace, GroundPoint, Supply

Opening = AmplifierOpening
Gear = AmplifierGear

__all__ = ["AmplifierGear", "AmplifierOpening", "Box", "FusePlace", "Gear", "GroundPoint", "Opening", "Rated", "Supply"]
