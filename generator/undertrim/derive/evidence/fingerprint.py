"""A fingerprint for every block of facts, so that an edit since the verification shows, and in which block.

Facts are compared as typed: neither comments, the order of keys, quotes nor line breaks count, but `64 mm` and `6.4 cm` are two.
The hash is SHA-256 (FIPS 180-4), cut to eight hexadecimal digits: it finds edits, and guards against nobody.
"""

import hashlib
import json
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from undertrim.record.source import Data

BY_ID = (
    "variants",
    "preps",
    "areas",
    "closures",
    "parts",
    "openings",
    "connectors",
    "functions",
    "duties",
    "sound",
    "ladders",
    "runs",
)
"""Sections in which every id is a block of its own."""

WHOLE = ("vehicle", "restraint", "rest", "after_battery")
"""Sections that are one block each."""

NO_FACTS = ("format", "demo", "lang", "evidence", "conflicts", "verified", "verified_parts")
"""Sections that say something about the facts, or nothing about the car."""

DIGITS = 8


@dataclass(frozen=True, slots=True)
class Changes:
    """The blocks whose facts are not what they were, that are new, and that are gone, by name."""

    changed: tuple[str, ...] = ()
    added: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.count)

    @property
    def count(self) -> int:
        """How many blocks differ."""
        return len(self.changed) + len(self.added) + len(self.removed)


def fingerprints(data: Data) -> dict[str, str]:
    """The fingerprint of every block, by its name (`vehicle`, `parts/vent-trim`), in the order of the record.

    `data` is a record as typed: mappings, lists and text.
    """
    return {name: fingerprint(block) for name, block in _blocks(data)}


def fingerprint(block: Data) -> str:
    """Eight hexadecimal digits for one block."""
    written = json.dumps(_folded(block), sort_keys=True, ensure_ascii=False, separators=(",", ":"))
    return hashlib.sha256(written.encode("utf-8", "surrogatepass")).hexdigest()[:DIGITS]


def changed_since(data: Data, facts: Mapping[str, str]) -> Changes:
    """What differs from the fingerprints that were taken when the record was verified."""
    now = fingerprints(data)
    return Changes(
        changed=tuple(name for name in now if name in facts and now[name] != facts[name]),
        added=tuple(name for name in now if name not in facts),
        removed=tuple(name for name in facts if name not in now),
    )


def changed_among(data: Data, facts: Mapping[str, str], wanted: Collection[str]) -> Changes:
    """The same for a stamp of a part: `wanted` are the blocks that such a stamp would have now."""
    now = fingerprints(data)
    return Changes(
        changed=tuple(name for name in now if name in facts and now[name] != facts[name]),
        added=tuple(name for name in now if name in wanted and name not in facts),
        removed=tuple(name for name in facts if name not in now),
    )


def _blocks(data: Data) -> Iterator[tuple[str, Data]]:
    for section, inside in data.items() if isinstance(data, dict) else ():
        if section in WHOLE:
            yield section, inside
        elif section in BY_ID and isinstance(inside, dict):
            yield from ((f"{section}/{name}", block) for name, block in inside.items())


def _folded(value: Data) -> Data:
    """The same with every run of white space as one space."""
    if isinstance(value, dict):
        return {key: _folded(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_folded(inner) for inner in value]
    return " ".join(value.split()) if isinstance(value, str) else value
