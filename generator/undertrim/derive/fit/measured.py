"""An opening as it is reckoned: with the cautious value of what is disputed, and each value as uncertain as its instrument."""

from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any

from undertrim.derive.evidence.readings import read, same
from undertrim.derive.fit import disputed
from undertrim.record.instruments import coarseness, scales
from undertrim.record.model import Conflict, Opening, Sources, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import Message

_EXACT = ("impedance",)  # a nominal value: a name of a kind, whatever a meter showed


def reckoned(record: VehicleRecord, opening: Opening) -> tuple[Opening, tuple[Message, ...]]:
    """The opening to reckon with, and a note on every dispute."""
    found, notes = disputed.cautious(record, opening)
    return _widened(record, found, ("openings", opening.id), ()), notes


def _widened(record: VehicleRecord, thing: Any, keys: Sequence[str], sources: Sources) -> Any:
    """A copy of a thing of the model in which every quantity is as uncertain as what it was measured with; the nearest `source` counts."""
    if isinstance(thing, Quantity):
        behind = _settled(record, "/".join(keys), thing) or sources
        pieces = [record.evidence[name] for name in behind if name in record.evidence]
        return replace(thing, step=coarseness(thing, [scales(piece.with_) for piece in pieces]))
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    own = getattr(thing, "source", ()) or sources
    inner: Mapping[str, Any] = {
        entry.name: getattr(thing, entry.name) for entry in fields(thing) if entry.name not in _EXACT
    }
    changed = {name: _widened(record, value, (*keys, name), own) for name, value in inner.items()}
    return replace(thing, **{name: value for name, value in changed.items() if value is not inner[name]})


def _settled(record: VehicleRecord, about: str, value: Quantity) -> Sources:
    """The evidence that a conflict names for a value: what settled it, else what claims just this."""
    for conflict in record.conflicts.values():
        if conflict.about == about:
            return (conflict.settled_by,) if conflict.settled_by else _claiming(conflict, value)
    return ()


def _claiming(conflict: Conflict, value: Quantity) -> Sources:
    claims = (claim for claim in conflict.claims if same(read(claim.says, value.kind), value))
    return tuple(name for claim in claims for name in claim.source)
