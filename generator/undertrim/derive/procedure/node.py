"""One thing to do at one side: what a layout is made of.

Node ids are the record's ids; a side is added as `@left`. An opening's node is `open:<id>`, a usual preparation's `usual:<id>`.
"""

from dataclasses import dataclass

from undertrim.record.model import Blank, Opening, Part, Prep, Side
from undertrim.record.units import Quantity

OPENING = "open:"


@dataclass(frozen=True, slots=True)
class Node:
    """One thing to do at one side (None where it exists once)."""

    id: str
    thing: Part | Prep | Opening
    side: Side | None = None

    @property
    def minutes(self) -> float | None:
        """Recorded time in minutes; None if there is none."""
        return None if isinstance(self.thing, Opening) else minutes(self.thing.takes)


def minutes(takes: Quantity | Blank | None) -> float | None:
    """A recorded time in minutes; None where it is not known."""
    return takes.value / 60 if isinstance(takes, Quantity) else None


def node_id(name: str, side: str | None) -> str:
    """The node id of a part, preparation or opening at a side."""
    return f"{name}@{side}" if side else name
