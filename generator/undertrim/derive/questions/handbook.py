"""Where the handbook shows how to find something out."""

from undertrim.record.model import VehicleRecord
from undertrim.record.source import Pointer
from undertrim.resources import table


def section(record: VehicleRecord, place: Pointer) -> str:
    """The page with its section, such as `how-to-measure.md#the-hole`; empty where there is none for it."""
    opening = record.openings.get(str(place[1])) if place[0] == "openings" and len(place) > 1 else None
    kind = opening.kind if opening else ""
    return next((row["at"] for row in table("questions")["how"] if _fits(row, place, kind)), "")


def _fits(row: dict[str, str], place: Pointer, kind: str) -> bool:
    wanted = row["about"].split("/")
    return (
        len(place) >= len(wanted)
        and row.get("kind", kind) == kind
        and all(word in ("*", str(step)) for word, step in zip(wanted, place, strict=False))
    )
