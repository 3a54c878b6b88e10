"""Into which openings of the collection a piece of gear goes, as data and as text for a terminal: the best verdicts first."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from operator import attrgetter

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.everywhere import openings
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import RANKED, Kind
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import identity, names
from undertrim.publish.facts.fit import VERDICTS
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Message, Value, message, say


@dataclass(frozen=True, slots=True)
class Place:
    """One opening of a vehicle: the verdict with what decides it, and the kinds of car that it is for (empty: every one)."""

    vehicle: str
    title: str
    demo: bool
    opening: str
    name: str
    cars: Value
    verdict: Kind
    verdict_words: Message
    headline: Value
    seen: Sequence[Message] = ()


@dataclass(frozen=True, slots=True)
class Everywhere:
    """Where a piece of gear goes; `left_out` are vehicles whose records cannot be relied on."""

    gear: str
    name: str
    places: Sequence[Place]
    left_out: Sequence[str]


def places(vehicle: Vehicle, gear: Gear) -> list[Place]:
    """The verdicts on gear in the openings of a vehicle."""
    record = vehicle.record
    return [
        Place(
            vehicle=vehicle.address,
            title=f"{record.vehicle.make} {record.vehicle.model} {identity.years(record).years}",
            demo=record.demo == "yes",
            opening=found.opening.id,
            name=found.opening.name,
            cars=names.kinds_of_car(record, found.cars),
            verdict=found.fit.kind,
            verdict_words=VERDICTS[found.fit.kind],
            headline=found.fit.headline,
            seen=[one.shown(found.fit.kind) for one in found.fit.seen],
        )
        for found in openings(vehicle, gear)
    ]


def everywhere(gear: Gear, found: Sequence[Place], left_out: Sequence[str]) -> Everywhere:
    """All places of a collection, the best first and else by vehicle."""
    in_order = sorted(found, key=lambda place: (RANKED.index(place.verdict), place.vehicle))
    return Everywhere(gear.id, gear.name, in_order, left_out)


def everywhere_data(made: Everywhere) -> Published:
    """The same as data."""
    data: Published = said(made)
    return data


def everywhere_text(made: Everywhere) -> str:
    """The same as text, ending in a newline."""
    return "\n".join([*_lines(made), "", closing(), ""])


def _lines(made: Everywhere) -> Iterator[str]:
    yield say(message("everywhere/title", gear=made.name, id=made.gear))
    if any(place.demo for place in made.places):
        yield say(message("everywhere/demo"))
    for address in made.left_out:
        yield say(message("everywhere/left-out", address=address))
    if not made.places:
        yield say(message("everywhere/nowhere"))
    for verdict, group in groupby(made.places, key=attrgetter("verdict")):
        there = list(group)
        yield ""
        yield say(message("everywhere/verdict", verdict=VERDICTS[verdict], count=len(there)))
        for place in there:
            where = message("everywhere/place", vehicle=place.title, opening=place.name)
            whole = message("fit-shown/for", title=where, cars=place.cars) if place.cars else where
            yield from wrapped(message("everywhere/line", place=whole, headline=place.headline), "  ", "      ")
            for seen in place.seen:
                yield from wrapped(seen, "      ", "        ")
