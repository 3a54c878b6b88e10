"""Sizes of openings and gear as the drawings take them: in mm with their words."""

from undertrim.derive.fit.margins import NOT_RECORDED
from undertrim.publish.facts import words
from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.pictures.drawings.frames import Frame
from undertrim.publish.pictures.drawings.shapes import DrawnOutline, Pattern
from undertrim.record.model import Blank, Bolts, Face, Hole
from undertrim.record.units import Quantity


def measure(value: Quantity | Blank | None) -> Measure:
    """A value with its words; without a number where it is unknown or not recorded."""
    return Measure(value.value if isinstance(value, Quantity) else None, words.quantity(value) or NOT_RECORDED)


def across(hole: Hole | None, *, turned: bool = False) -> Measure:
    """How large an outline is in the plane of a section, which lies level: its diameter, else its width, or its height where it is turned."""
    if hole is None:
        return UNKNOWN
    return measure(hole.diameter or (hole.height if turned else hole.width))


def outline(hole: Hole) -> DrawnOutline:
    """A hole or outline from the front."""
    if hole.shape == "round":
        return DrawnOutline("round", measure(hole.diameter), measure(hole.diameter))
    return DrawnOutline("oval" if hole.shape == "oval" else "rectangle", measure(hole.width), measure(hole.height))


def panel(face: Face | None) -> DrawnOutline | None:
    """A flat panel from the front; None where none is recorded."""
    return DrawnOutline("rectangle", measure(face.width), measure(face.height)) if face else None


def frame(face: Face | None) -> Frame | None:
    """A face from the front; None where none is recorded."""
    return Frame(measure(face.width), measure(face.height)) if face else None


def pattern(bolts: Bolts | None) -> Pattern | None:
    """A bolt pattern; None where none is recorded."""
    if bolts is None:
        return None
    if bolts.pattern == "circle":
        angle = bolts.angle.value if isinstance(bolts.angle, Quantity) else None
        return Pattern(True, bolts.count, measure(bolts.diameter), UNKNOWN, angle)
    return Pattern(False, bolts.count, measure(bolts.width), measure(bolts.height))
