"""Answers about facts of shipped records, made at random: what the whole says of a fact, something else, nothing, or doubt."""

import json
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from spoiling import RECORDS, ROOT
from undertrim.derive.evidence.facts import schema_at
from undertrim.derive.evidence.fingerprint import BY_ID, WHOLE
from undertrim.record.source import Data, Pointer, read_text
from undertrim.record.store import Entry, Workspace

PLACE = Workspace(ROOT)
CARS: list[Data] = [
    {"year": "2016"},
    {"year": "2016", "side": "left"},
    {"year": "unknown"},
    "2016, left-hand drive",
    None,
]
OTHERS = [
    "12 mm",
    "3 min",
    "yes",
    "no",
    "unknown",
    "metal",
    "7",
    "red/white",
    "T20",
    "2 3/16 in",
    "4 ohm",
    "Some words: of its own, #1",
]


@cache
def entry_of(path: Path) -> Entry:
    """A shipped record."""
    return PLACE.load(path)


def leaves(data: Data, place: Pointer = ()) -> list[tuple[Pointer, str]]:
    """Every single text of a whole with its place."""
    if isinstance(data, dict):
        return [leaf for key, inner in data.items() for leaf in leaves(inner, (*place, key))]
    if isinstance(data, list):
        return [leaf for number, inner in enumerate(data) for leaf in leaves(inner, (*place, number))]
    return [(place, str(data))]


@cache
def facts(path: Path) -> list[tuple[str, str]]:
    """The facts of a shipped record by their addresses, with their values; beside them fields that it lacks, with none."""
    said = [(place, text) for place, text in leaves(entry_of(path).source.data) if place[0] in (*BY_ID, *WHOLE)]
    blocks = {place[:depth] for place, _ in said for depth in range(2, len(place))}
    lacking = [
        ((*block, name), "")
        for block in sorted(blocks, key=str)
        for name in schema_at(block).get("properties", {})
        if (*block, name) not in blocks and (*block, name) not in dict(said)
    ]
    return [("/".join(map(str, place)), text) for place, text in [*said, *lacking]]


@st.composite
def answer(draw: st.DrawFn, path: Path) -> dict[str, Any]:
    """One answer, as it stands in a claims file."""
    about, stands = draw(st.sampled_from(facts(path)))
    made: dict[str, Any] = {"about": about, "by": draw(st.sampled_from(["zz", "yy"]))}
    how = draw(st.sampled_from(["says", "same", "other", "found"]))
    if how == "found":
        made["found"] = draw(st.sampled_from(["none", "cannot-tell", "not-so"]))
    else:
        values = [
            example
            for example in schema_at(tuple(_key(key) for key in about.split("/"))).get("examples", ())
            if isinstance(example, str)
        ]
        made["says"] = (stands if how == "same" and stands else draw(st.sampled_from([*values, *OTHERS])))[:120]
    made |= {"car": car} if (car := draw(st.sampled_from(CARS))) else {}
    made |= {"note": "Looked twice."} if draw(st.integers(0, 4)) == 0 else {}
    measured = draw(st.booleans())
    return made | ({"how": "measured", "with": "Calliper 0.05 mm"} if measured else {"how": "seen"})


def _key(key: str) -> str | int:
    return int(key) if key.isdecimal() else key


def claims_text(address: str, answers: list[dict[str, Any]]) -> str:
    """A claims file of them."""
    return json.dumps({"claims": 1, "vehicle": address, "on": "2026-11-26", "answers": answers}, ensure_ascii=False)


def with_text(path: Path, text: str) -> Entry:
    """A record in the place of a shipped one."""
    return PLACE.entry(path, read_text(text, PLACE.shown(path)))


__all__ = ["PLACE", "RECORDS", "answer", "claims_text", "entry_of", "facts", "leaves", "with_text"]
