"""A gear record as typed, frozen data. Which dimensions are set depends on `kind`; the schema says what each means."""

from dataclasses import dataclass, field

from undertrim.record.model import ALWAYS, Bolts, Current, Decided, Face, Hole, Impedance, Length, Voltage, When


@dataclass(frozen=True, slots=True)
class Place:
    """A vehicle record (as make/id) and an opening there."""

    vehicle: str
    opening: str
    when: When = ALWAYS


@dataclass(frozen=True, slots=True)
class Lead:
    """One wire of gear by what it does; `level` is speaker or line, empty where it is not sound or nothing is said."""

    function: str
    colour: str = ""
    level: str = ""
    behaves: str = ""
    supply: Voltage | None = None
    limit: Current | None = None
    fuse: Current | None = None
    gauge: str = ""
    note: str = ""
    id: str = ""


@dataclass(frozen=True, slots=True)
class Assembly:
    """One step of building up a kit; `part` is the part of the car that moves over in it."""

    do: str
    part: str = ""
    when: When = ALWAYS


@dataclass(frozen=True, slots=True)
class GearFacts:
    """What a piece of gear is and how big it is."""

    kind: str
    maker: str
    model: str
    nominal: str = ""
    body: Face | None = None
    chassis_depth: Length | None = None
    plug_room: Length | None = None
    trim: Face | None = None
    least_load: Impedance | None = None
    lead_set: str = ""
    outputs: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    basket: Hole | None = None
    flange: Hole | None = None
    hole: Hole | None = None
    bolts: Bolts | None = None
    depth: Length | None = None
    magnet: Length | None = None
    protrusion: Length | None = None
    gasket: Length | None = None
    terminals: str = ""
    impedance: Impedance | None = None
    thickness: Length | None = None
    car_bolts: Bolts | None = None
    opening: Face | None = None
    alters: tuple[str, ...] = ()
    suits: tuple[Place, ...] = ()
    provides: tuple[str, ...] = ()
    takes: str = ""
    gives: str = ""
    plugs: dict[str, dict[str, Lead]] = field(default_factory=dict)
    leads: dict[str, Lead] = field(default_factory=dict)
    assembly: tuple[Assembly, ...] = ()
    keeps: tuple[str, ...] = ()
    contains: tuple[str, ...] = ()
    note: str = ""

    @property
    def brings(self) -> tuple[str, ...]:
        """The functions it brings to the receiver: those it is said to provide and those on its contacts."""
        on_contacts = (lead.function for plug in self.plugs.values() for lead in plug.values())
        return tuple(dict.fromkeys((*self.provides, *on_contacts)))


@dataclass(frozen=True, slots=True)
class GearRecord:
    """One gear record."""

    format: int
    gear: GearFacts
    demo: Decided = "no"
