"""A gear record as typed, frozen data. Which dimensions are set depends on `kind`; the schema says what each means."""

from dataclasses import dataclass

from undertrim.record.model import ALWAYS, Bolts, Decided, Face, Hole, Impedance, Length, When


@dataclass(frozen=True, slots=True)
class Place:
    """A vehicle record (as make/id) and an opening there."""

    vehicle: str
    opening: str
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
    outputs: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    basket: Hole | None = None
    flange: Hole | None = None
    hole: Hole | None = None
    bolts: Bolts | None = None
    depth: Length | None = None
    magnet: Length | None = None
    protrusion: Length | None = None
    impedance: Impedance | None = None
    thickness: Length | None = None
    opening: Face | None = None
    suits: tuple[Place, ...] = ()
    provides: tuple[str, ...] = ()
    keeps: tuple[str, ...] = ()
    contains: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class GearRecord:
    """One gear record."""

    format: int
    gear: GearFacts
    demo: Decided = "no"
