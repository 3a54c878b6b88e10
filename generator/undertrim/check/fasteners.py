"""The fasteners of a record with the places they stand at, as many rules want them."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.check.findings import Subject
from undertrim.record.model import Fastener, Part, Prep
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class Held:
    """One line of `held_by`, where it stands, and what it holds."""

    pointer: Pointer
    thing: Part | Prep
    fastener: Fastener

    @property
    def typed(self) -> str:
        """The fastener as the record has it: `screw: T20`."""
        return f"{self.fastener.kind}: {self.fastener.what}"


def held(subject: Subject) -> Iterator[Held]:
    """Every fastener of every preparation and part, without those whose drive or kind the schema refused."""
    record = subject.record
    for section, things in (("preps", record.preps), ("parts", record.parts)):
        for thing in things.values():
            for index, fastener in enumerate(thing.held_by):
                if fastener.kind:
                    yield Held((section, thing.id, "held_by", index), thing, fastener)
