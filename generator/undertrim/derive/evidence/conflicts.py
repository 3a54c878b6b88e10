"""Facts on which the evidence disagrees: what stands in the record, what each side claims, which value is the cautious one."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from undertrim.derive.evidence import cautious
from undertrim.derive.evidence.facts import Fact, fact_at
from undertrim.derive.evidence.readings import Reading, read, same
from undertrim.derive.once import once
from undertrim.record.gear import AnyRecord
from undertrim.record.model import Claim, Conflict, Evidence


class Unsettled(StrEnum):
    """Why what a conflict is said to be settled by does not settle it."""

    ABSENT = "absent"
    NOT_MEASURED = "not-measured"
    NO_CLAIM = "no-claim"
    NOT_STANDING = "not-standing"


@dataclass(frozen=True)
class Dispute:
    """One conflict with the fact it is about; `fact` is None where the record has no such single value."""

    conflict: Conflict
    fact: Fact | None
    evidence: Mapping[str, Evidence]

    @property
    def claims(self) -> Sequence[Claim]:
        """What each piece of evidence says."""
        return self.conflict.claims

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys that lead to the fact."""
        return tuple(self.conflict.about.split("/"))

    def below(self, *keys: str | int) -> bool:
        """Whether the fact is the one that keys lead to, or below it."""
        return self.keys[: len(keys)] == tuple(map(str, keys))

    @cached_property
    def rule(self) -> cautious.Order:
        """Which side of this fact is the safe one."""
        return cautious.order(self.conflict.about)

    @cached_property
    def cautious(self) -> str:
        """The claim that does the least harm if it is wrong, as typed; `unknown` where there is no safe side."""
        return cautious.choose(self.rule, [self._read(claim.says) for claim in self.claims])

    @cached_property
    def agreed(self) -> bool:
        """Whether all claims are one value in other words (`30 min`, `1800 s`): then there is nothing to settle."""
        first, *others = [self._read(claim.says) for claim in self.claims]
        return all(same(first, other) for other in others)

    @cached_property
    def open(self) -> bool:
        """Whether the fact is in dispute: the claims differ, and no measurement has decided."""
        return self.fact is not None and not self.agreed and not self.settled

    @cached_property
    def stands(self) -> bool:
        """Whether the value in the record is one of those claimed."""
        return any(self.is_value(claim.says) for claim in self.claims)

    @cached_property
    def holds_cautious(self) -> bool:
        """Whether the value in the record is the cautious one."""
        return self.is_value(self.cautious)

    def is_value(self, says: str) -> bool:
        """Whether a text is the value in the record, in whatever unit."""
        return self.fact is not None and same(self._read(says), self._read(self.fact.text))

    def says_same(self, one: str, other: str) -> bool:
        """Whether two claims are one value."""
        return same(self._read(one), self._read(other))

    @cached_property
    def unsettled(self) -> Unsettled | None:
        """Why `settled_by` does not settle it; None where it does, and where nothing is said to."""
        name = self.conflict.settled_by
        by_it = [claim for claim in self.claims if name in claim.source]
        if not name:
            return None
        if name not in self.evidence:
            return Unsettled.ABSENT
        if self.evidence[name].how != "measured":
            return Unsettled.NOT_MEASURED
        if not by_it:
            return Unsettled.NO_CLAIM
        return None if any(self.is_value(claim.says) for claim in by_it) else Unsettled.NOT_STANDING

    @property
    def settled(self) -> bool:
        """Whether a measurement has decided it, and its value stands in the record."""
        return bool(self.conflict.settled_by) and self.unsettled is None

    def _read(self, says: str) -> Reading:
        fact = self.fact
        return read(says, fact.kind, fact.form, fact.scheme) if fact else read(says, "")


def disputes(record: AnyRecord, *keys: str | int) -> Iterator[Dispute]:
    """Every conflict of a record, in its order; with keys those about the fact that they lead to and about what is below it."""
    wanted = "".join(f"{key}/" for key in keys)
    return (dispute for dispute in _all(record) if f"{dispute.conflict.about}/".startswith(wanted))


@once
def _all(record: AnyRecord) -> tuple[Dispute, ...]:
    return tuple(
        Dispute(conflict, fact_at(record, conflict.about), record.evidence) for conflict in record.conflicts.values()
    )
