"""Openings as data: rows of label and value, as measured, in both systems of units."""

from collections.abc import Iterator
from typing import Any

from undertrim.derive import doors
from undertrim.derive.procedure.closed import closed_in
from undertrim.publish.facts import doubts, words
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole, Opening, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.resources import table

Data = dict[str, Any]

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
_KIT = {"needed": "needed", "not-needed": "not needed", "unknown": words.UNKNOWN}
_SENSOR = {
    "yes": "yes: no cutting, no drilling",
    "no": "no",
    "unknown": "unknown: no cutting, no drilling until it is answered",
}


def opening(record: VehicleRecord, item: Opening) -> Data:
    """One opening with its dimensions."""
    return {
        "id": item.id,
        "name": item.name,
        "kind": item.kind,
        "kind_words": table("kinds")[item.kind]["label"],
        "sides": list(item.each),
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "rows": [
            {"label": label, "value": value} for label, value in (*_rows(record, item), *_absent(record, item)) if value
        ],
        "conflicts": doubts.marks(record, ("openings", item.id), *([("areas", item.area)] if item.area else ())),
        "crash_sensor": doors.sensor(record, item),
        "outline": _outlined(item) and not closed_in(record, item),
        "install_how": item.install_how,
        "cautions": [words.caution(record, caution) for caution in item.cautions],
        "source": list(item.source),
    }


def _outlined(item: Opening) -> bool:
    """Whether the outline is measured, so that there is something to draw in true scale."""
    shape = item.face if item.kind == "receiver" else item.hole
    sizes = [getattr(shape, name, None) for name in ("diameter", "width", "height")]
    return any(isinstance(size, Quantity) for size in sizes) and not any(isinstance(size, Blank) for size in sizes)


def _rows(record: VehicleRecord, item: Opening) -> Iterator[tuple[str, str]]:
    if item.face:
        yield "Opening, width", words.quantity(item.face.width)
        yield "Opening, height", words.quantity(item.face.height)
    if item.kit:
        yield "Dash kit", _KIT[item.kit]
    if item.hole:
        yield "Hole", hole(item.hole)
    if item.bolts:
        yield "Bolt holes", bolts(item.bolts)
    if item.panel:
        yield "Flat panel round the hole", face(item.panel)
    if item.clear_front:
        yield "Clear room in front", face(item.clear_front)
    if item.depth:
        yield "Clear depth", depth(item.depth, in_a_door=item.in_a_door)
    if item.alters:
        yield "Alters the car", ", ".join(word.replace("-", " ") for word in item.alters)
    if item.kind == "speaker":
        yield "Room to the grille", words.quantity(item.room_to_grille) or "not recorded"
        yield "Factory spacer", words.quantity(item.factory_spacer) or "not recorded"
        yield "Impedance", words.quantity(item.impedance) or "not recorded"
        yield "Channel", _channel(item)
        yield "Known as", f"{item.nominal} (a name, not a dimension)" if item.nominal else ""
    if item.in_a_door or item.crash_sensor:
        yield "Crash pressure sensor", _SENSOR[doors.sensor(record, item)]


def _channel(item: Opening) -> str:
    """The outputs that feed it, and through what."""
    through = f", through a {item.fed_through}" if item.fed_through in ("capacitor", "crossover") else ""
    return (
        f"{item.channel}{through}{', fed how: unknown' if item.fed_through == 'unknown' else ''}"
        if item.channel
        else ""
    )


def _absent(record: VehicleRecord, item: Opening) -> Iterator[tuple[str, str]]:
    """The cars that do not have the opening: looked into, none."""
    cars = "; ".join(words.when(record, clause) for clause in item.not_in)
    yield "Not there in", cars


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
