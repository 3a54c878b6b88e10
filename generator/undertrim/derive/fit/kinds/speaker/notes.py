"""What to know beside the verdict: level, clearances, holes that must not be drilled."""

from collections.abc import Iterator

from undertrim.derive.fit.kinds.speaker.balance import level
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Depth
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.words import Message, message


def of(speaker: SpeakerGear, opening: SpeakerOpening, fit: Fit) -> tuple[Message, ...]:
    """The notes on a speaker in an opening."""
    return (*level(opening.impedance, speaker.impedance), *_holes(opening, fit), *_behind(opening.depth))


def _behind(depth: Depth | None) -> Iterator[Message]:
    """That a greater clearance was kept because nobody recorded what is behind."""
    if depth and isinstance(depth.clear, Quantity) and depth.to_glass == "unknown":
        yield message("fit-speaker/behind-unknown")


def no_spacer(least: float, most: float) -> Message:
    """That a spacer would have to be higher than there is room for."""
    if most > 0:
        return message("fit-speaker/no-spacer", least=both(least), most=both(most))
    return message("fit-speaker/no-spacer-at-all", least=both(least))


def _holes(opening: SpeakerOpening, fit: Fit) -> Iterator[Message]:
    """A pattern that does not match tempts to drill: not into a door that may hold a pressure sensor."""
    mismatch = any(check.name.startswith("bolts") and check.verdict != "fits" for check in fit.checks)
    if (mismatch or fit.way.plate) and opening.crash_sensor != "no":
        yield message("fit-speaker/sensor" if opening.crash_sensor == "yes" else "fit-speaker/sensor-not-ruled-out")
