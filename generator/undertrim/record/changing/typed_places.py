"""Where in a record as typed something of the whole stands."""

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

    def block(self, place: Pointer) -> Pointer | None:
        """Where the thing at a place of the whole was typed: under its key, or as an entry of a list."""
        if not place:
            return ()
        by_key = self._found(self._keys, self._source.keys.get(place), place)
        return self.value(place) if by_key is None else by_key

    def _found(self, known: dict[Position, Pointer], position: Position | None, place: Pointer) -> Pointer | None:
        origin = self._source.origin
        if position is None or (origin and origin.is_taken(place)):
            return None
        return place if origin is None else known.get(position)

    def form(self, place: Pointer) -> Data:
        """The cars of the form that a place of the whole is in, as its `when` says them; None where it is in none."""
        origin, block = self._source.origin, self._source.data
        for depth, step in enumerate(place, 1):
            block = block.get(step) if isinstance(block, dict) else None
            if origin and isinstance(block, dict) and any(place[:depth] == spot for spot in self._forms()):
                return block.get("when")
        return None

    def _forms(self) -> set[Pointer]:
        origin = self._source.origin
        assert origin
        return {(*home[:-1], name) for home, names in origin.forms.items() for name in names}


def shape_at(place: Pointer) -> Shape | None:
    """How what stands at a place of the whole of a vehicle may be typed."""
    shape: Shape | None = shapes.whole("vehicle")
    for step in place:
        if shape is None:
            return None
        shape = shape.items if isinstance(step, int) else shape.fields.get(step, shape.other)
    return shape
