"""Plugs, functions and what the factory unit does."""

from dataclasses import dataclass

from undertrim.record.model.basics import (
    ALWAYS,
    Current,
    Decided,
    Impedance,
    Known,
    Length,
    Share,
    Side,
    Sources,
    Voltage,
    When,
    Written,
)
from undertrim.record.model.parts import Ref
from undertrim.record.model.photos import Photo


@dataclass(frozen=True, slots=True)
class Place:
    """A position in a plug, counted from the top left, beginning at 1."""

    row: int
    column: int


@dataclass(frozen=True, slots=True)
class Pin:
    """One contact of a plug."""

    id: str
    function: str
    colour: str = ""
    behaves: str = ""
    supply: Voltage | None = None
    draws: Current | None = None
    fuse: Current | None = None
    gauge: str = ""
    contact: Length | None = None
    place: Place | None = None
    metered: Decided = "no"
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Connector(Written):
    """One plug of the car; `view` says which side its positions are drawn from, `scheme` how its colours are typed.

    `end` is where on its wires it is, `side` the side of the car of one that both have.
    """

    id: str
    name: str
    view: str
    rows: int
    columns: int
    pins: dict[str, Pin]
    when: When = ALWAYS
    at: str = ""
    end: str = "radio"
    side: Side | None = None
    standard: str = ""
    scheme: str = ""
    latch: str = "unknown"
    numbering: str = "unknown"
    starts: str = "top-left"
    blanks: tuple[str, ...] = ()
    photos: tuple[Photo, ...] = ()
    source: Sources = ()
    form_of: str = ""

    @property
    def at_radio(self) -> bool:
        """Whether the factory radio, and what takes its place, is joined by it."""
        return self.end == "radio"


@dataclass(frozen=True, slots=True)
class FunctionFact:
    """How the car provides a function that stands on no recorded pin; `function` says which, where the id does not."""

    id: str
    by: str
    function: str = ""
    behaves: str = ""
    supply: Voltage | None = None
    draws: Current | None = None
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()

    @property
    def of(self) -> str:
        """The function that it is about."""
        return self.function or self.id


@dataclass(frozen=True, slots=True)
class Duty:
    """Something the factory unit does besides playing, and how it is kept.

    `what` names its kind where the id does not, `part` the part of the car that carries it.
    """

    id: str
    kept_by: str
    what: str = ""
    part: str = ""
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class SoundSystem:
    """What the factory radio sends, and the factory amplifier if there is one; empty where nothing is said.

    `powers` are the channels that this amplifier drives: all where nothing is said.
    """

    id: str
    output: str
    when: When = ALWAYS
    amplifier: str = ""
    turn_on: str = ""
    powers: tuple[str, ...] = ()
    least_load: Impedance | None = None
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Ladder(Written):
    """The resistances in ohm of the buttons on one wire (`plug/pin`), within a tolerance in per cent."""

    id: str
    pin: str
    tolerance: Share
    buttons: dict[str, Impedance]
    return_: str = "ground"
    idle: Impedance | None = None
    when: When = ALWAYS
    source: Sources = ()
    form_of: str = ""


@dataclass(frozen=True, slots=True)
class Pass:
    """One place on the way of a cable, and the area of the car in which it is."""

    where: str
    through: str
    area: str = ""


@dataclass(frozen=True, slots=True)
class Run:
    """A way for new cable, its length in mm along that way, on one `side` of the car or both.

    `battery` is the preparation that takes off the one at its end, `trims` are the parts that must be off to lay it.
    """

    id: str
    name: str
    from_: str
    to: str
    length: Length
    side: Side | None = None
    carries: tuple[str, ...] = ()
    battery: str = ""
    trims: tuple[str, ...] = ()
    reached_for: str = ""
    engine: Known = "unknown"
    passes: tuple[Pass, ...] = ()
    note: str = ""
    when: When = ALWAYS
    source: Sources = ()

    @property
    def over(self) -> tuple[Ref, ...]:
        """The parts that lie over it: of one that both sides have, that on its own side."""
        return tuple(Ref(name, side=self.side) for name in self.trims)
