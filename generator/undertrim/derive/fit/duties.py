"""What becomes of everything the factory unit also does, when a new receiver takes its place in one car."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from undertrim.derive.fit.duty_kinds import DutyKind, kind_of, named
from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.stock import Gear, Stocked, of_kind
from undertrim.record.model import Assignment, Duty, Opening, Part, VehicleRecord
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear, LeadsGear, ReceiverGear
from undertrim.words import Message, Value, all_of, message, one_of

KEEPERS = (InterfaceGear, HarnessGear)


class Fate(StrEnum):
    """What becomes of a duty."""

    STAYS = "stays"
    MOVED = "moved"
    KEPT = "kept"
    LOST = "lost"
    UNKNOWN = "unknown"


NEEDS_INTERFACE = message("duties/needs-interface")
UNLESS_GEAR = message("duties/unless-gear")
_WITH_UNIT = message("duties/with-unit")
_WHY = {"none": _WITH_UNIT, "interface": NEEDS_INTERFACE}
_UNLESS = {"none": UNLESS_GEAR, "interface": message("duties/unless-interface")}


@dataclass(frozen=True, slots=True)
class Outcome:
    """One duty in one car: `by` is the gear that keeps it, `why` says how it is lost or what is not known."""

    duty: str
    kind: DutyKind
    fate: Fate
    by: tuple[Piece, ...] = ()
    why: Message | None = None

    @property
    def name(self) -> Value:
        """The duty in words."""
        return named(self.duty)

    @property
    def stops(self) -> bool:
        """Whether the job is no plain replacement for it."""
        return self.kind.grave and self.fate in (Fate.LOST, Fate.UNKNOWN)

    @property
    def to_get(self) -> bool:
        """Whether an interface that is not in stock would keep it."""
        return self.fate is Fate.LOST and self.why == NEEDS_INTERFACE

    @property
    def words(self) -> Message:
        """What becomes of it, in words."""
        return message("duties/outcome", duty=self.name, becomes=self.said)

    @property
    def said(self) -> Message:
        """The same without its name."""
        if self.fate is Fate.KEPT:
            return kept_by(self.by)
        if self.why is None:
            return message(f"duties/{self.fate}")
        return self.why if self.why == _WITH_UNIT else message(f"duties/{self.fate}-since", why=self.why)


def kept_by(gear: Sequence[Piece]) -> Message:
    """That any of some gear keeps a duty."""
    return message("duties/kept", by=one_of(*gear))


def outcomes(
    record: VehicleRecord,
    opening: Opening,
    car: Assignment,
    shelf: Sequence[Gear] | None,
    receiver: Stocked[ReceiverGear] | None = None,
) -> tuple[Outcome, ...]:
    """What becomes of every duty of one car. Only an opening that a factory unit goes from has any.

    `shelf` is the gear that suits the opening there; None where the stock is not asked: then a duty that gear may keep is lost unless it does.
    Without a `receiver` any of the stock may be the one that keeps a duty.
    """
    if not opening.takes_over:
        return ()
    place = _Place(record, opening, car, shelf or (), receiver, asked=shelf is not None)
    return tuple(place.outcome(duty) for duty in record.duties.values() if duty.when.holds(car))


@dataclass(frozen=True)  # without slots: what may keep a duty is the same for all of them
class _Place:
    record: VehicleRecord
    opening: Opening
    car: Assignment
    shelf: Sequence[Gear]
    receiver: Stocked[ReceiverGear] | None
    asked: bool

    @cached_property
    def able(self) -> list[Gear]:
        """The gear that may keep a duty: the receiver, or any where none is named, and what goes between."""
        kinds = KEEPERS if self.receiver else (*KEEPERS, ReceiverGear)
        return [
            *([self.receiver] if self.receiver else []),
            *(one for one in self.shelf if isinstance(one.facts, kinds)),
        ]

    def keepers(self, duty: Duty, kind: DutyKind) -> list[Gear]:
        """The gear that keeps a duty, by its id or by its kind."""
        return [item for item in self.able if duty.id in item.facts.keeps or kind.id in item.facts.keeps]

    def outcome(self, duty: Duty) -> Outcome:
        kind = kind_of(duty)
        if duty.kept_by == "stays":
            return self._staying(duty, kind)
        if duty.kept_by == "moved":
            return self._moving(duty, kind)
        found = self.keepers(duty, kind)
        if duty.kept_by == "unknown":
            said = message("duties/said-to-keep", names=all_of(*(item.piece for item in found))) if found else None
            return Outcome(duty.id, kind, Fate.UNKNOWN, (), said)
        if not found:
            why = _WHY if self.asked else _UNLESS
            return Outcome(duty.id, kind, Fate.LOST, (), why[duty.kept_by])
        return self._kept(duty, kind, found)

    def _kept(self, duty: Duty, kind: DutyKind, found: Sequence[Gear]) -> Outcome:
        """Kept by gear, if the receiver has what that takes."""
        has = self._has(kind.lead)
        if has is False:
            return Outcome(duty.id, kind, Fate.LOST, (), message("duties/no-lead"))
        if has is None:
            return Outcome(duty.id, kind, Fate.UNKNOWN, (), message("duties/lead-unknown"))
        return Outcome(duty.id, kind, Fate.KEPT, tuple(item.piece for item in found))

    def _has(self, function: str) -> bool | None:
        """Whether the receiver has a lead for a function; None where nobody has recorded its leads."""
        if not function or self.receiver is None or function in self.receiver.facts.needs:
            return True
        sets = [item for item in of_kind(self.shelf, LeadsGear) if item.id == self.receiver.facts.lead_set]
        if not sets:
            return None
        return any(lead.function == function for item in sets for lead in item.facts.leads.values())

    def _staying(self, duty: Duty, kind: DutyKind) -> Outcome:
        part = self._part(duty)
        if part is not None and part.replaced == "yes":
            return Outcome(duty.id, kind, Fate.LOST, (), message("duties/part-replaced", part=part.name))
        return Outcome(duty.id, kind, Fate.STAYS)

    def _moving(self, duty: Duty, kind: DutyKind) -> Outcome:
        """Moved, if the part that carries it, or any where none is named, moves over in this car."""
        named = self._part(duty)
        parts = [named] if duty.part else [part for part in self.record.parts.values() if part.when.holds(self.car)]
        if any(part is not None and part.goes_to == self.opening.id for part in parts):
            return Outcome(duty.id, kind, Fate.MOVED)
        why = message("duties/part-stays", part=named.name) if named else message("duties/nothing-moves")
        return Outcome(duty.id, kind, Fate.UNKNOWN, (), why)

    def _part(self, duty: Duty) -> Part | None:
        part = self.record.parts.get(duty.part)
        return part if part is not None and part.when.holds(self.car) else None
