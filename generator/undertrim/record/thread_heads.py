"""What the standards put on a thread's head, to compare with what a record says turns it."""

import re
from collections.abc import Mapping
from typing import Any

from undertrim.record.drive_sizes import table
from undertrim.record.drive_text import Drive
from undertrim.words import Message, message

_THREAD = re.compile(r"(M|ST)([0-9]+(?:\.[0-9]+)?)(?: ?[x×] ?[0-9.]+)*", re.IGNORECASE)
_SAME = 0.01  # mm; closer than any two sizes of hexagon
_NUMBERED = frozenset(["hexalobular", "hexalobular-pin"])
_CROSS = {"phillips": "PH", "pozidriv": "PZ"}


def thread_note(thread: str, drive: Drive) -> Message | None:
    """A note when a drive differs from what the standards give its thread; None if it agrees or is not known.

    `thread` is typed "M6", "M6x1", "M6 x 16" or "ST4.2". Hexagons are held against ISO 4014 and the older
    DIN 931, hexalobular drives against ISO 14583, cross recesses against ISO 7046. A note is no error: flange
    heads and makers' own screws differ. Hex keys are left out: cap, button and countersunk heads differ.
    """
    found = _THREAD.fullmatch(" ".join(thread.split()))
    name = found[1].upper() + found[2] if found else ""
    row = table()["threads"].get(name)
    if row is None or drive.size is None:
        return None
    if drive.family == "hex":
        return _hexagon(name, row, drive.size)
    if drive.family in _NUMBERED:
        return _hexalobular(name, row, drive.size)
    return _cross(name, row, drive) if drive.family in _CROSS else None


def _hexagon(name: str, row: Mapping[str, Any], size: float) -> Message | None:
    if "iso" not in row or min(abs(size - row["iso"]), abs(size - row["din"])) < _SAME:
        return None
    if row["din"] != row["iso"]:
        return message("threads/two-hexagons", thread=name, across=row["iso"], older=row["din"])
    return message("threads/hexagon", thread=name, across=row["iso"])


def _hexalobular(name: str, row: Mapping[str, Any], size: float) -> Message | None:
    usual = row.get("hexalobular")
    if usual is None or size in (usual, row.get("older_hexalobular")):
        return None
    return message("threads/hexalobular", thread=name, drive=f"T{usual}")


def _cross(name: str, row: Mapping[str, Any], drive: Drive) -> Message | None:
    usual = row.get("cross")
    if usual is None or drive.size == usual:
        return None
    label = f"{_CROSS[drive.family]}{usual}"
    if name.startswith("ST"):
        return message("threads/tapping-screw", thread=name, drive=label)
    return message("threads/cross", thread=name, number=usual, drive=label)


def near_head(thread: str, drive: Drive) -> bool:
    """Whether a drive lies between what the standards give the next thread down and the next one up.

    Flange heads, small heads and some countries' series are that far off; that this is far enough is common
    practice. False where thread or drive are in no table; at its ends the thread's own head limits.
    """
    found = _THREAD.fullmatch(" ".join(thread.split()))
    column = _column(drive)
    if found is None or drive.size is None or not column:
        return False
    letters, size = found[1].upper(), float(found[2])
    heads = sorted(
        (float(name.removeprefix(letters)), row[column])
        for name, row in table()["threads"].items()
        if column in row and name.startswith(letters)
    )
    low = [head for thread_size, head in heads if thread_size <= size][-2:]
    high = [head for thread_size, head in heads if thread_size >= size][:2]
    return bool(low and high and low[0] - _SAME < drive.size < high[-1] + _SAME)


def _column(drive: Drive) -> str:
    if drive.family in _NUMBERED:
        return "hexalobular"
    return "iso" if drive.family == "hex" else "cross" if drive.family in _CROSS else ""
