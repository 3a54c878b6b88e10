"""What the form beside an opening reckons with, as data for the scripts: the opening, what in stock can go between, usual clearances, sizes of the stock."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.cutting import may_go
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit import measured
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.margins import Number
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.stopping import stopping
from undertrim.publish.encoding import Published
from undertrim.publish.facts import words
from undertrim.publish.facts.kinds import SIZES, room
from undertrim.publish.facts.kinds.speaker.loads import Load
from undertrim.publish.facts.meter import script
from undertrim.publish.facts.plain import plain
from undertrim.publish.facts.words import Clauses
from undertrim.record.gear import GearFacts
from undertrim.record.model import Opening, When
from undertrim.resources import table
from undertrim.words import Value, word


@dataclass(frozen=True, slots=True)
class Between:
    """A piece of stock that can go between, with the conditions of which one must hold."""

    id: str
    clauses: Sequence[Clauses]


@dataclass(frozen=True, slots=True)
class Stop:
    """Why gear is no plain replacement: for which cars and for which of the stock, an empty id for one that is typed."""

    words: Value
    when: Value
    clauses: Clauses
    gear: Sequence[str]


@dataclass(frozen=True, slots=True)
class Form:
    """One opening as it is reckoned, what may go between in which cars, and what stops gear that goes in."""

    kind: str
    gear: str
    opening: Published
    between: Sequence[Between]
    notes: Sequence[Value]
    loads: Sequence[Load]
    stops: Sequence[Stop]


@dataclass(frozen=True, slots=True)
class ShelfGear:
    """A piece of stock with its sizes."""

    name: str
    kind: str
    gear: Published


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


def form(vehicle: Vehicle, opening: Opening) -> Form | None:
    """The form beside an opening; None for a kind that has none."""
    return reckoned_with(vehicle, opening) if room(opening).form else None


def reckoned_with(vehicle: Vehicle, opening: Opening) -> Form:
    """One opening as it is reckoned, what may go between in which cars, and what stops gear that goes in."""
    counted, notes = measured.reckoned(vehicle.record, opening)
    return Form(
        kind=opening.kind,
        gear=opening.takes.kind,
        opening=opening_data(counted),
        between=list(_between(vehicle, opening)),
        notes=notes,
        loads=list(room(opening).loads(vehicle)),
        stops=list(_stops(vehicle, opening)),
    )


def _stops(vehicle: Vehicle, opening: Opening) -> Iterator[Stop]:
    """Why gear is no plain replacement: for which cars and for which of the stock, an empty id for one that is typed."""
    record = reckoned(vehicle.record)
    for item in stopping(record, vehicle.address, vehicle.stock, opening):
        yield Stop(item.words, words.when(record, item.when), words.clauses(item.when), item.gear)


def opening_data(opening: Opening) -> Published:
    """The dimensions of an opening that its kind has."""
    return {name: plain(getattr(opening, name)) for name in room(opening).form}


def gear_data(facts: GearFacts) -> Published:
    """The dimensions of a piece of gear that its kind has."""
    return {name: plain(getattr(facts, name)) for name in SIZES[type(facts)]}


def _between(vehicle: Vehicle, opening: Opening) -> Iterator[Between]:
    for item in vehicle.stock.items:
        if opening.between is None or not isinstance(item.facts, opening.between):
            continue
        made = _made_for(item, vehicle.address, opening.written)
        if made and may_go(vehicle.record, opening, item.facts.alters):
            yield Between(item.id, [words.clauses(when) for when in made])


def _made_for(item: Gear, address: str, opening: str) -> list[When]:
    """The conditions under which it suits the opening, of which one must hold; nothing where it is for another one."""
    return item.conditions(address, opening) or ([] if item.facts.suits else [When()])


def shelf_script(stock: Stock, usual: Clearances) -> str:
    """What the forms of all pages share, as a classic script: the unit table for lengths, usual clearances, sizes of the stock."""
    data = {
        "units": length_units(),
        "usual": usual_data(usual),
        "stock": {
            item.id: ShelfGear(item.name, item.facts.kind, gear_data(item.facts))
            for item in stock.items
            if type(item.facts) in SIZES
        },
    }
    return f"undertrimFitForm.start({script(data)});\n"


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
    """The clearances by name, as numbers of the script; `bounds` are plain numbers: between what an unrecorded fact lies, and a change that is heard."""
    bounds = {**table("fit")["bounds"], **table("fit")["level"]}
    return {**{name: _number(number) for name, number in usual.by_name.items()}, "bounds": bounds}


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
