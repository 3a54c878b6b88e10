"""Small records cut out of the shipped ones: one opening of a vehicle with all that it names, and what those name in turn.

A mutant of a cutting meets the same code as one of a whole record, several times sooner, since most of what a record
costs grows with its openings and parts. Whole records stay in the draw for what only many openings can show.
"""

import re
from collections.abc import Iterator
from typing import Any

Data = Any

WORKED = ("parts", "preps", "closures", "runs")
"""Sections of what work is done on, and along which cable is laid: an entry comes along where another of these, or the opening, names it."""
HELD = ("connectors", "ladders", "duties")
"""Sections whose entries come along with the part or the plug that they are at."""
NAMED = ("evidence", "areas")
"""Sections whose entries come along where anything names them."""
LEFT_OUT = ("conflicts", "verified", "rest")
"""Sections about the whole car."""
PROSE = {"name", "how", "refit_how", "restore", "note", "do", "test", "label", "tell", "ask"}
"""Keys of sentences, whose words are no ids."""
WORD = re.compile(r"[a-z0-9-]+")


def cuttings(data: Data) -> Iterator[Data]:
    """One record for each opening of a vehicle, in the order of the openings."""
    for opening in data.get("openings", {}):
        yield _cutting(data, opening)


def said_once(data: Data) -> Data:
    """The same record in format 2: its parts in groups, what is short in short, cars by name, lists of one without brackets."""
    groups: Data = {}
    for name, part in data["parts"].items():
        area = part.get("area")
        home = groups.setdefault(area, {"parts": {}})["parts"] if area else groups
        home[name] = {key: value for key, value in part.items() if key != "area"}
    made = {**data, "format": "2", "parts": groups}
    cars = {
        f"car-{number}": item["car"] for number, item in enumerate(data.get("evidence", {}).values()) if "car" in item
    }
    if cars:
        names = iter(cars)
        made["cars"] = cars
        made["evidence"] = {
            key: {**item, "car": next(names)} if "car" in item else item for key, item in data["evidence"].items()
        }
    return _short(made)


def _short(value: Data) -> Data:
    if isinstance(value, list):
        return _short(value[0]) if len(value) == 1 and isinstance(value[0], str) else [_short(item) for item in value]
    if not isinstance(value, dict):
        return value
    if value.keys() == {"colour", "function"}:
        return [value["colour"], value["function"]]
    if value.keys() in ({"by"}, {"do"}):
        return next(iter(value.values()))
    return {key: _short(inner) for key, inner in value.items() if inner != []}


def _cutting(data: Data, opening: str) -> Data:
    kept = {name: section for name, section in data.items() if name not in LEFT_OUT}
    kept["openings"] = {opening: data["openings"][opening]}
    worked = _reached(data, words(kept["openings"]))
    for name in WORKED:
        _only(kept, name, worked)
    held = {key for name in HELD for key, item in data.get(name, {}).items() if _place(item) & {*kept["parts"]}}
    held |= {key for key, item in data.get("ladders", {}).items() if _place(item) & held}
    for name in HELD:
        _only(kept, name, held)
    named = words({name: section for name, section in kept.items() if name not in NAMED})
    named = _reached(data, named, NAMED)
    for name in NAMED:
        _only(kept, name, named)
    return {name: section for name, section in kept.items() if section != {}}


def _only(kept: Data, name: str, keys: set[str]) -> None:
    if name in kept:
        kept[name] = {key: item for key, item in kept[name].items() if key in keys}


def _reached(data: Data, seen: set[str], sections: tuple[str, ...] = WORKED) -> set[str]:
    """The words seen, with those of every entry that they name, and so on."""
    entries = {key: words(item) for name in sections for key, item in data.get(name, {}).items()}
    while (more := seen.union(*(found for key, found in entries.items() if key in seen))) != seen:
        seen = more
    return seen


def _place(item: Data) -> set[str]:
    """What an entry says that it is at."""
    return words([item.get(key, "") for key in ("at", "part", "pin")]) if isinstance(item, dict) else set()


def words(data: Data) -> set[str]:
    """Everything below that may be an id, keys included."""
    if isinstance(data, dict):
        return set().union(*({str(key)} | words(value) for key, value in data.items() if key not in PROSE))
    if isinstance(data, list):
        return set().union(*map(words, data))
    return set(WORD.findall(str(data)))
