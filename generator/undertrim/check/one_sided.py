"""The tethers and fasteners that only one side has, with where they stand: shared by the rules about them."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record.model import Fastener, Part, Prep, Side, Tether, VehicleRecord
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class OneSided:
    """A tether or fastener of a thing, on one side alone; `each` are the sides that the thing is done on."""

    pointer: Pointer
    thing: Part | Prep
    item: Tether | Fastener
    side: Side
    each: tuple[Side, ...]


def one_sided(record: VehicleRecord) -> Iterator[OneSided]:
    """All of a record."""
    for section, things in (("preps", record.preps), ("parts", record.parts)):
        for thing in things.values():
            for place, item in _items(thing):
                if item.side:
                    each = thing.each if isinstance(thing, Part) else ()
                    yield OneSided((section, thing.id, *place), thing, item, item.side, each)


def _items(thing: Part | Prep) -> Iterator[tuple[Pointer, Tether | Fastener]]:
    for index, fastener in enumerate(thing.held_by):
        yield ("held_by", index), fastener
    for name, tether in thing.tethers.items() if isinstance(thing, Part) else ():
        yield ("tethers", name), tether
