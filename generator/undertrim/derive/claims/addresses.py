"""Where in the whole of a record the address of an answer leads, for the car that it was found at.

An address names things as they are written. What differs between cars stands in the whole once for each kind of car; which of those is
meant follows from what is said of the car.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive.claims.outcome import Refused
from undertrim.derive.evidence.facts import schema_at
from undertrim.derive.evidence.fingerprint import NO_FACTS
from undertrim.record.fields import node_of
from undertrim.record.nearness import suggestion
from undertrim.record.source import Data, Pointer, Source
from undertrim.words import Message, Value, message

NOT_ANSWERED = ("source", "when", "photos", "not_in", "id")
"""Fields that are no fact about the car."""

_OF_THINGS = tuple((name,) for name in ("variants", "preps", "parts", "openings", "connectors", "ladders", "runs"))
"""Sections of things that take more than one answer to begin."""

_DIGITS = 4


@dataclass(frozen=True, slots=True)
class AtCar:
    """What is known of the car: choices by variant, and the side that was looked at; empty where it is not said."""

    choices: Mapping[str, str]
    side: str = ""

    def may_have(self, block: Data) -> bool:
        """Whether it can have a thing with this condition."""
        if not isinstance(block, dict):
            return True
        side = block.get("side")
        return (not self.side or side in (None, self.side)) and all(
            name not in self.choices or self.choices[name] in ([said] if isinstance(said, str) else said)
            for name, said in block.get("when", {}).items()
        )


def place_of(source: Source, keys: tuple[str, ...], car: AtCar) -> Pointer:
    """The place that keys lead to; what does not stand there yet can be written there. Raises Refused."""
    about = "/".join(keys)
    if keys[0] in NO_FACTS or keys[-1] in NOT_ANSWERED or node_of(keys[:1]) is None:
        raise Refused(message("claims/no-fact", about=about))
    ways: list[tuple[Pointer, Data]] = [((), source.data)]
    for key in keys:
        found = [way for place, data in ways for way in _below(source, place, data, key)]
        ways = [(place, data) for place, data in found if car.may_have(data)]
        if found and not ways:
            raise Refused(message("claims/other-car", about=about))
    if len(ways) != 1:
        raise Refused(message("claims/which-car", about=about))
    place = ways[0][0]
    if not schema_at(place):
        raise Refused(message("claims/no-such-field", about=about, hint=_near(place)))
    return place


def _below(source: Source, place: Pointer, data: Data, key: str) -> Iterator[tuple[Pointer, Data]]:
    """What a key leads to: a thing, its forms, an entry of a list, or the place where nothing stands yet."""
    if isinstance(data, list):
        number = int(key) if key.isdecimal() and len(key) < _DIGITS else len(data)
        if number >= len(data):
            raise Refused(message("claims/no-such-entry", about="/".join(map(str, place)), count=len(data)))
        yield (*place, number), data[number]
        return
    forms = source.origin.forms.get((*place, key), ()) if source.origin else ()
    if isinstance(data, dict) and key not in data and forms:
        for form in forms:
            yield from _below(source, place, data, form)
    else:
        if place in _OF_THINGS and isinstance(data, dict) and key not in data:
            raise Refused(message("claims/no-such-thing", about=f"{place[0]}/{key}", hint=_names(key, data)))
        yield (*place, key), data.get(key) if isinstance(data, dict) else None


def _names(key: str, data: Mapping[str, Data]) -> Message:
    return suggestion(key, list(data), message("nearness/ids"))


def _near(place: Pointer) -> Value:
    """What may have been meant by the first key that the schema does not know."""
    depth = next(number for number in range(1, len(place) + 1) if not schema_at(place[:number]))
    known = schema_at(place[: depth - 1]).get("properties", {})
    return suggestion(str(place[depth - 1]), list(known), message("nearness/fields")) if known else ""


def address_of(source: Source, place: Pointer) -> str:
    """The address of a place of the whole: what stands in several forms goes by the id that it is written under."""
    bases = (
        {(*home[:-1], name): home for home, names in source.origin.forms.items() for name in names}
        if source.origin
        else {}
    )
    keys: list[str] = []
    for depth in range(1, len(place) + 1):
        spot = place[:depth]
        while spot in bases:
            spot = bases[spot]
        keys.append(str(spot[-1]))
    return "/".join(keys)
