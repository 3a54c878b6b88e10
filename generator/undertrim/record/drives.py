"""Fastener drives: reading them, the tool each needs, and which tool of the other system goes on."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from undertrim.record.drive_sizes import families
from undertrim.record.drive_text import Drive, DriveError, neighbours, parse
from undertrim.record.hexagon_pairs import pairs
from undertrim.record.thread_heads import thread_note
from undertrim.words import Message, Value, message

__all__ = ["Drive", "DriveError", "Near", "near_equals", "parse", "size_note", "thread_note", "tool"]


@dataclass(frozen=True, slots=True)
class Near:
    """A tool of the other system for a hexagon.

    `drive` is what the tool is made for, `gap_mm` tool size minus hexagon size, and `verdict` is "same",
    "usable" or "marginal" (it goes on, but rounds heads).
    """

    drive: Drive
    gap_mm: float
    verdict: str


def near_equals(drive: Drive) -> list[Near]:
    """The sockets of the other system that go on a hexagon, the closest first; empty for every other family.

    The limits are common practice without a source: data/drives.toml, [near].
    """
    return list(_near_equals(drive))


@lru_cache(maxsize=256)
def _near_equals(drive: Drive) -> tuple[Near, ...]:
    if drive.family != "hex" or drive.size is None:
        return ()
    family = families()["hex"]
    found = [
        Near(parse(family.named(size)), float(gap), judged)
        for size, gap, judged in pairs(_exact(drive.size), drive.unit)
    ]
    return tuple(sorted(found, key=lambda near: abs(near.gap_mm)))


def tool(drive: Drive) -> Value:
    """The tool that turns a drive: "socket 7 mm", "T30 bit with centre hole", "E10 socket"; "" for hand."""
    family = families()[drive.family]
    if drive.family == "unknown":
        return message("drives/tool-unknown")
    before, _, after = family.label.partition("{size}")
    size = drive.label.removeprefix(before).removesuffix(after)
    return "" if family.by_hand else message(f"drives/tool-{family.key}", size=size)


def size_note(drive: Drive) -> Message | None:
    """A note on a size outside a series that is known from memory only; None when there is nothing to say."""
    family = families()[drive.family]
    if family.closed or drive.size is None or family.find(_exact(drive.size), drive.unit):
        return None
    near = neighbours(family, _exact(drive.size), drive.unit)
    return message("drives/unusual-size", drive=drive.label, sizes=near)


def _exact(size: float) -> Fraction:
    return Fraction(repr(size))
