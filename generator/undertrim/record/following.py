"""What a field is where nothing is said of it: from the id, from the months of build, from how fasteners are spread."""

import re
from collections.abc import Callable
from dataclasses import dataclass

from undertrim.record import schema
from undertrim.record.source import Data

_MONTH = re.compile(r"(19|20)([0-9]{2})-(0[1-9]|1[0-2])")


@dataclass(frozen=True, slots=True)
class Following:
    """A value that follows, and the field beside it that it follows from; empty for the id."""

    value: Data
    field: str = ""


def _from_id(name: str, _: Data) -> Following:
    """`front-door-panel` is called "Front door panel"."""
    words = name.replace("-", " ").strip() or "-"
    return Following(words[0].upper() + words[1:])


def _from_built(_: str, vehicle: Data) -> Following | None:
    """The years of the first and the last month that are covered: built until (not in) 2018-01 ends with 2017."""
    built = vehicle.get("built")
    first, end = (_month(built.get(name)) for name in ("from", "to")) if isinstance(built, dict) else ("", "")
    if not first or first >= end:
        return None
    last = int(end[:4]) - end.endswith("-01")
    return Following({"first": first[:4], "last": str(last)}, "built")


def _month(value: Data) -> str:
    """A month as typed; empty for what is none."""
    return value if isinstance(value, str) and _MONTH.fullmatch(value) else ""


def _from_edges(_: str, fastener: Data) -> Following | None:
    """The sum over the edges."""
    at = fastener.get("at")
    if not isinstance(at, dict) or not at or not all(map(schema.whole, at.values())):
        return None
    return Following(str(sum(map(int, at.values()))), "at")


FOLLOWING: dict[str, Callable[[str, Data], Following | None]] = {
    "id": _from_id,
    "built": _from_built,
    "at": _from_edges,
}
"""By the word that stands in the schema: from the id of a mapping and what it says to the value that follows."""
