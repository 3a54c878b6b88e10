"""What is on the channel of what plays in an opening: all that is joined to it in parallel, as far as anybody knows."""

from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.margins import typed
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import Blank, Opening, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message

DIRECT = ("", "direct")
SIDES = ("left", "right")


@dataclass(frozen=True, slots=True)
class Part:
    """One speaker on a channel: its impedance now and as the factory fitted it, and how it is fed."""

    name: Value
    impedance: Quantity | Blank | None
    factory: Quantity | Blank | None
    fed_through: str

    @property
    def counted(self) -> tuple[bool, ...]:
        """Whether it loads the whole range: both may be where nobody knows how it is fed."""
        return (False, True) if self.fed_through == "unknown" else (self.fed_through in DIRECT,)


@dataclass(frozen=True, slots=True)
class Joined:
    """All speakers on one channel and side, the one asked about first; `unplaced` are those of which nobody said the channel."""

    parts: tuple[Part, ...]
    unplaced: tuple[str, ...] = ()

    @property
    def sets(self) -> list[tuple[Part, ...]]:
        """What may load the range of the first together: it and all that is counted, alone where it has a range of its own.

        Two where nobody knows how something is fed, without and with all of that: every speaker more lowers the load, so whatever is
        so lies between them.
        """
        first, others = self.parts[0], self.parts[1:]
        alone: list[tuple[Part, ...]] = [(first,)]
        sure = (first, *(part for part in others if False not in part.counted))
        most = (first, *(part for part in others if True in part.counted))
        together = dict.fromkeys((sure, most))
        return [*(alone if False in first.counted else ()), *(together if True in first.counted else ())]

    @property
    def ranges(self) -> list[tuple[Part, ...]]:
        """What may load a range together, whichever part is asked about: all that is counted, and each alone that has a range of its own."""
        sure = tuple(part for part in self.parts if False not in part.counted)
        most = tuple(part for part in self.parts if True in part.counted)
        alone = ((part,) for part in self.parts if False in part.counted)
        return list(dict.fromkeys(one for one in (sure, most, *alone) if one))

    @property
    def surely(self) -> list[tuple[Part, ...]]:
        """Of `ranges` those that load one for sure, although nobody knows how some of it is fed."""
        return [one for one in self.ranges if len({part.counted for part in one} - {(True,)}) == 0 or len(one) == 1]

    @property
    def missing(self) -> list[Message]:
        """The impedances that are needed and not known, each named with how."""
        wanted = dict.fromkeys(part for parts in self.sets for part in parts)
        numbers = (typed(message("fit-speaker/impedance-of", of=part.name), part.impedance) for part in wanted)
        return [number.named for number in numbers if number.value is None]

    @property
    def unfed(self) -> list[Value]:
        """Of which speakers it is not known how they are fed."""
        return [part.name for part in self.parts if part.fed_through == "unknown"]

    @property
    def factory(self) -> float | None:
        """The lowest load that the factory speakers may have made, in ohm; None where it is not known."""
        made = [[part.factory for part in parts] for parts in self.sets]
        if any(not isinstance(one, Quantity) for parts in made for one in parts):
            return None
        return min(total([one for one in parts if isinstance(one, Quantity)]) for parts in made)


def join(
    record: VehicleRecord,
    opening: Opening,
    car: Mapping[str, str],
    new: Quantity | Blank | None,
    visit: Mapping[str, Gear],
) -> Joined:
    """What is on the channel of an opening in one car, with new gear of that impedance in it."""
    first = Part(message(f"fit-{opening.kind}/the-{opening.kind}"), new, opening.impedance, opening.then_fed_through)
    others = (_part(other, visit) for other in sharing(record, opening, car, visit))
    return Joined((first, *others), tuple(one.name for one in unplaced(record, opening, car, visit)))


def on_channels(
    record: VehicleRecord, car: Mapping[str, str], visit: Mapping[str, Gear]
) -> dict[str, tuple[Joined, ...]]:
    """What one car has on each channel of which the record knows, for each side of the car alone."""
    here = [one for one in _on_channels(record, visit) if one.when.holds(car)]
    unplaced = tuple(one.name for one in here if not one.channel)
    found: dict[str, tuple[Joined, ...]] = {}
    for name in dict.fromkeys(one.channel for one in here if one.channel):
        sides = ([one for one in here if one.channel == name and (not one.each or side in one.each)] for side in SIDES)
        found[name] = tuple(Joined(tuple(_part(one, visit) for one in side), unplaced) for side in sides if side)
    return found


def unplaced(
    record: VehicleRecord, opening: Opening, car: Mapping[str, str], fitted: Container[str]
) -> Iterator[Opening]:
    """The openings that may be on the same channel, since nobody said on which they, or this one, are."""
    if not opening.channel:
        yield opening
    for other in _on_channels(record, fitted):
        if other.id != opening.id and not other.channel and other.when.holds(car):
            yield from [other] if _beside(opening, other) else ()


def _part(opening: Opening, visit: Mapping[str, Gear]) -> Part:
    new = visit.get(opening.id)
    impedance = new.facts.impedance if new else opening.impedance
    return Part(opening.name, impedance, opening.impedance, opening.then_fed_through if new else opening.fed_through)


def parallel(loads: Sequence[float]) -> float:
    """Several loads in parallel, in ohm: 1/Z is the sum of 1/z; 0 where one of them is 0."""
    return 1 / sum(1 / one for one in loads) if all(loads) else 0.0


def total(parts: Sequence[Quantity]) -> float:
    """Impedances in parallel, in ohm."""
    return parallel([part.value for part in parts])


def sharing(record: VehicleRecord, opening: Opening, car: Mapping[str, str], fitted: Container[str]) -> list[Opening]:
    """The other openings in which one car has something on the same channel, at one same side at least; `fitted` has the ids of those that get new gear."""
    return [
        other
        for other in _on_channels(record, fitted)
        if other.id != opening.id and other.channel and other.channel == opening.channel
        if other.when.holds(car) and _beside(opening, other)
    ]


def _on_channels(record: VehicleRecord, fitted: Container[str]) -> list[Opening]:
    """Those that are joined to a channel; a place that is empty, and stays so, loads nothing."""
    every = record.openings.values()
    return [one for one in every if one.on_channel and (not one.empty or one.id in fitted)]


def _beside(one: Opening, other: Opening) -> bool:
    """Whether two openings have a side in common; what is there once may be on either."""
    return not one.each or not other.each or bool(set(one.each) & set(other.each))
