"""A vehicle record as typed, frozen data: the checked shape of one YAML file.

Quantities are `Quantity` (value in the canonical unit, text as typed) or a `Blank` word. Ids are the keys they stood under.
Field meanings are in the schema; nothing here repeats them.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Annotated, Literal

from undertrim.record import drives
from undertrim.record.drives import Drive
from undertrim.record.units import Quantity

Assignment = Mapping[str, str]  # variant -> choice, for one particular car


class Blank(StrEnum):
    """A word that stands where a quantity could: not known, or looked into and there is none."""

    UNKNOWN = "unknown"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Kind:
    """Marks an annotated quantity with the kind of unit it is typed in."""

    name: str


Length = Annotated[Quantity | Blank, Kind("length")]
Duration = Annotated[Quantity | Blank, Kind("time")]
Torque = Annotated[Quantity | Blank, Kind("torque")]
Impedance = Annotated[Quantity | Blank, Kind("resistance")]

Count = int | Literal[Blank.UNKNOWN]
Known = Literal["yes", "no", "unknown"]
Decided = Literal["yes", "no"]
Side = Literal["left", "right"]
Sources = tuple[str, ...]
States = dict[str, str]


@dataclass(frozen=True, slots=True)
class When:
    """The variants something applies to: every clause must hold, each by any of its choices."""

    clauses: tuple[tuple[str, tuple[str, ...]], ...] = ()

    def holds(self, car: Assignment) -> bool:
        """Whether it applies to a car; a variant that `car` leaves open counts as holding."""
        return all(car.get(variant, choices[0]) in choices for variant, choices in self.clauses)

    @property
    def variants(self) -> frozenset[str]:
        """The variants it names."""
        return frozenset(variant for variant, _ in self.clauses)


ALWAYS = When()


@dataclass(frozen=True, slots=True)
class Month:
    """A month of build; comparable through `index`."""

    year: int
    month: int

    @property
    def index(self) -> int:
        """Months since year 0."""
        return self.year * 12 + self.month - 1

    def __str__(self) -> str:
        return f"{self.year:04}-{self.month:02}"


@dataclass(frozen=True, slots=True)
class Built:
    """Months of build, half open: `to` is the first month not covered."""

    from_: Month
    to: Month


@dataclass(frozen=True, slots=True)
class ModelYears:
    """First and last model year, both covered."""

    first: int
    last: int


@dataclass(frozen=True, slots=True)
class VehicleFacts:
    """Which vehicles a record covers."""

    make: str
    model: str
    built: Built
    drive_side: tuple[Side, ...]
    high_voltage: Known
    phase: str = ""
    tell: str = ""
    model_years: ModelYears | None = None
    bodies: tuple[str, ...] = ()
    also_called: tuple[str, ...] = ()
    follows: str = ""
    boundaries: tuple[Month, ...] = ()
    confirmed_across: tuple[Month, ...] = ()
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to a variant's question."""

    id: str
    label: str
    tell: str = ""


@dataclass(frozen=True, slots=True)
class Variant:
    """One question about the car with its possible answers."""

    id: str
    ask: str
    choices: dict[str, Choice]
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Evidence:
    """Who found what out, on which car, when, how."""

    id: str
    how: str
    on: str
    by: str
    car: str = ""
    with_: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard with its consequence and how to avoid it."""

    signal: str
    hazard: str
    consequence: str
    avoid: str
    when: When = ALWAYS
    source: Sources = ()


FASTENER_KINDS = ("screw", "bolt", "nut", "clip", "scrivet", "hook", "bond")
TURNED = ("screw", "bolt", "nut")


@dataclass(frozen=True, slots=True)
class Fastener:
    """One kind of fastener with its count per side; exactly one of the first seven fields is set."""

    screw: str = ""
    bolt: str = ""
    nut: str = ""
    clip: str = ""
    scrivet: str = ""
    hook: str = ""
    bond: str = ""
    count: Count | None = None
    at: dict[str, int] = field(default_factory=dict)
    under: str = ""
    length: Length | None = None
    thread: str = ""
    torque: Torque | None = None
    reuse: Decided = "yes"
    moves: Decided = "no"
    role: str = "ordinary"
    leave: Decided = "no"
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()

    @property
    def kind(self) -> str:
        """Which sort it is: screw, bolt, nut, clip, scrivet, hook or bond."""
        return next(kind for kind in FASTENER_KINDS if getattr(self, kind))

    @property
    def what(self) -> str:
        """Its drive, clip kind or bond as typed."""
        typed: str = getattr(self, self.kind)
        return typed

    @property
    def drive(self) -> Drive | None:
        """What turns it; None for clips, hooks and bonds."""
        return drives.parse(self.what) if self.kind in TURNED else None


@dataclass(frozen=True, slots=True)
class Tether:
    """A plug, cable, rod or hose that still holds a part when its fasteners are out; `then` is empty if not said."""

    id: str
    name: str
    kind: str
    circuit: str = "ordinary"
    then: str = ""
    when: When = ALWAYS
    how: str = ""
    test: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Ref:
    """A prerequisite as written: an id with its condition and side."""

    part: str
    when: When = ALWAYS
    side: Side | None = None


@dataclass(frozen=True, slots=True)
class Wait:
    """How long to wait after a preparation, in seconds, and why."""

    time: Duration
    why: str
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Prep:
    """A change of the car's state, with the way back; `restore` is empty where nothing needs undoing."""

    id: str
    name: str
    sets: States
    how: str
    area: str = ""
    when: When = ALWAYS
    after: tuple[Ref, ...] = ()
    needs: States = field(default_factory=dict)
    wait: Wait | None = None
    restore: str = ""
    held_by: tuple[Fastener, ...] = ()
    takes: Duration | None = None
    cautions: tuple[Caution, ...] = ()
    on_side: Side | None = None
    mirrors: Known | None = None
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class AreaFacts:
    """What is true of a whole region of the car."""

    id: str
    high_voltage: str = ""
    restraints: tuple[str, ...] = ()
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Part:
    """A thing that comes off."""

    id: str
    name: str
    release: str
    area: str = ""
    when: When = ALWAYS
    each: tuple[Side, ...] = ()
    after: tuple[Ref, ...] = ()
    after_any: tuple[dict[str, tuple[Ref, ...]], ...] = ()
    needs: States = field(default_factory=dict)
    direction: str = ""
    held_by: tuple[Fastener, ...] = ()
    tethers: dict[str, Tether] = field(default_factory=dict)
    goes_to: str = ""
    replaced: Decided = "no"
    seal: str = ""
    how: str = ""
    refit_how: str = ""
    takes: Duration | None = None
    refit_takes: Duration | None = None
    cautions: tuple[Caution, ...] = ()
    on_side: Side | None = None
    mirrors: Known | None = None
    high_voltage: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Face:
    """The opening in the dash from the front."""

    width: Length
    height: Length


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole or outline: `diameter` for a round one, else `width` and `height`."""

    shape: str
    diameter: Length | None = None
    width: Length | None = None
    height: Length | None = None


@dataclass(frozen=True, slots=True)
class Bolts:
    """A bolt pattern: `diameter` for a circle, else `width` and `height`."""

    pattern: str
    count: int
    diameter: Length | None = None
    width: Length | None = None
    height: Length | None = None


@dataclass(frozen=True, slots=True)
class Depth:
    """Free depth to the first obstruction, from its datum."""

    clear: Length
    datum: str = ""
    over: str = ""
    to: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Opening:
    """A place where new gear goes; which dimensions are set depends on `kind`."""

    id: str
    name: str
    kind: str
    behind: tuple[str, ...]
    area: str = ""
    when: When = ALWAYS
    each: tuple[Side, ...] = ()
    face: Face | None = None
    kit: str = ""
    nominal: str = ""
    hole: Hole | None = None
    bolts: Bolts | None = None
    depth: Depth | None = None
    room_to_grille: Length | None = None
    factory_spacer: Length | None = None
    impedance: Impedance | None = None
    crash_sensor: Known | None = None
    high_voltage: str = ""
    alters: tuple[str, ...] = ()
    not_in: tuple[When, ...] = ()
    on_side: Side | None = None
    install_how: str = ""
    test_how: str = ""
    cautions: tuple[Caution, ...] = ()
    mirrors: Known | None = None
    source: Sources = ()

    @property
    def in_a_door(self) -> bool:
        """Whether it is in a door; a door speaker whose area is not recorded counts as in one."""
        return self.area in ("front-door", "rear-door") or (not self.area and "door" in self.id)


@dataclass(frozen=True, slots=True)
class Pin:
    """One contact of a plug."""

    id: str
    function: str
    colour: str = ""
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Connector:
    """One plug of the car; `view` says which side its positions are drawn from."""

    id: str
    name: str
    view: str
    rows: int
    columns: int
    pins: dict[str, Pin]
    when: When = ALWAYS
    at: str = ""
    standard: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class FunctionFact:
    """How the car provides a function that stands on no recorded pin."""

    id: str
    by: str
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Duty:
    """Something the factory unit does besides playing, and how it is kept."""

    id: str
    kept_by: str
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Todo:
    """One thing to do before the battery goes off or after it is back."""

    id: str
    do: str
    when: When = ALWAYS
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class AfterBattery:
    """What to do around the battery; `checked_none` names the lists found empty."""

    before: dict[str, Todo] = field(default_factory=dict)
    after: dict[str, Todo] = field(default_factory=dict)
    checked_none: tuple[str, ...] = ()
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Restraint:
    """What the maker says of working near airbags and belts; nothing here has a usual value."""

    wait: Duration
    fitted: Known = "unknown"
    memory_keeper: str = "unknown"
    read_faults_first: Known = "unknown"
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Closure:
    """How a lid opens."""

    id: str
    latch: str
    key: Known = "unknown"
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Claim:
    """What one piece of evidence says, as typed."""

    says: str
    source: Sources


@dataclass(frozen=True, slots=True)
class Conflict:
    """A fact on which the evidence disagrees; `about` are the keys that lead to it, joined with `/`."""

    id: str
    about: str
    claims: tuple[Claim, ...]
    settled_by: str = ""


@dataclass(frozen=True, slots=True)
class Verified:
    """Who checked the record at which car, with a fingerprint of every block of facts as it stood then."""

    on: str
    by: str
    car: str
    facts: dict[str, str]


@dataclass(frozen=True, slots=True)
class VehicleRecord:
    """One vehicle record."""

    format: int
    vehicle: VehicleFacts
    parts: dict[str, Part]
    openings: dict[str, Opening]
    demo: Decided = "no"
    variants: dict[str, Variant] = field(default_factory=dict)
    evidence: dict[str, Evidence] = field(default_factory=dict)
    preps: dict[str, Prep] = field(default_factory=dict)
    areas: dict[str, AreaFacts] = field(default_factory=dict)
    connectors: dict[str, Connector] = field(default_factory=dict)
    functions: dict[str, FunctionFact] = field(default_factory=dict)
    duties: dict[str, Duty] = field(default_factory=dict)
    after_battery: AfterBattery | None = None
    restraint: Restraint | None = None
    closures: dict[str, Closure] = field(default_factory=dict)
    conflicts: dict[str, Conflict] = field(default_factory=dict)
    verified: Verified | None = None

    def high_voltage(self, thing: Part | Opening) -> str:
        """How close the high voltage comes to a part or opening: clear, near, inside or unknown; its own word, else its area's."""
        if self.vehicle.high_voltage == "no":
            return "clear"
        area = self.areas.get(thing.area)
        return thing.high_voltage or (area.high_voltage if area else "") or "unknown"
