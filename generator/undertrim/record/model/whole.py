"""The record as a whole."""

from dataclasses import dataclass, field
from typing import TypeVar

from undertrim.record.model.basics import Assignment, Decided, all_names
from undertrim.record.model.car_facts import AfterBattery, Closure, Rest, Restraint
from undertrim.record.model.evidence import Conflict, Evidence, Verified, VerifiedPart
from undertrim.record.model.identity import Variant, VehicleFacts
from undertrim.record.model.kinds import Opening
from undertrim.record.model.openings import AnyOpening
from undertrim.record.model.parts import AreaFacts, Part, Prep
from undertrim.record.model.reached import Reached
from undertrim.record.model.wiring import Connector, Duty, FunctionFact, Ladder, Run, SoundSystem
from undertrim.record.taken import Taken
from undertrim.record.whose import NOBODYS, Whose

AnOpening = TypeVar("AnOpening", bound=AnyOpening)

Thing = Part | Prep | Opening
"""What work is done at."""

Job = Opening | Reached
"""What somebody may have as a job."""


@dataclass(frozen=True, slots=True, weakref_slot=True)
class VehicleRecord:
    """One vehicle record."""

    format: int
    vehicle: VehicleFacts
    parts: dict[str, Part] = field(default_factory=dict)
    """What comes off; empty, like `openings`, only in a record that has just been begun."""
    openings: dict[str, Opening] = field(default_factory=dict)
    demo: Decided = "no"
    lang: str = ""
    variants: dict[str, Variant] = field(default_factory=dict)
    evidence: dict[str, Evidence] = field(default_factory=dict)
    preps: dict[str, Prep] = field(default_factory=dict)
    areas: dict[str, AreaFacts] = field(default_factory=dict)
    connectors: dict[str, Connector] = field(default_factory=dict)
    functions: dict[str, FunctionFact] = field(default_factory=dict)
    duties: dict[str, Duty] = field(default_factory=dict)
    sound: dict[str, SoundSystem] = field(default_factory=dict)
    ladders: dict[str, Ladder] = field(default_factory=dict)
    runs: dict[str, Run] = field(default_factory=dict)
    after_battery: AfterBattery | None = None
    restraint: Restraint | None = None
    rest: Rest | None = None
    closures: dict[str, Closure] = field(default_factory=dict)
    conflicts: dict[str, Conflict] = field(default_factory=dict)
    verified: Verified | None = None
    verified_parts: dict[str, VerifiedPart] = field(default_factory=dict)
    taken: dict[tuple[str | int, ...], Taken] = field(default_factory=dict)
    """The topmost places that hold what another record says: no field of a file, but what became of `shares`."""
    whose: Whose = NOBODYS
    """Whose it is where collections lie on each other: no field of a file either."""

    @property
    def things(self) -> tuple[Thing, ...]:
        """All preparations, parts and openings."""
        return (*self.preps.values(), *self.parts.values(), *self.openings.values())

    @property
    def reached(self) -> tuple[Reached, ...]:
        """The parts and cable runs that somebody may want to get at for their own sake."""
        parts = (Reached.part(part) for part in self.parts.values() if part.reached_for)
        return (*parts, *(Reached.run(run) for run in self.runs.values() if run.reached_for))

    @property
    def jobs(self) -> dict[str, Job]:
        """All that may be worked at, by id: the openings, then what is reached for. An opening has its id to itself; a rule says so."""
        taken = all_names(self.openings.values())
        return {
            **self.openings,
            **{one.id: one for one in self.reached if one.id not in taken and one.written not in taken},
        }

    def openings_of(self, kind: type[AnOpening]) -> list[AnOpening]:
        """The openings of one kind, in the order of the record."""
        return [opening for opening in self.openings.values() if isinstance(opening, kind)]

    def function_facts(self, function: str) -> tuple[FunctionFact, ...]:
        """What is said of a function that stands on no pin: one entry, or one for each kind of car."""
        return tuple(fact for fact in self.functions.values() if fact.of == function)

    def function_fact(self, function: str, car: Assignment) -> FunctionFact | None:
        """The one that holds for a car; None where nothing is said of it."""
        return next((fact for fact in self.function_facts(function) if fact.when.holds(car)), None)

    def high_voltage(self, thing: Thing) -> str:
        """How close the high voltage comes to a thing: clear, near, inside or unknown; its own word, else its area's."""
        if self.vehicle.high_voltage == "no":
            return "clear"
        area = self.areas.get(thing.area)
        own = "" if isinstance(thing, Prep) else thing.high_voltage
        return own or (area.high_voltage if area else "") or "unknown"
