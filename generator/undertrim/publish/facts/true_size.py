"""The screws, bolts and nuts of a visit with what of them can be drawn in true size."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from undertrim.derive import fastener_words
from undertrim.derive.procedure.steps import Step
from undertrim.publish.facts import words
from undertrim.record.model import Fastener
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Value

_THREAD = re.compile(r"(?:M|ST)([0-9]+(?:\.[0-9]+)?)", re.IGNORECASE)
_AS_NAMED = ("hex", "hex-key", "slot")
"""Families whose number is a size in mm."""


@dataclass(frozen=True, slots=True)
class TrueSize:
    """A sort of fastener: what it is called, the family of its drive and how far that is across in mm, the thickness of its thread and its length under the head; None for what is not known."""

    name: Value
    family: str
    across: float | None
    thread: float | None
    length: float | None


def true_sizes(steps: Iterable[Step]) -> list[TrueSize]:
    """Every sort that comes out and has something to draw, each once, as the steps have them."""
    found: dict[tuple[str, str, float | None], TrueSize] = {}
    for item in _turned(steps):
        made = _made(item)
        if made and (made.across or made.length):
            found.setdefault((item.what, item.thread, made.length), made)
    return list(found.values())


def _turned(steps: Iterable[Step]) -> Iterator[Fastener]:
    for step in steps:
        if step.kind in ("remove", "prepare"):
            yield from (line.fastener for line in step.fasteners if line.fastener.turned and line.fate != "leave")


def _made(item: Fastener) -> TrueSize | None:
    drive = item.drive
    if drive is None:
        return None
    thread = _THREAD.match(item.thread)
    long = item.length if isinstance(item.length, Quantity) else None
    called = words.listed(
        fastener_words.one(item), *((item.thread,) if item.thread else ()), *((long,) if long else ())
    )
    return TrueSize(
        name=called,
        family=drive.family,
        across=_across(drive.family, drive.size),
        thread=float(thread[1]) if thread else None,
        length=long.value if long else None,
    )


def _across(family: str, size: float | None) -> float | None:
    """Over the flats of a hexagon, over the points of a hexalobular drive, the width of a slot; a cross goes by its head, which nobody records."""
    if family in _AS_NAMED:
        return size
    known = table("recesses").get(family.removesuffix("-pin"), {})
    return known.get(f"{size:g}") if size is not None else None
