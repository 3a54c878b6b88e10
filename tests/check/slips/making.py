"""What slips are made with: every value of a record with the keys that lead to it, and copies with one value changed."""

import re
from collections.abc import Callable, Iterator
from typing import Any

from undertrim.record.copying import copied

Data = dict[str, Any]
Pointer = tuple[str | int, ...]
Spoilt = Iterator[tuple[str, Data]]
Slip = Callable[[Data], Spoilt]

SLIPS: dict[str, Slip] = {}
"""Every slip by its name."""

GONE = object()
"""Stands for a value that is left out."""

_WORDS_ONLY = ("evidence", "conflicts", "verified", "variants")
"""Sections that `values` passes over: they state no fact of the car, or have slips of their own."""


def slip(made: Slip) -> Slip:
    """Registers a slip by its name."""
    assert made.__name__ not in SLIPS
    SLIPS[made.__name__] = made
    return made


def values(data: Any, pointer: Pointer = ()) -> Iterator[tuple[Pointer, Any]]:
    """Every key's and every list entry's value, outermost first, with the keys that lead to it."""
    pairs = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for key, value in pairs:
        if not pointer and key in _WORDS_ONLY:
            continue
        yield (*pointer, key), value
        yield from values(value, (*pointer, key))


def at(data: Any, pointer: Pointer) -> Any:
    """The value that the keys lead to."""
    for key in pointer:
        data = data[key]
    return data


def changed(data: Data, pointer: Pointer, value: Any) -> Data:
    """A copy with another value there; GONE takes it out, and with it a list or mapping that is then empty."""
    whole: Data = copied(data)
    inner = at(whole, pointer[:-1])
    if value is not GONE:
        inner[pointer[-1]] = value
        return whole
    del inner[pointer[-1]]
    return whole if inner or len(pointer) < 3 else changed(whole, pointer[:-1], GONE)


def swapped(data: Data, one: Pointer, other: Pointer) -> Data:
    """A copy in which two values have changed places."""
    return changed(changed(data, one, at(data, other)), other, at(data, one))


def each(data: Data, fits: Callable[[Pointer], bool], altered: Callable[[Any], Any]) -> Spoilt:
    """One spoilt record for each value at a fitting place that `altered` makes another value of; None leaves it."""
    for pointer, value in values(data):
        if fits(pointer):
            new = altered(value)
            if new is not None and new != value:
                yield "/".join(map(str, pointer)), changed(data, pointer, new)


def key(*names: str, within: str = "") -> Callable[[Pointer], bool]:
    """Fits a value under one of these keys, in a section if one is named."""
    return lambda pointer: pointer[-1] in names and (not within or pointer[0] == within)


def below(name: str, within: str = "") -> Callable[[Pointer], bool]:
    """Fits every value that stands under a key of this name, however deep."""
    return lambda pointer: name in pointer[:-1] and (not within or pointer[0] == within)


def is_text(value: Any) -> bool:
    """Whether it is a scalar."""
    return isinstance(value, str)


def gone(_: Any) -> Any:
    """Leaves a value out."""
    return GONE


def word(change: dict[str, str]) -> Callable[[Any], Any]:
    """Makes one word of another."""
    return lambda value: change.get(value) if is_text(value) else None


def number(change: Callable[[str], str]) -> Callable[[Any], Any]:
    """Changes the first number of a text."""

    def altered(value: Any) -> Any:
        found = re.search(r"\d+(\.\d+)?", value) if is_text(value) else None
        return value[: found.start()] + change(found[0]) + value[found.end() :] if found else None

    return altered


def times(factor: float) -> Callable[[str], str]:
    """A number multiplied."""
    return lambda text: f"{float(text) * factor:.6g}"


def plus(step: int) -> Callable[[str], str]:
    """A number with something added, never below nothing."""
    return lambda text: f"{max(float(text) + step, 0):g}"


def transposed(text: str) -> str:
    """The first two digits in the other order, if they differ."""
    return text[1] + text[0] + text[2:] if len(text) > 1 and text[:2].isdecimal() else text


def unit(change: dict[str, str]) -> Callable[[Any], Any]:
    """Writes another unit behind the same number."""

    def altered(value: Any) -> Any:
        head, _, tail = value.rpartition(" ") if is_text(value) else ("", "", "")
        return f"{head} {change[tail]}" if head and tail in change else None

    return altered
