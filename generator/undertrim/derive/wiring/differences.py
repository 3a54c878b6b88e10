"""Two maps of one plug: what differs pin by pin, which cars each map is for, and how to tell them apart."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import Literal, TypeAlias

from undertrim.derive import cars
from undertrim.record import colours
from undertrim.record.model import Connector, Pin, VehicleRecord
from undertrim.words import Value

Kind: TypeAlias = Literal["added", "gone", "changed", "open"]
What: TypeAlias = Literal["function", "colour", "cars"]


@dataclass(frozen=True, slots=True)
class Difference:
    """One pin that two maps have differently.

    `added`: empty in the first map, a contact in the second; `gone`: the other way round. Both only where the empty
    one was looked at; `open` is a contact in one map of which the other says nothing. `changed`: what of it differs; a colour that
    one map does not have is no change.
    """

    pin: str
    kind: Kind
    first: Pin | None
    second: Pin | None
    what: tuple[What, ...] = ()


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two maps of one plug; `apart` is whether no car can have both, as it should be."""

    first: Connector
    second: Connector
    differences: tuple[Difference, ...]
    apart: bool


@dataclass(frozen=True, slots=True)
class Answer:
    """What to look at to know whether a map is for this car: the question, and the answers that it is for."""

    ask: Value
    choices: tuple[cars.AnyChoice, ...]


def maps_beside(record: VehicleRecord, connector: Connector) -> tuple[Connector, ...]:
    """The other maps of the same plug: connectors at the same tether, in the order of the record."""
    others = (item for item in record.connectors.values() if item.id != connector.id)
    return tuple(item for item in others if one_place(connector, item))


def comparisons(record: VehicleRecord) -> tuple[Comparison, ...]:
    """Every two maps of one plug, compared, in the order of the record."""
    pairs = combinations(record.connectors.values(), 2)
    return tuple(compare(first, second) for first, second in pairs if one_place(first, second))


def one_place(first: Connector, second: Connector) -> bool:
    """Whether two stand at one tether, on one side of the car."""
    return bool(first.at) and first.at == second.at and (None in (first.side, second.side) or first.side == second.side)


def compare(first: Connector, second: Connector) -> Comparison:
    """Two maps of one plug."""
    return Comparison(
        first, second, tuple(differences(first, second)), apart=not cars.together(first.when, second.when)
    )


def differences(first: Connector, second: Connector) -> Iterator[Difference]:
    """The pins that differ, in the order of the first map, then those that only the second has."""
    for number in dict.fromkeys((*first.pins, *second.pins)):
        before, after = first.pins.get(number), second.pins.get(number)
        if before and after:
            if what := tuple(_changed(first, before, second, after)):
                yield Difference(number, "changed", before, after, what)
        elif after:
            yield Difference(number, "added" if number in first.blanks else "open", None, after)
        else:
            yield Difference(number, "gone" if number in second.blanks else "open", before, None)


def answers(record: VehicleRecord, connector: Connector) -> tuple[Answer, ...]:
    """How to know the cars of a map: one answer for each variant that its condition names; none where it is for all."""
    known = cars.variants(record)
    return tuple(
        Answer(known[name].ask, tuple(known[name].choices[choice] for choice in choices))
        for name, choices in connector.when.clauses
        if name in known and all(choice in known[name].choices for choice in choices)
    )


def _changed(first: Connector, before: Pin, second: Connector, after: Pin) -> Iterator[What]:
    if before.function != after.function:
        yield "function"
    if before.colour and after.colour and _colour(first, before) != _colour(second, after):
        yield "colour"
    if before.when != after.when:
        yield "cars"


def _colour(connector: Connector, pin: Pin) -> object:
    """What to compare: `RD/WH` and `red/white` are one colour; what cannot be read is compared as typed."""
    try:
        return colours.parse(pin.colour, connector.scheme).all
    except colours.ColourError:
        return pin.colour
