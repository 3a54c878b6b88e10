"""Asks whether a fact is disputed, and makes the record as it is reckoned until the disputes are settled: with their cautious values."""

from collections.abc import Mapping, Sequence
from dataclasses import is_dataclass, replace
from typing import Any, TypeVar

from undertrim.derive.evidence.conflicts import Dispute, disputes
from undertrim.derive.evidence.typed_names import typed_names
from undertrim.derive.once import once
from undertrim.record import units
from undertrim.record.gear import AnyRecord
from undertrim.record.model import Blank

Record = TypeVar("Record", bound=AnyRecord)


def open_disputes(record: AnyRecord, *keys: str | int) -> tuple[Dispute, ...]:
    """The disputes that nothing has settled about the fact that keys lead to, and about what is below it; all without keys."""
    return tuple(item for item in disputes(record, *keys) if item.open) if record.conflicts else ()


def disputed(record: AnyRecord, *keys: str | int) -> Dispute | None:
    """The open dispute about one fact; None where nobody doubts it."""
    return next((item for item in open_disputes(record, *keys) if len(item.keys) == len(keys)), None)


def reckoned(record: Record) -> Record:
    """The record with the cautious value in place of every fact in dispute; itself where there is none.

    Where no claim is known to be the safe one the fact is unknown. What cannot be unknown (a function, a drive) stays as it stands: who
    shows or uses it asks `open_disputes`.
    """
    return _reckoned(record) or record


@once
def _reckoned(record: Record) -> Record | None:
    """The record with cautious values; None where it has no other."""
    other = None
    for item in open_disputes(record):
        if item.fact and not item.holds_cautious and (item.cautious != Blank.UNKNOWN or item.fact.says_unknown):
            other = _with(other or record, item.keys, _value(item))
    return other


def _value(item: Dispute) -> Any:
    """The cautious value as the model holds it."""
    says, kind = item.cautious, item.fact.kind if item.fact else ""
    if says in tuple(Blank):
        return Blank(says) if kind or (item.fact and item.fact.form == "number") else says
    return units.parse(says, kind) if kind else says


def _with(thing: Any, keys: Sequence[str], value: Any) -> Any:
    """A copy of a thing of the model in which what the keys lead to has another value."""
    if not keys:
        return value
    key, *rest = keys
    if isinstance(thing, Mapping):
        return {name: _with(inner, rest, value) if name == key else inner for name, inner in thing.items()}
    if isinstance(thing, tuple):
        return tuple(_with(inner, rest, value) if str(place) == key else inner for place, inner in enumerate(thing))
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    name = typed_names(thing).get(key, "")
    return replace(thing, **{name: _with(getattr(thing, name), rest, value)}) if name else thing
