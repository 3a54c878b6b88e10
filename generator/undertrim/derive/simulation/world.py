"""The state of the car while a procedure runs: what is on, what is off, what is open, what has been counted."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from undertrim.derive.procedure import states
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation.ways import Ways
from undertrim.record.model import Assignment, Tether, VehicleRecord

Place = tuple[str, str]  # a node and a tether of its part


@dataclass(frozen=True, slots=True)
class Open:
    """A tether that was undone: which, in which step, and how that step says it may end."""

    tether: Tether
    step: Step
    later: tuple[str, ...] = ()


@dataclass(slots=True)
class World:
    """Everything the replay keeps track of. Steps are kept beside what they did, so that a fault can name both sides."""

    record: VehicleRecord
    car: Assignment
    ways: Ways
    values: dict[str, str] = field(default_factory=lambda: dict(states.initial()))
    set_by: dict[str, Step] = field(default_factory=dict)
    off: dict[str, Step] = field(default_factory=dict)
    gone: set[str] = field(default_factory=set)
    fitted: set[str] = field(default_factory=set)
    undone: dict[Place, Open] = field(default_factory=dict)
    carried: dict[Place, Open] = field(default_factory=dict)
    untested: dict[Place, Open] = field(default_factory=dict)
    unsealed: dict[str, Step] = field(default_factory=dict)
    out: dict[tuple[str, int], int] = field(default_factory=dict)
    unrestored: dict[str, Step] = field(default_factory=dict)
    waited: float = 0.0
    wait_unknown: bool = False
    batteries_off: set[str] = field(default_factory=set)
    untried: dict[Place, Open] = field(default_factory=dict)
    silent: dict[str, Step] = field(default_factory=dict)
    """What drives speakers and was fitted, and has not been seen on yet, by its node."""
    heard: Step | None = None
    """The last step that tried speakers by their sound."""
    lamp: Step | None = None
    """The last step that touched restraint wiring; None once the airbag lamp was watched."""

    def set(self, changes: Mapping[str, str], step: Step) -> None:
        """Change states of the car. Of several batteries each counts: off is all of them off, on is all of them on."""
        for state, value in changes.items():
            self.values[state] = self._battery(value, step) if state == "battery" else value
            self.set_by[state] = step
        if "battery" in changes and self.values["battery"] != "off":
            self.waited, self.wait_unknown = 0.0, False

    def _battery(self, value: str, step: Step) -> str:
        (self.batteries_off.add if value == "off" else self.batteries_off.discard)(step.part)
        if not self.batteries_off:
            return "on"
        own = {name for name, prep in self.record.preps.items() if "battery" in prep.sets and prep.when.holds(self.car)}
        return "off" if own <= self.batteries_off else "partly off"

    def open_restraints(self) -> list[Open]:
        """Restraint plugs that are undone now."""
        return [item for item in self.undone.values() if item.tether.circuit == "restraint"]
