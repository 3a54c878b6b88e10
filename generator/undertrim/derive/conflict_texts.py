"""What a dispute says: the fact in words, the claims with their sources, and the cautious value."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from undertrim.derive import fastener_words
from undertrim.derive.evidence.claims import claimed
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.fact_names import fact_name
from undertrim.record import units
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.source import Data as Typed
from undertrim.words import Items, Message, Value, message

CONFLICTS = {"conflict": message("conflicts/conflict"), "agreed": message("conflicts/agreed")}
"""How claims about a fact stand to each other."""


@dataclass(frozen=True, slots=True)
class Claim:
    """What one side of a conflict says, and the evidence it rests on."""

    says: Value
    source: Sequence[str]


@dataclass(frozen=True, slots=True)
class Conflict:
    """A conflict: the fact in words, what stands in the record, each claim with its sources, the cautious value and why it is."""

    id: str
    state: str
    word: Message
    about: str
    fact: Value
    stands: Value
    claims: Sequence[Claim]
    cautious: Value
    reason: Value
    safety: bool
    settled: bool
    settled_by: str
    text: Message


def conflict(record: VehicleRecord, dispute: Dispute) -> Conflict:
    """One conflict."""
    fact = dispute.fact
    kind = fact.kind if fact else ""
    state = "agreed" if dispute.agreed else "conflict"
    claims = [Claim(_shown(claim.says, kind), claim.source) for claim in dispute.claims]
    return Conflict(
        id=dispute.conflict.id,
        state=state,
        word=CONFLICTS[state],
        about=dispute.conflict.about,
        fact=fact_name(_names(record, dispute.keys), fact.pointer) if fact else dispute.conflict.about,
        stands=_shown(fact.text, kind) if fact else "",
        claims=claims,
        cautious=_shown(dispute.cautious, kind),
        reason=dispute.rule.reason,
        safety=dispute.rule.safety,
        settled=dispute.settled,
        settled_by=dispute.conflict.settled_by,
        text=_claimed(claims, _shown(dispute.cautious, kind)),
    )


def _claimed(claims: Sequence[Claim], cautious: Value) -> Message:
    """The claims and the cautious value in a sentence or two."""
    said = (claimed(claim.says, claim.source) for claim in claims)
    return message("conflicts/claimed", claims=Items(tuple(said), "either"), cautious=cautious)


def _shown(says: str, kind: str) -> Value:
    """A claim in both systems of units, where it is a quantity."""
    if says == Blank.UNKNOWN:
        return message("facts/unknown")
    try:
        return units.parse(says, kind) if kind else says
    except units.UnitError:
        return says


def _names(record: VehicleRecord, keys: Sequence[str]) -> Typed:
    """The name of what keys lead into, if it has one, laid out as in the file."""
    section, name = keys[:2]
    if section not in ("parts", "preps", "openings", "connectors") or name not in getattr(record, section):
        return {}
    return {section: {name: _named(getattr(record, section)[name])}}


def _named(thing: Any) -> Typed:
    tethers = {name: {"name": tether.name} for name, tether in getattr(thing, "tethers", {}).items()}
    held_by = [{"name": fastener_words.one(item)} for item in getattr(thing, "held_by", ())]
    return {"name": thing.name, "tethers": tethers, "held_by": held_by}
