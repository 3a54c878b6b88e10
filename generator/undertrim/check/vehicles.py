"""The vehicles among the cards of a collection."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from undertrim.check.findings import Card
from undertrim.check.names import folded
from undertrim.record.implied import LISTS
from undertrim.record.model import VehicleFacts


@dataclass(frozen=True, slots=True)
class VehicleCard:
    """A card that is known to be a vehicle's."""

    card: Card
    facts: VehicleFacts

    @property
    def id(self) -> str:
        """The record's id, the stem of its file."""
        return self.card.path.stem

    @property
    def file(self) -> str:
        """The file as messages name it."""
        return self.card.path.as_posix()

    @property
    def make(self) -> str:
        """The make as names are compared: 'Kelbrook', 'kelbrook ' and 'Kel-Brook' are one."""
        return folded(self.facts.make)

    @property
    def model(self) -> str:
        """The model as names are compared."""
        return folded(self.facts.model)


def vehicles(cards: Sequence[Card]) -> Iterator[VehicleCard]:
    """The cards of vehicles, in the order given."""
    for card in cards:
        if isinstance(card.facts, VehicleFacts):
            yield VehicleCard(card, card.facts)


def share(one: Collection[str], other: Collection[str]) -> bool:
    """Whether two lists of sides, bodies or the like have something in common; an empty one stands for everything."""
    return not one or not other or not set(one).isdisjoint(other)


def alike(one: VehicleFacts, other: VehicleFacts) -> bool:
    """Whether one car could be of both: no list by which cars are told apart keeps them apart."""
    return all(share(getattr(one, listed), getattr(other, listed)) for listed in LISTS.values())
