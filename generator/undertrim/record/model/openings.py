"""Places where new gear goes, with their dimensions."""

from dataclasses import dataclass

from undertrim.record.model.basics import ALWAYS, Angle, Impedance, Known, Length, Side, Sources, When
from undertrim.record.model.parts import Caution

DOORS = ("front-door", "rear-door")
"""The areas that are doors."""


@dataclass(frozen=True, slots=True)
class Face:
    """A face from the front: an opening in the dash, a panel, the front of a receiver."""

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
    obstruction: str = ""
    leans: Angle | None = None
    source: Sources = ()

    @property
    def to_glass(self) -> Known:
        """Whether the window, or what moves with it, is the first thing behind; unknown where nobody recorded it."""
        if self.over == "no-glass":
            return "no"
        if self.obstruction in ("", "unknown"):
            return "unknown"
        return "yes" if self.obstruction == "glass" else "no"


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
    panel: Face | None = None
    clear_front: Face | None = None
    channel: str = ""
    fed_through: str = ""
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
        """Whether it is in a door, or may be: a speaker's opening that does not say where it is counts as in one."""
        return self.area in DOORS or (not self.area and self.kind == "speaker")
