"""What a meter should show on a wire, by what the record says of it: for each kind of reading the bands, each with the states of the car."""

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from undertrim.derive.wiring.functions import Band, Pattern, expected, functions
from undertrim.derive.wiring.meter import consider
from undertrim.publish.facts.meter import ranged
from undertrim.record.model import Pin
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, Word, message

_USUAL = 4
"""So many states are named one by one at most where all others show something else."""


def of_pin(pin: Pin) -> Sequence[Message]:
    """What to expect on a pin; nothing where no reading tells."""
    return _of(pin.function, pin.behaves, pin.supply.value if isinstance(pin.supply, Quantity) else None)


@lru_cache(maxsize=1024)  # the pins of all cars have a few dozen functions
def _of(function: str, behaves: str, supply: float | None) -> tuple[Message, ...]:
    found = consider(functions().functions[function], (), behaves, supply)
    return tuple(of_pattern(found.pattern, supply)) if found.pattern else ()


def of_pattern(pattern: Pattern, supply: float | None) -> Iterator[Message]:
    """One line for each kind of reading; `supply` in V where it is not the battery's."""
    for kind in functions().kinds.values():
        found: dict[Message, list[Word]] = {}
        for state in functions().states.values():
            if band := expected(pattern, kind.id, state.id, supply):
                found.setdefault(band_words(band, kind.unit), []).append(state.name)
        if found:
            yield message("meter/of-kind", kind=kind.words, bands=Items(tuple(_bands(found)), "semicolon"))


def _bands(found: Mapping[Message, Sequence[Word]]) -> Iterator[Message]:
    """The bands with their states. Where something is expected in every state, that of the most is the usual one: it comes last and names none."""
    most = max(found, key=lambda band: len(found[band]))
    told = sum(map(len, found.values())) == len(functions().states) and len(found[most]) >= _USUAL
    for band, states in found.items():
        if not told or band is not most:
            yield message("meter/in-states", band=band, states=Items(tuple(states), "comma"))
    if told:
        yield message("meter/in-other-states" if len(found) > 1 else "meter/in-every-state", band=most)


def band_words(band: Band, unit: str) -> Message:
    """A band in words and numbers: `battery voltage, 11.4 V to 13.2 V`."""
    return message("meter/band", band=band.words, range=ranged(band.low, band.high, unit))
