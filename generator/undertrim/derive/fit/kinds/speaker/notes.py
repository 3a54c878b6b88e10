"""What to know beside the verdict: level, clearances, holes that must not be drilled."""

from collections.abc import Iterator

from undertrim.derive.fit.kinds.speaker.balance import level
from undertrim.derive.fit.margins import both
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Depth
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity


def of(speaker: SpeakerGear, opening: SpeakerOpening, fit: Fit) -> tuple[str, ...]:
    """The notes on a speaker in an opening."""
    return (*level(opening.impedance, speaker.impedance), *_holes(opening, fit), *_behind(opening.depth))


def _behind(depth: Depth | None) -> Iterator[str]:
    """That a greater clearance was kept because nobody recorded what is behind."""
    if depth and isinstance(depth.clear, Quantity) and depth.to_glass == "unknown":
        yield "what is behind is not recorded: reckoned as the window glass"


def no_spacer(least: float, most: float) -> str:
    """That a spacer would have to be higher than there is room for."""
    room = f"leaves {both(most)}" if most > 0 else "leaves no room at all"
    return f"no spacer helps: it would have to be {both(least)} high at least, and the grille {room}"


def _holes(opening: SpeakerOpening, fit: Fit) -> Iterator[str]:
    """A pattern that does not match tempts to drill: not into a door that may hold a pressure sensor."""
    mismatch = any(check.name.startswith("bolts") and check.verdict != "fits" for check in fit.checks)
    if (mismatch or fit.way.plate) and opening.crash_sensor != "no":
        said = (
            "there is a crash pressure sensor"
            if opening.crash_sensor == "yes"
            else "a crash pressure sensor is not ruled out"
        )
        yield f"no cutting and no drilling in this door: {said}"
