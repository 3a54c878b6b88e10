"""Holes, faces, bolt patterns and depths in words, in both systems of units."""

from undertrim.publish.facts import words
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole
from undertrim.record.units import Quantity

_DATUM = {
    "skin": "mounting face",
    "bracket": "bracket face",
    "panel": "inside of the panel",
    "face": "front of the dash",
}
_OVER = {
    "whole-travel": "over the whole glass travel",
    "glass-down": "with the glass down only",
    "no-glass": "no glass here",
}


def hole(item: Hole) -> str:
    """A hole in words."""
    if item.shape == "round":
        return f"round, {words.quantity(item.diameter)}"
    return f"{item.shape}, {words.quantity(item.width)} wide × {words.quantity(item.height)} high"


def face(item: Face) -> str:
    """A face in words."""
    return f"{words.quantity(item.width)} wide × {words.quantity(item.height)} high"


def bolts(item: Bolts) -> str:
    """A bolt pattern in words."""
    if item.pattern == "circle":
        at = f", one at {words.quantity(item.angle)} from straight up" if item.angle is not None else ""
        return f"{item.count} on a circle of {words.quantity(item.diameter)}{at}"
    return f"{item.count} at {words.quantity(item.width)} × {words.quantity(item.height)}"


def _behind(item: Depth) -> str:
    """What ends a depth: what it is reckoned as, and what the record calls it."""
    sort = "something unknown, taken as glass" if item.obstruction == "unknown" else item.obstruction
    return f"to{' ' if sort else ''}{sort}{': ' if item.to else ''}{item.to}" if item.to or sort else ""


def _leaning(lean: Quantity | Blank | None) -> str:
    """How the thing behind stands against the mounting face."""
    if lean is Blank.NONE:
        return "standing square"
    return f"leaning {words.quantity(lean)}" if lean is not None else ""


def depth(item: Depth, *, in_a_door: bool) -> str:
    """A depth with its datum, its travel and what ends it."""
    parts = [
        words.quantity(item.clear),
        f"from the {'door skin' if in_a_door and item.datum == 'skin' else _DATUM[item.datum]}" if item.datum else "",
        _behind(item),
        _OVER[item.over] if item.over else "",
        _leaning(item.leans),
    ]
    return ", ".join(part for part in parts if part)
