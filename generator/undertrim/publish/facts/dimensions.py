"""Holes, faces, bolt patterns and depths, in both systems of units."""

from undertrim.publish.facts import words
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole
from undertrim.record.units import Quantity
from undertrim.words import Value, message


def hole(item: Hole) -> Value:
    """A hole."""
    if item.shape == "round":
        return message("dimensions/round", diameter=words.quantity(item.diameter))
    shape = message(f"shapes/{item.shape}")
    return message("dimensions/hole", shape=shape, width=words.quantity(item.width), height=words.quantity(item.height))


def face(item: Face) -> Value:
    """A face."""
    return message("dimensions/face", width=words.quantity(item.width), height=words.quantity(item.height))


def bolts(item: Bolts) -> Value:
    """A bolt pattern."""
    if item.pattern != "circle":
        width, height = words.quantity(item.width), words.quantity(item.height)
        return message("dimensions/bolts-square", count=item.count, width=width, height=height)
    circle = message("dimensions/bolts-circle", count=item.count, diameter=words.quantity(item.diameter))
    if item.angle is None:
        return circle
    return message("dimensions/bolts-turned", circle=circle, angle=words.quantity(item.angle))


def _behind(item: Depth) -> Value:
    """What ends a depth: what it is reckoned as, and what the record calls it."""
    sort = message(f"dimensions/ends-{item.obstruction}") if item.obstruction else ""
    if item.to:
        return (
            message("dimensions/to-named", sort=sort, name=item.to)
            if sort
            else message("dimensions/to-what", name=item.to)
        )
    return message("dimensions/to", sort=sort) if sort else ""


def _leaning(lean: Quantity | Blank | None) -> Value:
    """How the thing behind stands against the mounting face."""
    if lean is Blank.NONE:
        return message("dimensions/square")
    return message("dimensions/leaning", lean=words.quantity(lean)) if lean is not None else ""


def _from(item: Depth, *, in_a_door: bool) -> Value:
    """The face that a depth is measured from; in a door the mounting face is its skin."""
    if not item.datum:
        return ""
    return (
        message("dimensions/from-door")
        if in_a_door and item.datum == "skin"
        else message(f"dimensions/from-{item.datum}")
    )


def depth(item: Depth, *, in_a_door: bool) -> Value:
    """A depth with its datum, its travel and what ends it."""
    over = message(f"dimensions/{item.over}") if item.over else ""
    return words.listed(
        words.quantity(item.clear), _from(item, in_a_door=in_a_door), _behind(item), over, _leaning(item.leans)
    )
