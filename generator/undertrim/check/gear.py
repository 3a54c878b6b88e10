"""The gear among the cards of a collection, and whether two pieces are one thing."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass

from undertrim.check.findings import Card
from undertrim.check.names import folded
from undertrim.record.gear import GearFacts
from undertrim.record.units import Quantity

_WORDS = frozenset(("kind", "maker", "model", "note", "contains", "terminals"))
"""Fields that are names and words, and measure nothing."""


@dataclass(frozen=True, slots=True)
class GearCard:
    """A card that is known to be a piece of gear's."""

    card: Card
    facts: GearFacts

    @property
    def file(self) -> str:
        """The file as messages name it."""
        return self.card.path.as_posix()

    @property
    def maker(self) -> str:
        """The maker as names are compared, without capitals, accents, spaces and hyphens."""
        return folded(self.facts.maker)

    @property
    def model(self) -> str:
        """The model as names are compared: 'H-F14' and 'hf 14' are one."""
        return folded(self.facts.model)


def gear(cards: Sequence[Card]) -> Iterator[GearCard]:
    """The cards of gear, in the order given."""
    for card in cards:
        if isinstance(card.facts, GearFacts):
            yield GearCard(card, card.facts)


def same_measures(one: GearFacts, other: GearFacts) -> bool:
    """Whether two pieces agree in everything that both state, names and words aside, and both state some dimensions.

    One of the two may know less than the other.
    """
    first, second = dict(_measures(one)), dict(_measures(other))
    common = first.keys() & second.keys()
    dimensions = [name for name in common if isinstance(first[name], float)]
    return len(dimensions) > 1 and all(first[name] == second[name] for name in common)


def _measures(facts: GearFacts) -> Iterator[tuple[tuple[str, ...], object]]:
    """Every value that is stated, by the fields that lead to it; a quantity as a number in its canonical unit."""
    for field in fields(facts):
        if field.name not in _WORDS:
            yield from _values((field.name,), getattr(facts, field.name))


def _values(place: tuple[str, ...], value: object) -> Iterator[tuple[tuple[str, ...], object]]:
    if isinstance(value, Quantity):
        yield place, round(value.value, 2)
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _values((*place, str(key)), inner)
    elif is_dataclass(value):
        for field in fields(value):
            yield from _values((*place, field.name), getattr(value, field.name))
    elif value not in (None, "", ()):
        yield place, value
