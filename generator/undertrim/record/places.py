"""Where everything in a whole was typed: the lines and columns of its values and keys, taken over from the file as read.

What stands in the whole where it was typed, which is most of it, is there from the start.
"""

from dataclasses import dataclass, field
from typing import Any

from undertrim.record.problem import Position
from undertrim.record.source import Data, Pointer, Source


@dataclass(slots=True)
class Places:
    """The places of a whole while it is made from `source`; `inherited` as in `Origin`."""

    source: Source
    values: dict[Pointer, Position] = field(init=False)
    keys: dict[Pointer, Position] = field(init=False)
    quoted: set[Pointer] = field(init=False)
    inherited: dict[Pointer, Pointer] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.values, self.keys = dict(self.source.values), dict(self.source.keys)
        self.quoted = set(self.source.quoted)

    def of(self, typed: Pointer) -> Position:
        """Where a value was typed."""
        return self.source.values[typed]

    def note(self, place: Pointer, typed: Pointer) -> None:
        """A value stands at a place that was typed elsewhere, or there."""
        if place is typed:
            return
        if typed in self.source.values:
            self.values[place] = self.source.values[typed]
        if typed in self.source.quoted:
            self.quoted.add(place)

    def note_key(self, place: Pointer, typed: Pointer) -> None:
        """The same for a key."""
        if place is not typed and typed in self.source.keys:
            self.keys[place] = self.source.keys[typed]

    def stand(self, place: Pointer, position: Position) -> None:
        """A field stands at a place that nobody typed as such."""
        self.values[place] = self.keys[place] = position

    def stand_key(self, place: Pointer, position: Position) -> None:
        """A key stands where another one was typed."""
        self.keys[place] = position

    def carry(self, place: Pointer, other: Pointer) -> None:
        """All that stands below a place stands below another one too, on the same lines."""
        known: tuple[dict[Pointer, Any], ...] = (self.values, self.keys, self.inherited)
        for table in known:
            for spot in [spot for spot in table if spot[: len(other)] == other]:
                table[(*place, *spot[len(other) :])] = table[spot]
        self.quoted |= {(*place, *spot[len(other) :]) for spot in self.quoted if spot[: len(other)] == other}

    def copy(self, place: Pointer, other: Pointer, value: Data) -> None:
        """A field has the value, a text or a list of texts, of another one of the whole."""
        self.inherited[place] = self.inherited.get(other, other)
        for step in ((), *((i,) for i in range(len(value)))) if isinstance(value, list) else ((),):
            self.values[*place, *step] = self.values[*other, *step]
        if other in self.keys:
            self.keys[place] = self.keys[other]
