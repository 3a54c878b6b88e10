"""What a meter should show on a wire, by what the record says of it: for each kind of reading the bands, each with the states of the car."""

from collections.abc import Iterator

from undertrim.derive.wiring.functions import Band, Pattern, expected, functions
from undertrim.derive.wiring.meter import consider
from undertrim.derive.wiring.readings import short
from undertrim.publish.facts.meter import ranged
from undertrim.publish.facts.words import listed
from undertrim.record.model import Pin
from undertrim.record.units import Quantity
from undertrim.words import Value, message


def of_pin(pin: Pin) -> list[Value]:
    """What to expect on a pin; nothing where no reading tells."""
    supply = pin.supply.value if isinstance(pin.supply, Quantity) else None
    found = consider(functions().functions[pin.function], (), pin.behaves, supply)
    return list(of_pattern(found.pattern, supply)) if found.pattern else []


def of_pattern(pattern: Pattern, supply: float | None) -> Iterator[Value]:
    """One line for each kind of reading; `supply` in V where it is not the battery's."""
    for kind in functions().kinds.values():
        said: dict[Value, list[Value]] = {}
        for state in functions().states.values():
            if band := expected(pattern, kind.id, state.id, supply):
                said.setdefault(band_words(band, kind.unit), []).append(short(state))
        if said:
            parts = (message("expecting/in", band=band, states=listed(*states)) for band, states in said.items())
            yield message("expecting/reading", reading=kind.words, bands=listed(*parts, joined="semicolon"))


def band_words(band: Band, unit: str) -> Value:
    """A band in words and numbers: `battery voltage, 11.4 V to 13.2 V`."""
    return message("expecting/band", band=band.words, range=ranged(band.low, band.high, unit))
