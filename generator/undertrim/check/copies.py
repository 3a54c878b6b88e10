"""What of a vehicle's record says in short whether another one is the same: a digest for each section that describes the car."""

import json
from collections.abc import Collection, Mapping

from undertrim.derive.evidence.taken import USUAL
from undertrim.record.digests import joined
from undertrim.record.source import Data, Pointer
from undertrim.record.store import Entry

SECTIONS = ("parts", "openings", "connectors")
"""Sections that no two cars have in common by chance, once they have so many entries."""
WHOLE = "whole"
"""Stands for all sections that describe the car, however short they are."""
_DESCRIBING = ("variants", "preps", "parts", "openings", "connectors", "runs")
_ENTRIES = {"parts": 3, "openings": 1, "connectors": 1}


def sections(entry: Entry) -> Mapping[str, str]:
    """The digest of each section that is large enough to tell; which evidence a fact names, and the order of fields, do not matter."""
    data, origin = entry.source.data, entry.source.origin
    if entry.kind != "vehicle" or not isinstance(data, dict):
        return {}
    taken = {place[:2] for place in origin.taken} if origin else set()
    known = {name: _own(data.get(name), name, taken | _usual(data, name)) for name in SECTIONS}
    found = {
        name: _digest(held) for name, held in known.items() if isinstance(held, dict) and len(held) >= _ENTRIES[name]
    }
    if known["parts"] or known["openings"]:
        found[WHOLE] = _digest({name: _own(data.get(name), name, taken) for name in _DESCRIBING})
    return found


def _usual(data: Mapping[str, Data], name: str) -> set[Pointer]:
    """The things of a section that stand there since they are usual in such cars: whatever was begun so has them."""
    looks, section = data.get("evidence"), data.get(name)
    if not isinstance(looks, dict) or not isinstance(section, dict):
        return set()
    kept = [key for key, look in looks.items() if isinstance(look, dict) and look.get("how") == USUAL]
    things = ((key, thing.get("source")) for key, thing in section.items() if isinstance(thing, dict))
    return {
        (name, key) for key, said in things if any(one in kept for one in (said if isinstance(said, list) else [said]))
    }


def _own(section: Data, name: str, taken: Collection[Pointer]) -> Data:
    """What the record says itself: what it says to share is no copy, nor is what is usual."""
    return (
        {key: thing for key, thing in section.items() if (name, key) not in taken}
        if isinstance(section, dict)
        else section
    )


def _digest(section: Data) -> str:
    return joined(json.dumps(_without_sources(section), sort_keys=True, ensure_ascii=False))


def _without_sources(value: Data) -> Data:
    if isinstance(value, dict):
        return {key: _without_sources(inner) for key, inner in value.items() if key != "source"}
    return [_without_sources(inner) for inner in value] if isinstance(value, list) else value
