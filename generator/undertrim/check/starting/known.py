"""The records that may already have a car: the same make, model and months, however the names are spelt."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from undertrim.check import months, names
from undertrim.check.vehicles import alike
from undertrim.record.model import Built, VehicleFacts, VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, message

_YEARS = re.compile(r"-([0-9]{4})-([0-9]{4})(?:-|$)")


@dataclass(frozen=True, slots=True)
class Known:
    """A record of cars that a new one would be of too: the months of both, and whether its names are the same but for spelling that does not count."""

    entry: Entry
    facts: VehicleFacts
    span: Built
    same: bool

    @property
    def said(self) -> Message:
        """Why no record is begun."""
        names_of = {"make": self.facts.make, "model": self.facts.model, "address": self.entry.address}
        code = "same" if self.same else "near"
        return message(f"starting/{code}", first=self.span.from_, end=self.span.to, **names_of)


def known(place: Workspace, facts: VehicleFacts) -> tuple[Known, ...]:
    """All of them, those with the same names first."""
    found = [one for path in _near(place, facts) if (one := _known(place.load(path), facts))]
    return tuple(sorted(found, key=lambda one: not one.same))


def _near(place: Workspace, facts: VehicleFacts) -> Iterator[Path]:
    """The files whose folder is called nearly like the make, and whose years touch those of the car: no other need be read."""
    for path in place.every("vehicles"):
        years = _YEARS.search(path.stem)
        touching = not years or (int(years[1]) <= facts.built.to.year and facts.built.from_.year <= int(years[2]))
        if touching and _alike(path.parent.name.removesuffix("-make"), facts.make):
            yield path


def _known(entry: Entry, new: VehicleFacts) -> Known | None:
    if not isinstance(entry.record, VehicleRecord):
        return None
    there = entry.record.vehicle
    span = months.common(there.built, new.built)
    told_apart = there.tell and new.tell and there.tell != new.tell
    if span is None or told_apart or not alike(there, new) or not _one_model(there, new):
        return None
    same = names.folded(there.make) == names.folded(new.make) and names.folded(there.model) == names.folded(new.model)
    return Known(entry, there, span, same)


def _one_model(one: VehicleFacts, other: VehicleFacts) -> bool:
    """Whether the models are spelt nearly alike, or one is also called like the other."""
    called = (*one.also_called, one.model), (*other.also_called, other.model)
    return _alike(one.model, other.model) or any(
        names.folded(a) == names.folded(b) for a in called[0] for b in called[1]
    )


def _alike(one: str, other: str) -> bool:
    folded = names.folded(one), names.folded(other)
    return folded[0] == folded[1] or any(names.near_pairs(folded))
