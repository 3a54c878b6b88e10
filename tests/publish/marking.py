"""Records in which every text and size that is typed carries a mark of its own, so that one page tells of many fields."""

import copy
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import count
from pathlib import Path
from typing import Any

from answers import on_shelf, on_terminal, seen, sheets, told, visit_sheet

import typed
from undertrim.derive.fit.stock import NOTHING, Stock, Stocked
from undertrim.record.gear import GearRecord
from undertrim.record.source import Pointer, read
from undertrim.record.store import Entry, entry

_SIZE = re.compile(r"(\d+)(?:\.\d+)?( .+)")
_MARK = re.compile(r"zq\d+qz|\d+\.\d{3}7(?!\d)")
_PLAIN = {"line", "text", "tell", "shows", "hazard", "consequence", "avoid", "do", "label", "maker", "model", "make"}
"""Kinds of field that are shown as typed; other texts without a list of words (drives, colours, ids) are read."""
BESIDE = ("finch-2014-2018", "sedge-2016-2021", "drover-2015-2020")
"""Vehicles beside which marked gear is held."""


@cache
def marks() -> dict[str, set[str]]:
    """The marks of each field that can carry one, over all records that use it."""
    return {name: {mark for _, _, mark, _ in found} for name, found in _placed().items() if found}


@cache
def texts() -> set[str]:
    """The fields whose marks are words, not numbers."""
    return {name for name, found in marks().items() if all(mark.startswith("zq") for mark in found)}


@cache
def _placed() -> dict[str, list[tuple[Path, Pointer, str, str]]]:
    """Each mark of a field: record, place, the mark, and the value with it."""
    numbers = count(1)
    return {
        name: [
            (use.path, use.pointer, *made) for use in uses if (made := _with_mark(name, use, f"{next(numbers):03d}"))
        ]
        for name, uses in typed.uses().items()
    }


def _with_mark(name: str, use: typed.Use, number: str) -> tuple[str, str] | None:
    value = use.value
    size = _SIZE.fullmatch(value) if "quantity" in use.node.schema else None
    if size:
        mark = f"{size[1]}.{number[-3:]}7"
        return mark, mark + size[2]
    if use.node.home[1][-1] in _PLAIN and not {"enum", "pattern", "quantity"} & use.node.schema.keys():
        mark = f"zq{number}qz"
        return mark, mark if name == "conflict.claims.says" else f"{value} {mark}"
    return None


@cache
def marked(vehicle: str = "", gear: str = "") -> dict[Path, Entry]:
    """Every record with its marks; in the languages of these tags."""
    changed = {path: copy.deepcopy(typed.data(path)) for path in typed.records()}
    for path, pointer, _, value in (item for found in _placed().values() for item in found):
        put(changed[path], pointer, value)
    langs = {"vehicle": vehicle, "gear": gear}
    return {path: made(path, data | {"lang": langs[typed.records()[path]]}) for path, data in changed.items()}


def values(name: str, kind: str) -> set[str]:
    """What is typed in a field in records of a kind, with its marks."""
    return {value for path, _, _, value in _placed().get(name, ()) if typed.records()[path] == kind}


def put(data: Any, pointer: Pointer, value: Any) -> None:
    """Set what stands at a place."""
    for step in pointer[:-1]:
        data = data[step]
    data[pointer[-1]] = value


_source = cache(read)


def made(path: Path, data: Any) -> Entry:
    """A record as if its file said this."""
    return entry(path, typed.records()[path], replace(_source(path), data=data))


def on_pages() -> frozenset[str]:
    """The marks that pages show."""
    return _found()[0]


def on_sheets() -> frozenset[str]:
    """The marks that sheets show."""
    return _found()[1]


@cache
def in_answers() -> frozenset[str]:
    """The marks that `fit` shows of gear, held against some vehicles: pages do not know the stock."""
    _, fit, _ = zip(*(on_terminal(item, shelf) for item, shelf in _settings() if shelf is not NOTHING), strict=True)
    return frozenset(mark for say in fit for mark in _MARK.findall(say()))


@cache
def _found() -> tuple[frozenset[str], frozenset[str]]:
    """On pages, with what they fetch from the shelf; on sheets, of a vehicle and of visits to it."""
    pages, printed = [], []
    for item, shelf in _settings():
        made = told(item)
        pages += [seen(made), on_shelf(item, shelf)]
        printed += [sheets(made), *(visit_sheet(item, shelf) if shelf is not NOTHING else ())]
    return frozenset(_MARK.findall(" ".join(pages))), frozenset(_MARK.findall(" ".join(printed)))


def _settings() -> Iterator[tuple[Entry, Stock]]:
    """Every vehicle by itself, and some beside all gear."""
    entries = marked().values()
    shelf = Stock(
        tuple(
            Stocked(item.id, item.record.gear, record=item.record)
            for item in entries
            if isinstance(item.record, GearRecord)
        )
    )
    vehicles = [item for item in entries if item.kind == "vehicle"]
    yield from ((item, NOTHING) for item in vehicles)
    yield from ((item, shelf) for item in vehicles if item.id in BESIDE)
