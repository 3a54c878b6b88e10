"""What of a vehicle's record says in short whether another one is the same: a digest for each section that describes the car."""

import json
from collections.abc import Mapping

from undertrim.record.digests import joined
from undertrim.record.source import Data
from undertrim.record.store import Entry

SECTIONS = ("parts", "openings", "connectors")
"""Sections that no two cars have in common by chance, once they have so many entries."""
_ENTRIES = {"parts": 3, "openings": 1, "connectors": 1}


def sections(entry: Entry) -> Mapping[str, str]:
    """The digest of each section that is large enough to tell; which evidence a fact names, and the order of fields, do not matter."""
    data = entry.source.data
    if entry.kind != "vehicle" or not isinstance(data, dict):
        return {}
    known = {name: data.get(name) for name in SECTIONS}
    return {
        name: _digest(held) for name, held in known.items() if isinstance(held, dict) and len(held) >= _ENTRIES[name]
    }


def _digest(section: Data) -> str:
    return joined(json.dumps(_without_sources(section), sort_keys=True, ensure_ascii=False))


def _without_sources(value: Data) -> Data:
    if isinstance(value, dict):
        return {key: _without_sources(inner) for key, inner in value.items() if key != "source"}
    return [_without_sources(inner) for inner in value] if isinstance(value, list) else value
