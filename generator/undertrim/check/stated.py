"""The sizes that the fields of one part, preparation or opening state, and its texts."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, field

from undertrim.check import mentions
from undertrim.check.findings import Subject
from undertrim.check.texts import NOMINAL, is_prose
from undertrim.record import drives, units
from undertrim.record.drives import Drive, DriveError
from undertrim.record.fields import Field
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity, UnitError


@dataclass(slots=True)
class Stated:
    """What the fields of one thing say, and the texts beside them."""

    place: Pointer
    drives: list[Drive] = field(default_factory=list)
    threads: list[str] = field(default_factory=list)
    quantities: list[Quantity] = field(default_factory=list)
    texts: list[tuple[Pointer, str]] = field(default_factory=list)

    def of(self, kind: str) -> list[Quantity]:
        """The quantities of one kind."""
        return [quantity for quantity in self.quantities if quantity.kind == kind]


def stated(subject: Subject, sections: Collection[str]) -> Iterator[Stated]:
    """Everything under each id of the sections. One in which the schema refused something is passed over."""
    found: dict[Pointer, Stated] = {}
    for item in subject.fields:
        if len(item.pointer) > 2 and str(item.pointer[0]) in sections and isinstance(item.value, str):
            place = item.pointer[:2]
            _add(found.setdefault(place, Stated(place)), item)
    yield from (thing for thing in found.values() if subject.intact(thing.place))


def _add(thing: Stated, item: Field) -> None:
    spec = item.node.schema
    try:
        if "quantity" in spec:
            thing.quantities.append(units.parse(item.value, spec["quantity"]["kind"]))
        elif "drive" in spec:
            thing.drives.append(drives.parse(item.value))
    except (UnitError, DriveError):
        return
    if item.pointer[-1] == "thread":
        thing.threads.append(item.value.partition("x")[0])
    elif item.pointer[-1] == NOMINAL:
        said = mentions.find(item.value)
        thing.quantities.extend(quantity for mention in said for quantity in mention.quantities)
    elif is_prose(item):
        thing.texts.append((item.pointer, item.value))
