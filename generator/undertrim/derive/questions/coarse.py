"""Lengths of openings that were measured too coarsely to tell what fits."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from undertrim.derive.questions.asked import Asked
from undertrim.derive.questions.question import Sort
from undertrim.record.field_titles import FieldTitles, field_titles
from undertrim.record.instruments import coarseness, scales
from undertrim.record.model import Sources, VehicleRecord
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import message


def asked(record: VehicleRecord) -> Iterator[Asked]:
    """Each length whose instrument is coarser than the table says, and coarser than it was typed."""
    most = table("questions")["coarse"] / 2
    for opening in record.openings.values():
        for place, value, sources in _lengths(opening, ("openings", opening.id), ()):
            pieces = [record.evidence[name] for name in sources if name in record.evidence]
            step = coarseness(value, [scales(piece.with_) for piece in pieces])
            if step > max(most, value.step):
                field = FieldTitles(field_titles([str(key) for key in place]).titles[2:])
                yield Asked(Sort.COARSE, place, message("questions/again", thing=opening.name, field=field))


def _lengths(thing: object, place: Pointer, sources: Sources) -> Iterator[tuple[Pointer, Quantity, Sources]]:
    """The lengths of a thing of the model with their places and the nearest evidence."""
    if isinstance(thing, Quantity):
        if thing.kind == "length":
            yield place, thing, sources
    elif is_dataclass(thing) and not isinstance(thing, type):
        own = getattr(thing, "source", ()) or sources
        for entry in fields(thing):
            yield from _lengths(getattr(thing, entry.name), (*place, entry.name.rstrip("_")), own)
