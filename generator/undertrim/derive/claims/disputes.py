"""Puts what differs into a conflict: all that is said of a fact stands in it, each with its evidence."""

import re
from dataclasses import dataclass

from undertrim.derive.evidence.conflicts import Dispute, disputes
from undertrim.record.changing import Change
from undertrim.record.gear import AnyRecord
from undertrim.record.source import Data, Pointer

_LONGEST = 60


def dispute_of(record: AnyRecord, place: Pointer) -> Dispute | None:
    """The conflict about just one fact, if there is one."""
    keys = tuple(map(str, place))
    return next((item for item in disputes(record, *place) if item.keys == keys), None)


@dataclass(frozen=True, slots=True)
class Said:
    """A value with the evidence that says so; none for what the record said before, from nobody knows where."""

    says: str
    source: tuple[str, ...]

    @property
    def typed(self) -> Data:
        """In the short form."""
        return [self.says, self._named] if self.source else self.whole

    @property
    def whole(self) -> Data:
        """As the whole has it."""
        return {"says": self.says, "source": self._named} if self.source else {"says": self.says}

    @property
    def _named(self) -> Data:
        return self.source[0] if len(self.source) == 1 else list(self.source)


def begun(record: AnyRecord, place: Pointer, stands: Said, other: Said, *, short: bool) -> Change:
    """A new conflict between what stands and what is said."""
    about = "/".join(map(str, place))
    claims = [stands, other]
    typed: Data = [item.typed if short else item.whole for item in claims]
    whole = {"about": about, "claims": [item.whole for item in claims]}
    return Change(("conflicts", _name(record, place)), {"about": about, "claims": typed}, whole)


def joined(dispute: Dispute, says: str, evidence: str, *, short: bool) -> Change:
    """A conflict with one more voice: beside those who say the same, or by itself."""
    claims = [Said(claim.says, claim.source) for claim in dispute.claims]
    like = next((number for number, item in enumerate(claims) if dispute.says_same(item.says, says)), None)
    if like is None:
        claims.append(Said(says, (evidence,)))
    else:
        claims[like] = Said(claims[like].says, (*claims[like].source, evidence))
    whole: Data = [item.whole for item in claims]
    return Change(
        ("conflicts", dispute.conflict.id, "claims"), [item.typed for item in claims] if short else whole, whole
    )


def _name(record: AnyRecord, place: Pointer) -> str:
    """An id for a conflict from what it is about."""
    words = re.sub(r"[^a-z0-9]+", "-", "-".join(map(str, place[1:] or place)).lower()).strip("-")
    base = words[: _LONGEST - 3].rstrip("-") or "fact"
    numbered = (f"{base}-{number}" for number in range(2, len(record.conflicts) + 3))
    return next(name for name in (base, *numbered) if name not in record.conflicts)
