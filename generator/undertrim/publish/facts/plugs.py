"""A plug as data for page, sheet and JSON: both faces, the other maps of it, and what its standard expects."""

from typing import Any

from undertrim.derive.evidence.claims import METER
from undertrim.derive.wiring import plugs, standards
from undertrim.derive.wiring.needs import doubts
from undertrim.publish.drawings.plugs import Edge, least_width
from undertrim.publish.facts import words
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.facts.plug_maps import maps, told_by
from undertrim.publish.facts.wiring import function_name
from undertrim.record.colour_schemes import schemes
from undertrim.record.model import Connector, Pin, VehicleRecord
from undertrim.resources import table
from undertrim.words import say

Data = dict[str, Any]

VIEWS = {"wires": "looking at the wires", "contacts": "looking at the contacts"}
_NO_FACE = {
    "none": "The positions in this plug are not recorded: go by the numbers on the plug itself, and meter.",
    "contradict": "The recorded positions contradict each other, so the plug is not drawn: {pins}.",
}
_LEGEND = {
    "blank": "crossed out: looked at, empty",
    "unknown": "question mark: not recorded",
    "some": "dashed frame: not in every car",
    "colour": "question mark in place of the wire: colour not recorded",
}
_SURE = {"secondary": "expected by three texts that agree, the standard itself not seen: meter it"}


def plug(record: VehicleRecord, connector: Connector) -> Data:
    """Everything that is drawn or said of one plug beside its table of pins."""
    layout = plugs.layout(connector)
    faces = [_face(record, connector, face) for face in plugs.faces(connector) or ()]
    return {
        "id": connector.id,
        "name": connector.name,
        "scheme": schemes()[connector.scheme].title if connector.scheme else "",
        "faces": faces,
        "legend": _legend(faces[0]["cells"]) if faces else [],
        "no_face": _no_face(layout),
        "lost": list(layout.lost),
        "standard": _standard(connector),
        "told_by": told_by(record, connector),
        "maps": maps(record, connector),
    }


def _no_face(layout: plugs.Layout) -> str:
    """Why it is not drawn; empty where it is."""
    if layout.sound:
        return ""
    wrong = [*layout.outside, *layout.shared]
    return _NO_FACE["contradict"].format(pins=", ".join(wrong)) if wrong else _NO_FACE["none"]


def _legend(cells: list[Data]) -> list[str]:
    """The signs that this drawing has, in words."""
    signs = {cell["state"] for cell in cells}
    signs |= {"some" for cell in cells if cell["when"]}
    signs |= {"colour" for cell in cells if cell["state"] == "pin" and not (cell["colour"] and cell["colour"]["base"])}
    return [meaning for sign, meaning in _LEGEND.items() if sign in signs]


def _face(record: VehicleRecord, connector: Connector, face: plugs.Face) -> Data:
    latch: Edge = face.latch  # type: ignore[assignment]  # the schema has these words alone
    return {
        "view": face.view,
        "words": VIEWS[face.view],
        "title": f"{connector.name}, {VIEWS[face.view]}",
        "recorded": face.view == connector.view,
        "latch": face.latch,
        "rows": face.rows,
        "columns": face.columns,
        "least_width": least_width(face.columns, latch),
        "cells": [_cell(record, connector, cell) for cell in face.cells],
    }


def _cell(record: VehicleRecord, connector: Connector, cell: plugs.Cell) -> Data:
    pin = cell.pin
    return {
        "row": cell.place.row,
        "column": cell.place.column,
        "number": cell.number,
        "state": cell.state,
        "function": pin.function if pin else "",
        "mark": table("plug-marks")["mark"][pin.function] if pin else "",
        "colour": colour(pin.colour, connector.scheme) if pin else None,
        "when": words.when(record, pin.when) if pin else "",
        "clauses": words.clauses(pin.when) if pin else {},
        "words": _pin_words(record, connector, pin) if pin else _empty_words(cell),
        "link": f"#pin-{connector.id}-{pin.id}" if pin else "",
    }


def _pin_words(record: VehicleRecord, connector: Connector, pin: Pin) -> str:
    """`Pin 4: battery feed, yellow with red tracer, only in: Map radio`."""
    wire = colour(pin.colour, connector.scheme)
    said = [function_name(pin.function), wire["words"] if wire else "colour not recorded"]
    said += [METER] if doubts(record, connector, pin) else []
    only = say(words.when(record, pin.when))
    return f"Pin {pin.id}: {', '.join(said)}{f', only in: {only}' if only else ''}"


def _empty_words(cell: plugs.Cell) -> str:
    where = f"Position {cell.number}" if cell.number else f"Row {cell.place.row}, column {cell.place.column}"
    return f"{where}: {'looked at, empty' if cell.state == 'blank' else 'not recorded'}"


def _standard(connector: Connector) -> Data | None:
    """The block of its standard beside what is recorded; None where it names none."""
    if not connector.standard:
        return None
    return {
        "id": connector.standard,
        "title": standards.title(connector.standard),
        "sure": _SURE[table("plug-standards")[connector.standard]["sure"]],
        "exchanged": list(standards.exchanged(connector)),
        "unproven": list(standards.unproven(connector)),
        "pins": [_expected(connector, item) for item in standards.block(connector.standard).values()],
    }


def _expected(connector: Connector, item: standards.Expected) -> Data:
    """One contact of the block; `agrees` is yes or no, or unknown where the record has no such pin."""
    pin = connector.pins.get(item.pin)
    agrees = "unknown" if pin is None else "yes" if item.allows(pin.function) else "no"
    return {
        "pin": item.pin,
        "expected": function_name(item.function) if item.function else "left free",
        "note": item.note,
        "recorded": function_name(pin.function) if pin else "",
        "agrees": agrees,
        "metered": pin.metered if pin else "",
    }
