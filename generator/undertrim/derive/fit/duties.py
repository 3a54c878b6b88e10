"""What becomes of everything the factory unit also does, when a new receiver takes its place in one car."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from undertrim.derive.fit.duty_kinds import DutyKind, kind_of
from undertrim.derive.fit.stock import Gear, Stocked, of_kind
from undertrim.record.model import Assignment, Duty, Opening, Part, VehicleRecord
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear, LeadsGear, ReceiverGear

KEEPERS = (InterfaceGear, HarnessGear)


class Fate(StrEnum):
    """What becomes of a duty."""

    STAYS = "stays"
    MOVED = "moved"
    KEPT = "kept"
    LOST = "lost"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Outcome:
    """One duty in one car: `by` are the names of the gear that keeps it, `why` says how it is lost or what is not known."""

    duty: str
    kind: DutyKind
    fate: Fate
    by: tuple[str, ...] = ()
    why: str = ""

    @property
    def name(self) -> str:
        """The duty in words."""
        return self.duty.replace("-", " ")

    @property
    def stops(self) -> bool:
        """Whether the job is no plain replacement for it."""
        return self.kind.grave and self.fate in (Fate.LOST, Fate.UNKNOWN)

    @property
    def to_get(self) -> bool:
        """Whether an interface that is not in stock would keep it."""
        return self.fate is Fate.LOST and self.why == _WHY["interface"]

    @property
    def words(self) -> str:
        """What becomes of it, in words."""
        return f"{self.name}: {self.said}"

    @property
    def said(self) -> str:
        """The same without its name."""
        if self.fate is Fate.KEPT:
            return f"kept by {' or '.join(self.by)}"
        between = " " if self.why == _WHY["none"] else ", " if self.why else ""
        return f"{_SAID[self.fate]}{between}{self.why}"


_SAID = {
    Fate.STAYS: "stays where it is",
    Fate.MOVED: "moves to the new parts",
    Fate.LOST: "LOST",
    Fate.UNKNOWN: "unknown whether it can be kept",
}


def outcomes(
    record: VehicleRecord,
    opening: Opening,
    car: Assignment,
    shelf: Sequence[Gear],
    receiver: Stocked[ReceiverGear] | None = None,
) -> tuple[Outcome, ...]:
    """What becomes of every duty of one car. Only an opening that a factory unit goes from has any.

    `shelf` is the gear that suits the opening there. Without a `receiver` any of the stock may be the one that keeps a duty.
    """
    if not opening.takes_over:
        return ()
    place = _Place(record, opening, car, shelf, receiver)
    return tuple(place.outcome(duty) for duty in record.duties.values() if duty.when.holds(car))


def keepers(duty: Duty, shelf: Sequence[Gear], receiver: Stocked[ReceiverGear] | None) -> list[Gear]:
    """The gear that keeps a duty, by its id or by its kind."""
    names = {duty.id, kind_of(duty).id}
    able = [
        item
        for item in shelf
        if isinstance(item.facts, KEEPERS) or (receiver is None and isinstance(item.facts, ReceiverGear))
    ]
    return [item for item in ([receiver] if receiver else []) + able if names & set(item.facts.keeps)]


@dataclass(frozen=True, slots=True)
class _Place:
    record: VehicleRecord
    opening: Opening
    car: Assignment
    shelf: Sequence[Gear]
    receiver: Stocked[ReceiverGear] | None

    def outcome(self, duty: Duty) -> Outcome:
        kind, found = kind_of(duty), keepers(duty, self.shelf, self.receiver)
        if duty.kept_by == "stays":
            return self._staying(duty, kind)
        if duty.kept_by == "moved":
            return self._moving(duty, kind)
        if duty.kept_by == "unknown":
            said = f"{' and '.join(item.name for item in found)} is said to keep it" if found else ""
            return Outcome(duty.id, kind, Fate.UNKNOWN, (), said)
        if not found:
            return Outcome(duty.id, kind, Fate.LOST, (), _WHY[duty.kept_by])
        return self._kept(duty, kind, found)

    def _kept(self, duty: Duty, kind: DutyKind, found: Sequence[Gear]) -> Outcome:
        """Kept by gear, if the receiver has what that takes."""
        has = self._has(kind.lead)
        if has is False:
            return Outcome(duty.id, kind, Fate.LOST, (), "the receiver has no lead for it")
        if has is None:
            return Outcome(duty.id, kind, Fate.UNKNOWN, (), "whether the receiver has a lead for it is not recorded")
        return Outcome(duty.id, kind, Fate.KEPT, tuple(item.name for item in found))

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
            return Outcome(duty.id, kind, Fate.LOST, (), f"{part.name.lower()} is replaced")
        return Outcome(duty.id, kind, Fate.STAYS)

    def _moving(self, duty: Duty, kind: DutyKind) -> Outcome:
        """Moved, if the part that carries it, or any where none is named, moves over in this car."""
        named = self._part(duty)
        parts = [named] if duty.part else [part for part in self.record.parts.values() if part.when.holds(self.car)]
        if any(part is not None and part.goes_to == self.opening.id for part in parts):
            return Outcome(duty.id, kind, Fate.MOVED)
        what = named.name.lower() if named else "no part that carries it"
        return Outcome(
            duty.id, kind, Fate.UNKNOWN, (), f"{what}{' does not move' if named else ' moves'} over in this car"
        )

    def _part(self, duty: Duty) -> Part | None:
        part = self.record.parts.get(duty.part)
        return part if part is not None and part.when.holds(self.car) else None


_WHY = {"none": "with the factory unit", "interface": "needs an interface, none in stock keeps it"}
