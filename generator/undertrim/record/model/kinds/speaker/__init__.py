"""A speaker's opening, and the gear that is for it."""

from undertrim.record.model.kinds.speaker.gear import SpacerGear, SpeakerGear
from undertrim.record.model.kinds.speaker.opening import SpeakerOpening

Opening = SpeakerOpening
Gear = SpeakerGear | SpacerGear

__all__ = ["Gear", "Opening", "SpacerGear", "SpeakerGear", "SpeakerOpening"]
