"""Where in a record as typed something of the whole stands."""

from collections.abc import Iterator

from undertrim.record import shapes
from undertrim.record.problem import Position
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer, Source


class TypedPlaces:
    """The places of one source. What is taken from another record stands nowhere in it."""

    def __init__(self, source: Source) -> None:
        typed = source.as_typed
        self._source = source
        self._values = {position: place for place, position in typed.values.items()}
        self._keys = {position: place for place, position in typed.keys.items()}

    def value(self, place: Pointer) -> Pointer | None:
        """Where the value at a place of the whole was typed; None where nobody did."""
        return self._found(self._values, self._source.values.get(place), place)

    def blocks(self, place: Pointer) -> Iterator[Pointer]:
        """Where the thing at a place of the whole was typed: under its key, and where its value begins if that is elsewhere, as an entry of a list."""
        by_key = self._found(self._keys, self._source.keys.get(place), place) if place else ()
        by_value = self.value(place) if place else None
        yield from dict.fromkeys(spot for spot in (by_key, by_value) if spot is not None)

    def _found(self, known: dict[Position, Pointer], position: Position | None, place: Pointer) -> Pointer | None:
        origin = self._source.origin
        if position is None or (origin and origin.is_taken(place)):
            return None
        return place if origin is None else known.get(position)

    def form_and_others(self, place: Pointer) -> list[Data]:
        """The cars of the form that a place of the whole is in, then those of the other forms of the same thing; nothing where it is in none."""
        origin = self._source.origin
        for home, names in origin.forms.items() if origin else ():
            depth = len(home)
            if place[: depth - 1] == home[:-1] and len(place) >= depth and place[depth - 1] in names:
                found = [place[depth - 1], *(name for name in names if name != place[depth - 1])]
                things = [_at(self._source.data, (*home[:-1], name)) for name in found]
                return [thing["when"] for thing in things if isinstance(thing, dict) and "when" in thing]
        return []


def _at(data: Data, place: Pointer) -> Data:
    for step in place:
        data = data.get(step) if isinstance(data, dict) else data[int(step)] if isinstance(data, list) else None
    return data


def shape_at(place: Pointer) -> Shape | None:
    """How what stands at a place of the whole of a vehicle may be typed; None for a place of gear, which is typed as it is."""
    shape: Shape | None = shapes.whole("vehicle")
    for step in place:
        if shape is None:
            return None
        shape = shape.items if isinstance(step, int) else shape.fields.get(step, shape.other)
    return shape
