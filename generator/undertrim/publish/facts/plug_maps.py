"""The other maps of a plug as data: what differs, for which cars each is, and how to tell at the car."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.cars import AnyChoice
from undertrim.derive.wiring import differences
from undertrim.derive.wiring.differences import Comparison, Difference
from undertrim.derive.wiring.ends import called
from undertrim.publish.facts import words
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.facts.wiring import function_name
from undertrim.record.model import Built, Connector, Pin, VehicleRecord
from undertrim.words import Items, Message, Value, message

_BOTH = message("plugs/both-maps")


@dataclass(frozen=True, slots=True)
class ToldChoice:
    """A choice of a variant, how to tell it at the car, and when such cars were built; empty where that is not recorded."""

    label: Value
    tell: Value
    built: Value


@dataclass(frozen=True, slots=True)
class Telling:
    """What to ask of the car, and the choices that a map is for."""

    ask: Value
    choices: Sequence[ToldChoice]


@dataclass(frozen=True, slots=True)
class ShownDifference:
    """A pin that differs between two maps of a plug."""

    pin: str
    kind: str
    what: Sequence[str]
    words: Message


@dataclass(frozen=True, slots=True)
class OtherMap:
    """Another map of the same plug, compared with this one; `warning` is empty where no car can have both."""

    id: str
    name: Value
    when: Value
    told_by: Sequence[Telling]
    warning: Value
    differences: Sequence[ShownDifference]


def maps(record: VehicleRecord, connector: Connector) -> list[OtherMap]:
    """Every other map of the same plug, compared with this one."""
    others = differences.maps_beside(record, connector)
    return [_beside(record, differences.compare(connector, other)) for other in others]


def told_by(record: VehicleRecord, connector: Connector) -> list[Telling]:
    """How to know that a map is for this car; empty where it is for all of them."""
    return [
        Telling(answer.ask, [_choice(choice) for choice in answer.choices])
        for answer in differences.answers(record, connector)
    ]


def _beside(record: VehicleRecord, found: Comparison) -> OtherMap:
    return OtherMap(
        id=found.second.id,
        name=called(found.second),
        when=words.when(record, found.second.when),
        told_by=told_by(record, found.second),
        warning="" if found.apart else _BOTH,
        differences=[_difference(record, found, item) for item in found.differences],
    )


def _choice(choice: AnyChoice) -> ToldChoice:
    return ToldChoice(choice.label, choice.tell, _built(choice.built))


def _built(built: Built | None) -> Value:
    return message("plugs/built", begin=str(built.from_), end=str(built.to)) if built else ""


def _difference(record: VehicleRecord, found: Comparison, item: Difference) -> ShownDifference:
    return ShownDifference(
        pin=item.pin,
        kind=item.kind,
        what=item.what,
        words=message("plugs/pin", pin=item.pin, what=Items(tuple(_said(record, found, item)), "semicolon")),
    )


def _said(record: VehicleRecord, found: Comparison, item: Difference) -> Iterator[Message]:
    """What this map says and what the other one does."""
    first, second = item.first, item.second
    if first and second:
        if "function" in item.what:
            yield _both(function_name(first.function), function_name(second.function))
        if "colour" in item.what:
            yield _both(_colour(found.first, first), _colour(found.second, second))
        if "cars" in item.what:
            yield message("plugs/cars-here-there", here=_cars(record, first), there=_cars(record, second))
    elif first:
        yield _both(function_name(first.function), _none(item))
    elif second:
        yield _both(_none(item), function_name(second.function))


def _both(here: Value, there: Value) -> Message:
    return message("plugs/here-there", here=here, there=there)


def _none(item: Difference) -> Message:
    return message("plugs/none-recorded") if item.kind == "open" else message("plugs/empty")


def _cars(record: VehicleRecord, pin: Pin) -> Value:
    return words.when(record, pin.when) or message("plugs/every-car")


def _colour(connector: Connector, pin: Pin) -> Value:
    found = colour(pin.colour, connector.scheme)
    return message("plugs/no-colour") if found is None else found.words
