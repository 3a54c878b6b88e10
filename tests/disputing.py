"""Makes shipped records in which facts are disputed."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

from undertrim.derive.evidence.facts import fact_at
from undertrim.record import fields
from undertrim.record.copying import copied
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, entry
from wired import PLACE

NOT_DISPUTED = ("source", "when", "note", "not_in")
"""What says something of a fact beside it, or in which cars it holds: none of it is a value that is measured."""


def addresses(item: Entry) -> Iterator[str]:
    """Every fact of a record by its keys."""
    for field in fields.walk(item.source.data, "vehicle"):
        keys = [str(step) for step in field.pointer]
        about = "/".join(keys)
        single = isinstance(field.value, str | list) and len(keys) > 1 and not set(keys) & set(NOT_DISPUTED)
        if single and fact_at(of(item), about) is not None:
            yield about


def of(item: Entry) -> VehicleRecord:
    """The typed record of a vehicle."""
    assert isinstance(item.record, VehicleRecord)
    return item.record


@cache
def loaded(path: Path) -> Entry:
    """A shipped record as it is."""
    return PLACE.load(path)


def disputing(path: Path, facts: Sequence[str]) -> Entry:
    """A shipped record with a conflict about each of these facts, and no other: what it says against something else."""
    found = loaded(path)
    data = copied(found.source.data)
    assert isinstance(data, dict)
    first = next(iter(of(found).evidence))
    data["conflicts"] = {
        f"c{number}": {
            "about": about,
            "claims": [{"says": _text(of(found), about), "source": first}, {"says": f"otherwise {number}", "source": first}],
        }
        for number, about in enumerate(facts)
    }  # fmt: skip
    return entry(path, "vehicle", replace(found.source, data=data))


def _text(record: VehicleRecord, about: str) -> str:
    fact = fact_at(record, about)
    assert fact is not None
    return fact.text[:80]
