"""What every piece of gear has, and the pieces that kinds of gear are made of. The kinds are in `kinds`."""

from dataclasses import dataclass, field
from typing import ClassVar

from undertrim.record.model.basics import ALWAYS, Current, Decided, Duration, Impedance, Sources, Voltage, When


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
class Tried:
    """One look at whether the gear went into an opening of a vehicle (make/id): which of its fields was in the way, and what it met; both empty where that is not said."""

    id: str
    vehicle: str
    opening: str
    went_in: Decided
    source: Sources
    size: str = ""
    hit: str = ""


@dataclass(frozen=True, slots=True)
class AnyGear:
    """What gear has whatever its kind.

    What a kind does not have is empty here, where a whole shelf is asked for it: what suits an opening, alters the car, brings or
    keeps a function.
    """

    kind: ClassVar[str]

    maker: str
    model: str
    fitting: Duration | None = None
    note: str = ""
    tried: dict[str, Tried] = field(default_factory=dict)
    source: Sources = ()

    @classmethod
    def folder(cls) -> str:
        """The folder below `records/gear` in which its records stand."""
        return f"{cls.kind}s"

    @property
    def suits(self) -> tuple[Place, ...]:
        """The openings it is made for; nothing where it is made for none in particular."""
        return ()

    @property
    def alters(self) -> tuple[str, ...]:
        """What fitting it does to the car."""
        return ()

    @property
    def brings(self) -> tuple[str, ...]:
        """The functions it brings to the receiver."""
        return ()

    @property
    def keeps(self) -> tuple[str, ...]:
        """The duties of the factory unit that it takes over."""
        return ()

    @property
    def plugs(self) -> dict[str, dict[str, Lead]]:
        """Its contacts by pin, by the plug of the car that it meets."""
        return {}

    @property
    def leads(self) -> dict[str, Lead]:
        """Its leads by id."""
        return {}

    @property
    def impedance(self) -> Impedance | None:
        """Nominal impedance of what plays."""
        return None

    @property
    def lead_set(self) -> str | None:
        """The id of the record of its leads, empty where it names none; None for a kind whose leads are not a record of their own."""
        return None

    @property
    def takes(self) -> str:
        """The level of sound that it is fed with; empty for any."""
        return ""

    @property
    def gives(self) -> str:
        """The level of sound that it makes; empty where it makes none."""
        return ""
