"""Answers about facts of shipped records, made at random: what the whole says of a fact, something else, nothing, or doubt."""

import json
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from spoiling import RECORDS, ROOT
from undertrim.derive import cars
from undertrim.derive.evidence import holding
from undertrim.derive.evidence.facts import schema_at
from undertrim.derive.evidence.fingerprint import BY_ID, WHOLE
from undertrim.derive.questions.forms import form
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data, Pointer, read_text
from undertrim.record.store import Entry, Workspace

PLACE = Workspace(ROOT)
ODD = ["12 mm", "3 min", "yes", "unknown", "metal", "7", "T20", "2 3/16 in", "4 ohm", "Some words: of its own, #1"]
"""Values that most fields do not take."""


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
    said = [(place, text) for place, text in said if _is_fact(place)]
    blocks = {place[:depth] for place, _ in said for depth in range(2, len(place))}
    lacking = [
        ((*block, name), "")
        for block in sorted(blocks, key=str)
        for name in schema_at(block).get("properties", {})
        if (*block, name) not in blocks and (*block, name) not in dict(said) and _is_fact((*block, name))
    ]
    return [("/".join(map(str, place)), text) for place, text in [*said, *lacking]]


def _is_fact(place: Pointer) -> bool:
    """Whether it is something about the car that can be answered, and no prose: of that a few are enough."""
    if any(step in ("source", "when", "photos", "not_in", "cautions") for step in place):
        return False
    schema = schema_at(place)
    plain = "quantity" in schema or "enum" in schema or schema.get("type") == "integer"
    return plain or (schema.get("type") == "string" and len(str(place)) % 8 == 0)


@st.composite
def answer(draw: st.DrawFn, path: Path) -> dict[str, Any]:
    """One answer, as it stands in a claims file: mostly of a car that says all that sets it apart, with a value of the field's form."""
    about, stands = draw(st.sampled_from(facts(path)))
    made: dict[str, Any] = {"about": about, "by": draw(st.sampled_from(["zz", "yy"]))}
    how = draw(st.sampled_from(["says", "says", "says", "same", "odd", "found"]))
    if how == "found":
        made["found"] = draw(st.sampled_from(["none", "cannot-tell", "not-so"]))
    elif how == "same" and stands:
        made["says"] = stands[:120]
    else:
        made["says"] = draw(st.sampled_from(ODD)) if how == "odd" else draw(_value(about))
    made |= {"car": car} if (car := draw(_car(path))) else {}
    made |= {"note": "Looked twice."} if draw(st.integers(0, 4)) == 0 else {}
    measured = draw(st.booleans())
    return made | (
        {"how": "measured", "with": "Calliper 0.05 mm, 1 deg, 1 ohm, 1 V, 1 s, 0.1 N.m"}
        if measured
        else {"how": "maker"}
    )


@st.composite
def _value(draw: st.DrawFn, about: str) -> str:
    """A value that the field may have."""
    place = tuple(_key(key) for key in about.split("/"))
    wanted = form(schema_at(place), place)
    if wanted.quantity and wanted.least:
        least, most = (float(text.split()[0].replace("/", "")) for text in (wanted.least, wanted.most))
        unit = wanted.least.partition(" ")[2]
        return f"{draw(st.integers(int(least) + 1, max(int(least) + 1, int(most))))} {unit}".strip()
    if wanted.choices:
        return str(draw(st.sampled_from(wanted.choices)))
    if wanted.sort == "number":
        return str(draw(st.integers(1, 6)))
    examples = [example for example in schema_at(place).get("examples", ()) if isinstance(example, str)]
    return draw(st.sampled_from([*examples, "red/white", "Some words: of its own, #1"]))


@st.composite
def _car(draw: st.DrawFn, path: Path) -> Data:
    """A car of the record with all that sets it apart; now and then one that is not told, or no car of it."""
    record = entry_of(path).record
    assert isinstance(record, VehicleRecord)
    if draw(st.integers(0, 9)) == 0:
        return draw(st.sampled_from([{"year": "2016"}, {"year": "unknown"}, "2016, left-hand drive", None]))
    made: dict[str, Any] = {}
    known = cars.variants(record)
    for name in holding.unsaid(record, None):
        if name == "year":
            made["year"] = str(draw(st.integers(*holding.years(record))))
        elif name == "side":
            made["side"] = draw(st.sampled_from(record.vehicle.drive_side))
        else:
            made.setdefault("is", {})[name] = draw(st.sampled_from(list(known[name].choices)))
    return made


def _key(key: str) -> str | int:
    return int(key) if key.isdecimal() else key


def claims_text(address: str, answers: list[dict[str, Any]]) -> str:
    """A claims file of them."""
    return json.dumps({"claims": 1, "vehicle": address, "on": "2026-11-26", "answers": answers}, ensure_ascii=False)


def with_text(path: Path, text: str) -> Entry:
    """A record in the place of a shipped one."""
    return PLACE.entry(path, read_text(text, PLACE.shown(path)))


__all__ = ["PLACE", "RECORDS", "answer", "claims_text", "entry_of", "facts", "leaves", "with_text"]
