"""A small car with a dash and a door, and a receiver and a speaker that fit into them, for tests of fit."""

from collections.abc import Iterable
from typing import Any

from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.record import build
from undertrim.record.gear import GearFacts
from undertrim.words import Value, say

CAR = """
parts:
  radio:
openings:
  dash:
    kind: receiver
    kit: not-needed
    face: {width: 182 mm, height: 112 mm}
    depth: {clear: 170 mm, datum: face}
    clear_front: {width: 300 mm, height: 200 mm}
    behind: [radio]
  front-door:
    kind: speaker
    behind: [radio]
    channel: front
    hole: {shape: round, diameter: 130 mm}
    bolts: {pattern: circle, count: 4, diameter: 156 mm}
    panel: {width: 300 mm, height: 300 mm}
    depth: {clear: 62 mm, datum: skin, over: no-glass, leans: none}
    room_to_grille: 20 mm
    factory_spacer: none
    impedance: 4 ohm
"""
RECEIVER = {
    "kind": "receiver",
    "maker": "Skerrowe",
    "model": "Cleft",
    "body": {"width": "180 mm", "height": "100 mm"},
    "trim": {"width": "190 mm", "height": "110 mm"},
    "chassis_depth": "80 mm",
    "plug_room": "30 mm",
    "outputs": ["speaker"],
    "needs": [],
}
SPEAKER = {
    "kind": "speaker",
    "maker": "Skerrowe",
    "model": "Shoal",
    "basket": {"shape": "round", "diameter": "127 mm"},
    "flange": {"shape": "round", "diameter": "165 mm"},
    "bolts": {"pattern": "circle", "count": "4", "diameter": "156 mm"},
    "depth": "58 mm",
    "protrusion": "10 mm",
    "gasket": "none",
    "impedance": "4 ohm",
}


def gear(base: dict[str, Any], **changed: Any) -> Gear:
    facts = build.section("gear", {**base, **changed})
    assert isinstance(facts, GearFacts)
    return Stocked(f"{facts.maker}-{facts.model}".lower().replace(" ", "-"), facts)


PLAIN = "sound: {plain: {output: speaker, least_load: 2 ohm}}\n"
"""A sound system that takes 2 ohm."""


def all_said(values: Iterable[Value]) -> list[str]:
    """Notes, parts to get or limits in words."""
    return [say(value) for value in values]


def named(pieces: Iterable[Piece]) -> tuple[str, ...]:
    """Pieces of gear by their names."""
    return tuple(piece.name for piece in pieces)
