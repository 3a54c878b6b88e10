"""Places where new gear goes: what all kinds of them share, and the shapes that their dimensions are made of."""

from dataclasses import dataclass
from typing import ClassVar, Self

from undertrim.record.model.basics import ALWAYS, Angle, Impedance, Known, Length, Side, Sources, When, Written
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.parts import Caution
from undertrim.record.model.photos import Photo

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
    """A bolt pattern: `diameter` for a circle, else `width` and `height`; `angle` is that of a hole of the circle from straight up, clockwise."""

    pattern: str
    count: int
    diameter: Length | None = None
    width: Length | None = None
    height: Length | None = None
    angle: Angle | None = None


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
class AnyOpening(Written):
    """What a place where new gear goes has whatever its kind. The kinds, each a class with dimensions of its own, are in `kinds`.

    What a kind does not record stands here as not recorded, where something other than its kind asks for it: the glass behind an
    opening, its dash kit and its sensor matter to steps and doors, whatever goes into it.
    """

    kind: ClassVar[str]
    takes: ClassVar[type[AnyGear]]
    """The gear that goes into it."""
    between: ClassVar[type[AnyGear] | None] = None
    """The gear that may stand between the two."""
    takes_over: ClassVar[bool] = False
    """Whether a factory unit goes from here whose functions and duties must be joined to the new gear."""
    sounds: ClassVar[bool] = False
    """Whether what goes in is part of the sound, so that it counts what drives the speakers."""
    drives: ClassVar[bool] = False
    """Whether what goes in drives speakers of other openings: those are tried only once it is joined and seen on."""
    often_in_doors: ClassVar[bool] = False
    """Whether it often is in a door, so that one that does not say where it is counts as in one."""
    on_channel: ClassVar[bool] = False
    """Whether what goes in is joined to a channel and loads it."""

    id: str
    name: str
    behind: tuple[str, ...]
    area: str = ""
    when: When = ALWAYS
    each: tuple[Side, ...] = ()
    high_voltage: str = ""
    alters: tuple[str, ...] = ()
    not_in: tuple[When, ...] = ()
    on_side: Side | None = None
    install_how: str = ""
    test_how: str = ""
    cautions: tuple[Caution, ...] = ()
    mirrors: Known | None = None
    photos: tuple[Photo, ...] = ()
    source: Sources = ()
    form_of: str = ""
    named_for: tuple[str, ...] = ()
    """The variants whose choices its name tells, where it is written once for several kinds of car."""

    @property
    def drawn_with(self) -> tuple[type[AnyGear], ...]:
        """The kinds of gear that can be laid over it in true size."""
        return (self.takes, self.between) if self.between else (self.takes,)

    @property
    def asks(self) -> tuple[str, ...]:
        """The words of its kind's own that are true of it, to which usual steps may be limited."""
        return ()

    @property
    def shares(self) -> str:
        """The id of what it has together with others of its kind, so that the steps about that are done once for all; empty for nothing."""
        return ""

    @property
    def along(self) -> str:
        """The id of the run along which cable is laid to what goes in; empty for none."""
        return ""

    @property
    def occupied(self) -> bool:
        """Whether the record knows of factory gear in it."""
        return self.takes_over

    @property
    def empty(self) -> bool:
        """Whether somebody looked, and no factory unit is in it."""
        return False

    @property
    def in_a_door(self) -> bool:
        """Whether it is in a door, or may be."""
        return self.area in DOORS or (self.often_in_doors and not self.area)

    @property
    def depth(self) -> Depth | None:
        """The free depth behind it."""
        return None

    def with_sensor(self, answer: Known) -> Self:
        """This opening with what its door says of a pressure sensor."""
        return self

    @property
    def crash_sensor(self) -> Known | None:
        """What it says of a pressure sensor in its door."""
        return None

    @property
    def restraint_near(self) -> Known:
        """What it says of a control unit, sensor or belt part of the restraints fixed right there, beside what its area names."""
        return "no"

    @property
    def channel(self) -> str:
        """The pair of outputs that feeds what is in it; empty where that is not recorded."""
        return ""

    @property
    def impedance(self) -> Impedance | None:
        """Nominal impedance of the factory unit."""
        return None

    @property
    def fed_through(self) -> str:
        """What is between the channel and the factory unit: `direct` (or nothing), `capacitor`, `crossover`, `unknown`."""
        return ""

    @property
    def then_fed_through(self) -> str:
        """The same for new gear in it."""
        return self.fed_through
