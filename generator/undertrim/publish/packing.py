"""Data for scripts with each thing once: a joint of one lead set is nine tenths the joint of the next, and every row names its keys again.

Packed data is a list of three: `shapes` (the keys of each sort of object), `table` (what occurs more than once), and the whole. A value in the last two is

- a whole number: the value at that place of the table;
- a list that begins with a number: from 0 on an object of that shape with its values in order, below that one of `LIST`, `NUMBERS`, `NUMBER` and `RUNS`;
- anything else: itself.

`assets/undertrim/packed.js` makes it whole again on a page, and `unpacked` here. What programs of others read (the JSON beside a page) is not packed.
"""

import json
from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from undertrim.publish.encoding import compact

LIST, NUMBERS, NUMBER, RUNS = -1, -2, -3, -4
"""A list of values; one of numbers alone, as they are; a number; whole numbers that rise by one, as the first and the last of each run."""

_LEAST = 4
"""What is shorter than so many characters is not led to."""

Packed = list[Any]


def packed(data: object) -> Packed:
    """Anything that can be published, packed."""
    return _Packing().whole(json.loads(compact(data)))


def unpacked(made: Packed) -> Any:
    """What was packed."""
    shapes, table, root = made

    def whole(one: Any) -> Any:
        if type(one) is int:
            return whole(table[one])
        if not isinstance(one, list):
            return one
        sort, *rest = one
        if sort == NUMBER:
            return rest[0]
        if sort == NUMBERS:
            return rest
        if sort == RUNS:
            return [number for first, last in zip(rest[::2], rest[1::2], strict=True) for number in range(first, last + 1)]  # fmt: skip
        found = map(whole, rest)
        return list(found) if sort == LIST else dict(zip(shapes[sort], found, strict=True))

    return whole(root)


class _Packing:
    """Gives each different value a number, counts how often it stands in another, and writes what is there more than once but once."""

    def __init__(self) -> None:
        self.known: dict[Any, int] = {}
        self.values: list[Any] = []
        """By number: the value itself, where it has parts with their numbers in the place of these."""
        self.uses: list[int] = []

    def whole(self, data: Any) -> Packed:
        root = self._number(data)
        often = [one for one, uses in enumerate(self.uses) if uses > 1 and self._is_long(one)]
        places = {one: place for place, one in enumerate(sorted(often, key=lambda one: -self.uses[one]))}
        shapes: dict[tuple[str, ...], int] = {}

        def inner(one: int) -> Any:
            return places[one] if one in places else written(one)

        def written(one: int) -> Any:
            value = self.values[one]
            if isinstance(value, _Object):
                return [shapes.setdefault(value.keys, len(shapes)), *map(inner, value.parts)]
            return [LIST, *map(inner, value)] if isinstance(value, tuple) else value

        table = [written(one) for one in places]
        whole = written(root)
        return [list(map(list, shapes)), table, whole]

    def _is_long(self, one: int) -> bool:
        value = self.values[one]
        return value is not None and not isinstance(value, bool) and (not isinstance(value, str) or len(value) >= _LEAST - 2)  # fmt: skip

    def _number(self, value: Any) -> int:
        """The number of a value; those of its parts are counted where it is met first."""
        if type(value) is str:  # as most are
            return self._entered(value, value, ())
        if isinstance(value, dict):
            made: Any = _Object(tuple(value), tuple(map(self._number, value.values())))
            return self._entered(("object", made.keys, made.parts), made, made.parts)
        if isinstance(value, list) and not (value and all(type(one) in (int, float) for one in value)):
            parts = tuple(map(self._number, value))
            return self._entered(("list", parts), parts, parts)
        if isinstance(value, list):
            return self._entered(("numbers", repr(value)), _numbers(value), ())
        plain = value if value is None or isinstance(value, bool) else [NUMBER, value]
        return self._entered((type(value), repr(value)), plain, ())

    def _entered(self, key: str | tuple[Any, ...], value: Any, parts: Sequence[int]) -> int:
        found = self.known.get(key)
        if found is None:
            found = self.known[key] = len(self.values)
            self.values.append(value)
            self.uses.append(0)
            for part in parts:
                self.uses[part] += 1
        return found


class _Object:
    """An object by its keys and the numbers of its values."""

    __slots__ = ("keys", "parts")

    def __init__(self, keys: tuple[str, ...], parts: tuple[int, ...]) -> None:
        self.keys, self.parts = keys, parts


def _numbers(values: list[int | float]) -> list[Any]:
    """A list of numbers, by its runs where that is shorter."""
    whole = all(type(one) is int for one in values)
    runs = [RUNS, *_runs(values)] if whole else []
    return runs if runs and len(runs) <= len(values) else [NUMBERS, *values]


def _runs(values: Sequence[int | float]) -> Iterator[int | float]:
    for _, run in groupby(enumerate(values), lambda one: one[1] - one[0]):
        numbers = [number for _, number in run]
        yield from (numbers[0], numbers[-1])
