"""A tweeter's place, and the gear that is for it."""

from undertrim.record.model.kinds.tweeter.gear import Box, CrossoverGear, HighPass, Mount, TweeterGear
from undertrim.record.model.kinds.tweeter.opening import CrossoverPlace, Cup, TweeterOpening

Opening = TweeterOpening
Gear = TweeterGear | CrossoverGear

__all__ = [
    "Box", "CrossoverGear", "CrossoverPlace", "Cup", "Gear", "HighPass", "Mount", "Opening", "TweeterGear", "TweeterOpening",
]  # fmt: skip
