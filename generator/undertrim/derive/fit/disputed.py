"""An opening as it is reckoned while the evidence disagrees on it: with the cautious value of every open dispute."""

from collections.abc import Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

from undertrim.derive import doors
from undertrim.derive.evidence.conflicts import Dispute, disputes
from undertrim.record import units
from undertrim.record.model import Blank, Opening, VehicleRecord

T = TypeVar("T")


def cautious(record: VehicleRecord, opening: Opening) -> tuple[Opening, tuple[str, ...]]:
    """The opening with the cautious value of every fact in dispute, and a note on each.

    Where no claim is known to be the safe one the fact counts as unknown; a settled dispute changes nothing. Whether there is a
    pressure sensor is what its door says, not what this opening says.
    """
    notes: list[str] = []
    for dispute in disputes(record):
        keys = dispute.conflict.about.split("/")
        if keys[:2] != ["openings", opening.id] or dispute.settled or dispute.fact is None:
            continue
        if not dispute.holds_cautious:
            opening = _with(opening, keys[2:], _value(dispute))
        notes.append(_note(keys[2:], dispute))
    return replace(opening, crash_sensor=doors.sensor(record, opening)), tuple(notes)


def _note(keys: Sequence[str], dispute: Dispute) -> str:
    fact = " ".join(keys).replace("_", " ")
    return f"the evidence disagrees on {fact}: measure again; reckoned with {dispute.cautious}"


def _value(dispute: Dispute) -> Any:
    """The cautious value as the model holds it."""
    says, kind = dispute.cautious, dispute.fact.kind if dispute.fact else ""
    if says in tuple(Blank):
        return Blank(says) if kind else says
    return units.parse(says, kind) if kind else says


def _with(thing: T, keys: Sequence[str], value: Any) -> T:
    """A copy of a thing of the model in which the field that the keys lead to has another value; lists are left as they are."""
    if not is_dataclass(thing) or keys[0] not in {entry.name for entry in fields(thing)}:
        return thing
    inner = getattr(thing, keys[0])
    new = value if len(keys) == 1 else _with(inner, keys[1:], value)
    return replace(thing, **{keys[0]: new})  # type: ignore[type-var] # it is a dataclass, as asked above
