"""The shelf: all gear in stock as the scripts of the pages reckon with it, once for all vehicles, and split by kind when it is large.

It is written as classic scripts that call `undertrimShelf(name, data)`, so that it also loads from a folder on disk. The first file,
`shelf/start.js`, has what is needed to reckon at all, and either all the gear or in which pieces the gear of each kind stands. A page asks for
it when somebody wants to choose gear.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.fitting import minutes
from undertrim.derive.fit.kinds.tweeter import feed
from undertrim.derive.fit.margins import Number
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.publish.encoding import Published
from undertrim.publish.facts import with_stock
from undertrim.publish.facts.electrical_tables import tables
from undertrim.publish.facts.kinds import SIZES
from undertrim.publish.facts.meter import packed_script, script
from undertrim.publish.facts.plain import plain
from undertrim.publish.facts.with_stock import VISIT, Unsaid, worked_out
from undertrim.publish.facts.words import Clauses, clauses
from undertrim.record.gear import GEAR, GearFacts
from undertrim.record.model.kinds.tweeter import TweeterGear
from undertrim.resources import table
from undertrim.words import Value, word

FOLDER = "shelf"
MOST_IN_ONE = 200_000
"""So many letters of gear stand in the first file, or in one piece of a larger stock."""


@dataclass(frozen=True, slots=True)
class ShelfPlace:
    """One opening of a vehicle that gear is made for, and the cars that it suits there."""

    vehicle: str
    opening: str
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class ShelfTried:
    """What somebody saw who tried it in an opening of a vehicle, in words."""

    vehicle: str
    opening: str
    went_in: str
    said: Value


@dataclass(frozen=True, slots=True)
class ShelfGear:
    """A piece of stock with its sizes; `fitting` are the minutes that fitting one takes, None where it does not say; `alters` is what fitting it does to the car, `to_get` what keeps low tones away from a tweeter where nothing in stock does, `tried` what people saw who tried it, `doubts` which sizes are in dispute. One without `suits` is for any car."""

    id: str
    name: str
    kind: str
    gear: Published
    fitting: float | None
    suits: Sequence[ShelfPlace]
    alters: Sequence[str]
    to_get: Value
    tried: Sequence[ShelfTried]
    doubts: Sequence[Value]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A record of gear that has problems, by its id: it is not offered."""

    kind: str
    id: str


@dataclass(frozen=True, slots=True)
class Shelf:
    """What all forms and choices share: the units of length, the tables of electrical sums, usual clearances, and the stock in its order, or in which pieces each kind stands."""

    units: Published
    electrical: Published
    usual: Published
    left_out: Sequence[LeftOut]
    stock: Sequence[ShelfGear]
    pieces: Mapping[str, Sequence[str]]


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """How the units of a kind are spelt."""

    name: Value
    exact: Sequence[str]
    any_case: Sequence[str]


@dataclass(frozen=True, slots=True)
class FitNumber:
    """A clearance as a number of the script."""

    label: Value
    value: float | None
    step: float
    text: Value
    default: bool
    less: float
    more: float
    lacking: bool


def files(stock: Stock, usual: Clearances) -> dict[str, str]:
    """The files of the shelf by their path in the site."""
    said = {item.id: str(script(of(item))) for item in stock.items}
    whole = sum(map(len, said.values())) <= MOST_IN_ONE
    pieces = {} if whole else dict(_pieces(stock, said))
    first = Shelf(
        units=length_units(),
        electrical=tables(),
        usual=usual_data(usual),
        left_out=list(_left_out(stock)),
        stock=[of(item) for item in stock.items if whole],
        pieces=_by_kind(pieces),
    )
    more = {
        f"{FOLDER}/{name}.js": _script(name, str(packed_script(list(map(json.loads, held)))))
        for name, held in pieces.items()
    }
    return {f"{FOLDER}/start.js": _script("start", str(packed_script(first))), **more}


def _pieces(stock: Stock, said: Mapping[str, str]) -> Iterator[tuple[str, list[str]]]:
    """The gear of each kind in its order, cut where a piece would grow too large."""
    for kind in dict.fromkeys(item.facts.kind for item in stock.items):
        cut: list[list[str]] = [[]]
        for item in stock.items:
            if item.facts.kind == kind:
                if cut[-1] and sum(map(len, cut[-1])) + len(said[item.id]) > MOST_IN_ONE:
                    cut.append([])
                cut[-1].append(said[item.id])
        yield from ((f"{kind}-{number}", held) for number, held in enumerate(cut, 1))


def _by_kind(pieces: Mapping[str, object]) -> Mapping[str, Sequence[str]]:
    found: dict[str, list[str]] = {}
    for name in pieces:
        found.setdefault(name.rpartition("-")[0], []).append(name)
    return found


def _script(name: str, data: str) -> str:
    return f"undertrimShelf({json.dumps(name)},{data});\n"


def of_vehicle(known: Vehicle) -> dict[str, str]:
    """The files of one vehicle on the shelf, by the name of the page that asks for it: what follows from it and the stock."""
    return in_words(known.address, worked_out(known))


def in_words(vehicle: str, worked: Unsaid) -> dict[str, str]:
    """The same from what was worked out for a vehicle (`make/id`) already, in the language of the reader."""
    return {
        view: _script(own_name(vehicle, view), str(packed_script(with_stock.in_words(facts))))
        for view, facts in worked.items()
    }


def own_name(vehicle: str, view: str) -> str:
    """What such a file is called for a vehicle (`make/id`): as the page that fetches it."""
    return vehicle if view == VISIT else f"{vehicle}.{view}"


def of(item: Gear) -> ShelfGear:
    """One piece of stock."""
    facts = item.facts
    return ShelfGear(
        id=item.id,
        name=item.name,
        kind=facts.kind,
        gear=gear_data(facts),
        fitting=minutes(item),
        suits=[ShelfPlace(place.vehicle, place.opening, clauses(place.when)) for place in facts.suits],
        alters=facts.alters,
        to_get=_to_get(facts),
        tried=[ShelfTried(one.vehicle, one.opening, one.went_in, one.said) for one in item.tried],
        doubts=item.doubts,
    )


def _to_get(facts: GearFacts) -> Value:
    return feed.part(facts) if isinstance(facts, TweeterGear) else ""


def _left_out(stock: Stock) -> Iterator[LeftOut]:
    kinds = {kind.folder(): name for name, kind in GEAR.items()}
    for address in stock.left_out:
        folder, _, name = address.partition("/")
        if folder in kinds:
            yield LeftOut(kinds[folder], name)


def gear_data(facts: GearFacts) -> Published:
    """What the scripts reckon with of a piece of gear of its kind."""
    return {name: plain(getattr(facts, name)) for name in SIZES[type(facts)]}


def length_units() -> Published:
    """The units of length as data/units.toml has them; `elsewhere` are the spellings of the other kinds, by which a wrong one is known."""
    kinds = table("units")
    others = [_spellings(name, kind) for name, kind in kinds.items() if name != "length"]
    length = {key: value for key, value in kinds["length"].items() if key != "label"}
    return {**length, "name": word("units", "length", "name"), "elsewhere": others}


def _spellings(name: str, kind: Published) -> Elsewhere:
    units = kind["units"].values()
    return Elsewhere(
        name=word("units", name, "name"),
        exact=[spelling for unit in units for spelling in unit["spellings"]],
        any_case=[spelling.casefold() for unit in units if unit.get("any_case") for spelling in unit["spellings"]],
    )


def usual_data(usual: Clearances) -> Published:
    """The clearances by name, as numbers of the script; `bounds` are plain numbers: between what an unrecorded fact lies, and a change that is heard; `amplifiers` what their feed is reckoned with."""
    bounds = {**table("fit")["bounds"], **table("fit")["level"]}
    numbers = {name: _number(number) for name, number in usual.by_name.items()}
    return {**numbers, "bounds": bounds, "amplifiers": table("amplifiers")["usual"]}


def _number(number: Number) -> FitNumber:
    return FitNumber(
        label=number.label,
        value=number.value,
        step=number.step,
        text=number.text,
        default=number.default,
        less=number.less,
        more=number.more,
        lacking=number.lacking,
    )
