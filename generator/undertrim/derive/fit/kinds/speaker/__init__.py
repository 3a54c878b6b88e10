"""How a speaker goes into its opening."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Never

from undertrim.derive.fit.channel_load import load
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker import takes
from undertrim.derive.fit.kinds.speaker.balance import balance
from undertrim.derive.fit.kinds.speaker.fit import Mount, on_mount
from undertrim.derive.fit.kinds.speaker.names import BASKET, MOUNTING_DEPTH
from undertrim.derive.fit.margins import typed
from undertrim.derive.fit.nearest import Size
from undertrim.derive.fit.outline import outline
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Gear, of_kind, only
from undertrim.derive.fit.verdict import Fit, decide
from undertrim.record.model import VehicleRecord, When
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.words import Message


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a speaker."""

    opening: SpeakerOpening
    _mounts: list[Mount] = field(default_factory=list)

    def conditions(self, record: VehicleRecord) -> Iterator[When]:
        """Which other speakers are there."""
        return (other.when for other in record.openings.values())

    def fit(self, place: Place, gear: Gear) -> Fit:
        """By size, on the car or a spacer, and by the load it makes of its channel.

        Spacers that are made for other openings are left on the shelf; those that suit this one are held against it all the same.
        """
        speaker, vehicle = only(gear, SpeakerGear), place.vehicle
        found = place.sized(gear, place.between, lambda: self.by_size(gear, place.between, vehicle.usual))
        more = load(vehicle.record, self.opening, place.car, speaker.facts.impedance, vehicle.visit)
        against = balance(vehicle.record, self.opening, place.car, speaker.facts, vehicle.visit)
        checks, notes = (*found.checks, *more.checks), (*found.notes, *more.notes, *against)
        return decide(found.gear, found.name, checks, found.parts, found.to_get, notes, found.way)

    def by_size(self, gear: Gear, between: Sequence[Gear], usual: Clearances) -> Fit:
        """On the car, or on a spacer."""
        return on_mount(only(gear, SpeakerGear), self._mount(usual), of_kind(between, SpacerGear))

    def _mount(self, usual: Clearances) -> Mount:
        """The opening as every speaker of the stock meets it; kept, since they are tried one after the other."""
        if not self._mounts or self._mounts[0].usual is not usual:
            self._mounts[:] = [Mount(self.opening, usual)]
        return self._mounts[0]

    def limits(self, usual: Clearances) -> Iterator[Message]:
        """The largest basket, the smallest flange, the depth and the room before it."""
        return takes.limits(self.opening, usual)

    def needs(self) -> Iterator[Never]:
        """Nothing that a record knows before there is gear."""
        return iter(())

    def size(self, gear: Gear) -> Size:
        """Basket and mounting depth."""
        facts = only(gear, SpeakerGear).facts
        basket = outline(BASKET, facts.basket)
        return basket.width, basket.height, typed(MOUNTING_DEPTH, facts.depth)
