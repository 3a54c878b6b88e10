"""One thing to do at one side: what a layout is made of.

Node ids are the record's ids; a side is added as `@left`. The node of an opening, and of what is reached for, is `open:<id>`, a usual preparation's `usual:<id>`.
"""

from dataclasses import dataclass

from undertrim.record.model import OPENINGS, Blank, Opening, Part, Prep, Reached, Side, Thing
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity

OPENING = "open:"
"""What the node of a job begins with: it may have the id of a part."""

SECTIONS: dict[type[Part | Prep | Opening], str] = {
    Part: "parts",
    Prep: "preps",
    **dict.fromkeys(OPENINGS.values(), "openings"),
}


def home(thing: Part | Prep | Opening | Reached) -> Pointer:
    """Where the record describes a thing."""
    return (thing.section if isinstance(thing, Reached) else SECTIONS[type(thing)], thing.id)


@dataclass(frozen=True, slots=True)
class Node:
    """One thing to do at one side (None where it exists once)."""

    id: str
    thing: Part | Prep | Opening | Reached
    side: Side | None = None
    record_slots: tuple[int, ...] = ()
    """The numbers that its fasteners have in the record, where it does not have all of them."""

    @classmethod
    def of(cls, name: str, thing: Part | Prep | Opening | Reached, side: Side | None) -> "Node":
        """A thing as it is on one side."""
        made = thing.at_side(side) if isinstance(thing, Part) else thing
        slots = thing.slots(side) if made is not thing and isinstance(thing, Part) else ()
        return cls(node_id(name, side), made, side, slots)

    @property
    def worked(self) -> Thing:
        """What a step is about: no step is about a thing that is only reached for."""
        assert not isinstance(self.thing, Reached)
        return self.thing

    def slot(self, number: int) -> int:
        """The number in the record of one of its fasteners."""
        return self.record_slots[number] if self.record_slots else number

    @property
    def minutes(self) -> float | None:
        """Recorded time in minutes; None if there is none."""
        return None if isinstance(self.thing, Opening | Reached) else minutes(self.thing.takes)


def minutes(takes: Quantity | Blank | None) -> float | None:
    """A recorded time in minutes; None where it is not known."""
    return takes.value / 60 if isinstance(takes, Quantity) else None


def node_id(name: str, side: str | None) -> str:
    """The node id of a part, preparation or opening at a side."""
    return f"{name}@{side}" if side else name
