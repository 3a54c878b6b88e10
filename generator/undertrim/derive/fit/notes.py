"""What to know beside the verdict: level, clearances, holes that must not be drilled."""

import math
from collections.abc import Iterator

from undertrim.derive.fit.margins import both
from undertrim.derive.fit.verdict import Fit
from undertrim.record.gear import GearFacts
from undertrim.record.model import Blank, Depth, Opening
from undertrim.record.units import Quantity, show


def of(speaker: GearFacts, opening: Opening, fit: Fit) -> tuple[str, ...]:
    """The notes on a speaker in an opening."""
    return (*level(opening.impedance, speaker.impedance), *_holes(opening, fit), *_behind(opening.depth))


def _behind(depth: Depth | None) -> Iterator[str]:
    """That a greater clearance was kept because nobody recorded what is behind."""
    if depth and isinstance(depth.clear, Quantity) and depth.to_glass == "unknown":
        yield "what is behind is not recorded: reckoned as the window glass"


def level(old: Quantity | Blank | None, new: Quantity | Blank | None) -> Iterator[str]:
    """The change of level where the new impedance replaces the old one; nothing where it stays, or one is not known."""
    if not isinstance(old, Quantity) or not isinstance(new, Quantity) or min(old.value, new.value) <= 0:
        return
    if change := round(decibels(old.value, new.value), 1):
        yield f"{show(new)} in place of {show(old)}: {signed(change)} dB at equal voltage"


def signed(change: float) -> str:
    """A change of level with its sign: `+3.0`, `−1.2`."""
    return f"{change:+.1f}".replace("-", "−")


def decibels(old: float, new: float) -> float:
    """By how many dB the power into `new` ohm is above that into `old` ohm at equal voltage: P = U²/Z."""
    return 10 * math.log10(old / new)


def no_spacer(least: float, most: float) -> str:
    """That a spacer would have to be higher than there is room for."""
    room = f"leaves {both(most)}" if most > 0 else "leaves no room at all"
    return f"no spacer helps: it would have to be {both(least)} high at least, and the grille {room}"


def _holes(opening: Opening, fit: Fit) -> Iterator[str]:
    """A pattern that does not match tempts to drill: not into a door that may hold a pressure sensor."""
    mismatch = any(check.name.startswith("bolts") and check.verdict != "fits" for check in fit.checks)
    if (mismatch or fit.way.plate) and opening.crash_sensor != "no":
        said = (
            "there is a crash pressure sensor"
            if opening.crash_sensor == "yes"
            else "a crash pressure sensor is not ruled out"
        )
        yield f"no cutting and no drilling in this door: {said}"
