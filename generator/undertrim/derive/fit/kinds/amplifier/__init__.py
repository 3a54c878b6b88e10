"""How an amplifier goes into its place, and what it must be fed, woken and loaded with."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Never

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.amplifier import budget, feed, inputs, loads, turning, waking
from undertrim.derive.fit.margins import limit
from undertrim.derive.fit.nearest import Size
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Gear, only
from undertrim.derive.fit.verdict import Fit, decide
from undertrim.record.model import VehicleRecord, When
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class Room:
    """A place for an amplifier."""

    opening: AmplifierOpening

    def conditions(self, record: VehicleRecord) -> Iterator[When]:
        """Which speakers and other amplifiers are there, which way the cable goes, and what wakes it."""
        yield from (other.when for other in record.openings.values())
        yield from (run.when for run in record.runs.values())

    def fit(self, place: Place, gear: Gear) -> Fit:
        """By size, in every turned position, and by feed, loads, input and turn-on."""
        amplifier = only(gear, AmplifierGear)
        found = place.sized(gear, (), lambda: self.by_size(gear, (), place.vehicle.usual))
        if found.kind == "does-not-fit":  # what would feed it is of no use then
            return found
        fed = feed.feed(place, self.opening, amplifier)
        loaded = loads.loads(place, amplifier.facts)
        heard = inputs.match(place, self.opening, amplifier.facts)
        woken = waking.match(place, self.opening, amplifier, heard)
        more = (fed, loaded, heard.part_of, woken)
        checks = (*found.checks, *(check for one in more for check in one.checks))
        parts, to_get = heard.part_of.parts, tuple(item for one in more for item in one.to_get)
        notes = (
            *found.notes,
            *(note for one in more for note in one.notes),
            *budget.notes(place, self.opening, feed.in_all(place, self.opening, amplifier)),
        )
        whole = decide(found.gear, found.name, checks, parts, to_get, notes)
        return replace(whole, way=found.way, bring=fed.bring)

    def by_size(self, gear: Gear, between: Sequence[Gear], usual: Clearances) -> Fit:
        """Turned as it fits best, through the way in, with room for air."""
        return turning.fit(only(gear, AmplifierGear), self.opening, usual)

    def limits(self, usual: Clearances) -> Iterator[Value]:
        """The largest box, and what passes on the way to it."""
        sides = turning.sides(self.opening.space)
        if all(side.value is not None for side in sides):
            across, up, deep = (limit(side.value or 0, side) for side in sides)
            yield message("fit-amplifier/takes-box", width=across, height=up, depth=deep)
        way = turning.passage(self.opening)
        if all(side.value is not None for side in way):
            width, height = (limit(side.value or 0, side) for side in way)
            yield message("fit-amplifier/takes-way", width=width, height=height)

    def needs(self) -> Iterator[Never]:
        """Nothing that a record knows before there is gear."""
        return iter(())

    def size(self, gear: Gear) -> Size:
        """The amplifier with its terminals."""
        width, height, depth = turning.sides(only(gear, AmplifierGear).facts.size)
        return width, height, depth
