"""Records in which one field says something else or is left out, and whether anybody is shown the difference."""

import copy
import re
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from itertools import chain, islice, zip_longest
from pathlib import Path
from typing import Any

from answers import on_terminal, page
from marking import made, put

import typed
from undertrim.derive.fit.stock import NOTHING, Stock, stocked
from undertrim.derive.jobs import BadRequest
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.record import gate
from undertrim.record.gear import AnyGear, GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry

Say = Callable[[Entry, Stock], str]

MOST_TRIES = 12
_FIT = 1
"""Which of the answers on a terminal holds gear against a vehicle."""
_USUAL = ("gant-1998-2003", "finch-2014-2018")
"""Vehicles beside which gear is held that is made for none."""


def changes_something(name: str) -> bool:
    """Whether some change of a field, where it is used, changes what is shown.

    So it is with a field that must be there and only holds others, which speak for it.
    """
    uses = sorted(typed.uses()[name], key=lambda use: use.path.stat().st_size)
    tried: list[Entry] = []
    ways = {"vehicle": (_alone, _beside), "gear": (_ranked, _otherwise)}
    for entry in islice(_allowed(uses), MOST_TRIES):
        if _told(ways[entry.kind][0], entry):
            return True
        tried.append(entry)
    only_holds = not tried and all(typed.holds_fields(use.node) for use in uses)
    return only_holds or any(_told(ways[entry.kind][1], entry) for entry in tried)


def _told(differs: Callable[[Entry], bool], entry: Entry) -> bool:
    """Whether what is shown differs; a change after which there is no plan shows nothing."""
    try:
        return differs(entry)
    except (Unplannable, BadRequest, Unreachable):
        return False


# Changes


def _allowed(uses: Sequence[typed.Use]) -> Iterator[Entry]:
    """What the schema allows of the changes: the first of each use, then the second, and so on."""
    for item in chain.from_iterable(zip_longest(*map(_changed, _spread(uses)))):
        if item and gate.fits(item[1], typed.records()[item[0]]):  # else there is only the time of telling why
            entry = made(*item)
            if not entry.problems:
                yield entry


def _spread(uses: Sequence[typed.Use]) -> list[typed.Use]:
    """A few uses, of different records first."""
    by_record: dict[Path, list[typed.Use]] = {}
    for use in uses:
        by_record.setdefault(use.path, []).append(use)
    return [use for use in chain.from_iterable(zip_longest(*by_record.values())) if use][:6]


def _changed(use: typed.Use) -> Iterator[tuple[Path, Any]]:
    """The record with other values in the place of a field, and without it."""
    if not use.required:
        data = copy.deepcopy(typed.data(use.path))
        holder = typed.at(data, use.pointer[:-1])
        del holder[use.pointer[-1]]
        yield use.path, data
    for value in _others(use):
        data = copy.deepcopy(typed.data(use.path))
        put(data, use.pointer, value)
        yield use.path, data


def _others(use: typed.Use) -> Iterator[Any]:
    """Other values that a field might have: fewer entries, another word of its list, another id or number."""
    value = use.value
    if isinstance(value, list):
        yield value[:-1]
        yield from ([other] for other in use.node.child(0).schema.get("enum", _ids(use)) if [other] != value)  # type: ignore[union-attr]
    elif isinstance(value, dict):
        yield dict(list(value.items())[:-1])
    elif "enum" in use.node.schema:
        yield from (other for other in use.node.schema["enum"] if other != value)
    elif value[-1].isdigit():
        yield f"{value[:-1]}{(int(value[-1]) + 1) % 10 or 1}"
    else:
        yield from (other for other in (f"{value}x", re.sub(r"\d+", _next, value), *_ids(use)) if other != value)


def _next(number: re.Match[str]) -> str:
    return str(int(number[0]) + 1)


def _ids(use: typed.Use) -> list[str]:
    return list(typed.data(use.path).get("parts", {}))[:4]


# Shown


def _alone(entry: Entry) -> bool:
    """Whether a changed vehicle's page differs, with nothing in stock."""
    return page(entry, NOTHING) != _page_alone(entry.path)


def _beside(entry: Entry) -> bool:
    """Whether anything that is said of it beside the whole stock does."""
    said = (page, *(_terminal(number) for number in range(3)))
    return any(say(entry, _shelf()) != _usually(say, entry.path) for say in said)


@cache
def _usually(say: Say, path: Path) -> str:
    return say(_usual(path), _shelf())


def _ranked(entry: Entry) -> bool:
    """Whether changed gear is told where gear is held against a vehicle: pages do not know the stock."""
    return _differs(entry, _terminal(_FIT))


def _otherwise(entry: Entry) -> bool:
    """Whether it is told by anything else that is said of a vehicle."""
    return any(_differs(entry, say) for say in (page, *(_terminal(number) for number in range(3) if number != _FIT)))


def _differs(entry: Entry, say: Say) -> bool:
    after = _with(entry)
    return any(say(vehicle, after) != _before(say, vehicle.path, entry.path) for vehicle in _vehicles(entry))


@cache
def _before(say: Say, path: Path, gear: Path) -> str:
    return say(_usual(path), _part_of(gear))


@cache
def _terminal(number: int) -> Say:
    return lambda entry, shelf: list(on_terminal(entry, shelf))[number]()


@cache
def _usual(path: Path) -> Entry:
    return made(path, typed.data(path))


@cache
def _page_alone(path: Path) -> str:
    return page(_usual(path), NOTHING)


@cache
def _shelf() -> Stock:
    found = ((_usual(path), _usual(path).record) for path, kind in typed.records().items() if kind == "gear")
    return Stock(tuple(stocked(entry.id, record) for entry, record in found if isinstance(record, GearRecord)))


@cache
def _part_of(path: Path) -> Stock:
    """The gear at a path with what is not of its kind; the speakers and receivers only beside what goes with them."""
    own = typed.at(typed.data(path), ("gear", "kind"))
    left_out = {own, *(() if own in ("spacer", "speaker") else ("speaker",))}
    items = (item for item in _shelf().items if item.id == path.stem or item.facts.kind not in left_out)
    return Stock(tuple(items))


def _with(entry: Entry) -> Stock:
    assert isinstance(entry.record, GearRecord)
    new = stocked(entry.id, entry.record)
    return Stock(tuple(new if item.id == entry.id else item for item in _part_of(entry.path).items))


def _takes(vehicle: Entry, gear: AnyGear) -> bool:
    """Whether it has an opening for gear of its kind, or one where such gear stands between."""
    assert isinstance(vehicle.record, VehicleRecord)
    return any(
        isinstance(gear, opening.takes | (opening.between or opening.takes))
        for opening in vehicle.record.openings.values()
    )


def _vehicles(entry: Entry) -> list[Entry]:
    """The vehicles that gear was made for, or the usual ones; where none of those has an opening for such gear, two that have."""
    vehicles = [_usual(path) for path, kind in typed.records().items() if kind == "vehicle"]
    gear = _usual(entry.path).record.gear  # type: ignore[union-attr]
    named = [place.vehicle for place in gear.suits]
    some = [item for item in vehicles if item.address in named] or [item for item in vehicles if item.id in _USUAL]
    taking = [item for item in vehicles if _takes(item, gear)]
    return some if not taking or any(item in taking for item in some) else taking[:2]
