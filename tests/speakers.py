"""Speakers, rings and openings for them that fit as long as a test says nothing else."""

from typing import Any

from undertrim.derive.fit.clearances import Clearances, clearances
from undertrim.derive.fit.kinds.speaker import fit as speaker
from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity, parse

USUAL = clearances()


def mm(text: str) -> Quantity:
    return parse(text if text[-1].isalpha() else f"{text} mm", "length")


def circle(across: str) -> Hole:
    return Hole("round", diameter=mm(across))


RING = Bolts("circle", 4, diameter=mm("156"))


def gear(depth: str = "58", protrusion: str | None = "10", **other: object) -> Stocked[SpeakerGear]:
    facts: dict[str, Any] = {"basket": circle("127"), "flange": circle("165"), "bolts": RING}
    facts |= {"depth": mm(depth), "protrusion": mm(protrusion) if protrusion else None, "gasket": Blank.NONE, **other}
    return Stocked("shoal", SpeakerGear("Skerrowe", "Shoal", **facts))


def square(clear: Quantity | Blank, datum: str = "skin", over: str = "no-glass", to: str = "") -> Depth:
    """A depth to something that stands square to it."""
    return Depth(clear, datum, over, to, leans=Blank.NONE)


def door(clear: str | Blank = "62", grille: str | None = "20", **other: object) -> SpeakerOpening:
    depth = square(mm(clear) if not isinstance(clear, Blank) else clear)
    facts: dict[str, Any] = {"hole": circle("130"), "bolts": RING, "depth": depth, "factory_spacer": Blank.NONE}
    facts |= {"room_to_grille": mm(grille) if grille else None, "panel": Face(mm("300"), mm("300")), **other}
    return SpeakerOpening("side", "Side", (), **{"area": "boot", **facts})


def ring(thickness: str, **other: object) -> Stocked[SpacerGear]:
    facts: dict[str, Any] = {"hole": circle("128"), "flange": circle("176"), "bolts": RING, **other}
    made_of = SpacerGear("Pellworth", f"Ring {thickness}", thickness=mm(thickness), **facts)
    return Stocked(f"ring-{thickness}", made_of)


def fit(
    item: Stocked[SpeakerGear], opening: SpeakerOpening, *spacers: Stocked[SpacerGear], usual: Clearances = USUAL
) -> Fit:
    return speaker.fit(item, opening, spacers, usual)


def check(found: Fit, name: str) -> Check:
    return next(check for check in found.checks if check.name == name)
