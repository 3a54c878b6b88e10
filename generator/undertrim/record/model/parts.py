"""Things that come off, what holds them, and the states and cautions around them."""

from dataclasses import dataclass, field, replace
from typing import Self

from undertrim.record import drives
from undertrim.record.model.basics import (
    ALWAYS,
    Count,
    Decided,
    Duration,
    Known,
    Length,
    Side,
    Sources,
    States,
    Torque,
    When,
    Written,
)
from undertrim.record.model.photos import Photo
from undertrim.resources import table


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard with its consequence and how to avoid it; `state` is what a usual one takes for granted of the car."""

    signal: str
    hazard: str
    consequence: str
    avoid: str
    when: When = ALWAYS
    source: Sources = ()
    state: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Fastener:
    """One kind of fastener with its count per side, or on the one `side` that has it: its `kind` is a row of data/fasteners.toml, `what` its drive, sort or bond as typed."""

    kind: str
    what: str
    or_drive: str = ""
    count: Count | None = None
    at: dict[str, int] = field(default_factory=dict)
    where: str = ""
    colour: str = ""
    part_number: str = ""
    under: str = ""
    side: Side | None = None
    length: Length | None = None
    thread: str = ""
    diameter: Length | None = None
    torque: Torque | None = None
    reuse: Decided = "yes"
    moves: Decided = "no"
    role: str = "ordinary"
    leave: Decided = "no"
    when: When = ALWAYS
    note: str = ""
    source: Sources = ()

    @property
    def turned(self) -> bool:
        """Whether something turns it, so that `what` is a drive."""
        return bool(table("fasteners")[self.kind].get("turned"))

    @property
    def plain_shank(self) -> bool:
        """Whether its shank has a thickness and no thread, as that of a rivet."""
        return bool(table("fasteners")[self.kind].get("plain_shank"))

    @property
    def drive(self) -> drives.Drive | None:
        """What turns it; None for clips, hooks, bonds and rivets."""
        return drives.parse(self.what) if self.turned else None

    @property
    def single_use(self) -> bool:
        """Whether it must be new each time, because it says so or because its kind is spoilt as it comes out."""
        return self.reuse == "no" or bool(table("fasteners")[self.kind].get("single_use"))

    @property
    def cuts(self) -> str:
        """What is done to the car to get it out, such as 'drill'; empty where it comes out whole, or stays."""
        return str(table("fasteners")[self.kind].get("cuts", "")) if self.leave == "no" else ""


@dataclass(frozen=True, slots=True)
class Tether:
    """A plug, cable, rod or hose that still holds a part when its fasteners are out; `then` and `serves` are empty if not said, `side` is the only one that has it."""

    id: str
    name: str
    kind: str
    circuit: str = "ordinary"
    then: str = ""
    serves: tuple[str, ...] = ()
    side: Side | None = None
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
    """A change of the car's state, with the way back; `restore` is empty where nothing needs undoing, `restore_name` where the usual name will do."""

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
    sensor: Known | None = None
    restore_name: str = ""
    held_by: tuple[Fastener, ...] = ()
    takes: Duration | None = None
    cautions: tuple[Caution, ...] = ()
    on_side: Side | None = None
    mirrors: Known | None = None
    photos: tuple[Photo, ...] = ()
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class AreaFacts:
    """What is true of a whole region of the car."""

    id: str
    high_voltage: str = ""
    restraints: tuple[str, ...] = ()
    forty_eight_volt: Known | None = None
    source: Sources = ()

    @property
    def restraint_parts(self) -> tuple[str, ...]:
        """The airbags, belt parts and sensors that are named; none where one word stands instead of names."""
        return () if self.restraints_blank else self.restraints

    @property
    def restraints_blank(self) -> str:
        """`none` where somebody looked and there are none, `unknown` where it is said not to be known; else empty."""
        return self.restraints[0] if self.restraints in BLANK_RESTRAINTS else ""


BLANK_RESTRAINTS = (("none",), ("unknown",))
"""What may stand instead of names."""


@dataclass(frozen=True, slots=True)
class Part(Written):
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
    refit_after: tuple[Ref, ...] = ()
    goes_to: str = ""
    reached_for: str = ""
    laid: str = ""
    reuse: Decided = "yes"
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
    photos: tuple[Photo, ...] = ()
    source: Sources = ()
    form_of: str = ""

    def at_side(self, side: Side | None) -> Self:
        """The part as it is on one side: without the fasteners and tethers that only the other side has."""
        said = (*(item.side for item in self.held_by), *(item.side for item in self.tethers.values()))
        if side is None or not any(said):
            return self
        tethers = {name: item for name, item in self.tethers.items() if item.side in (None, side)}
        return replace(self, held_by=tuple(item for item in self.held_by if item.side in (None, side)), tethers=tethers)

    def slots(self, side: str | None) -> tuple[int, ...]:
        """The numbers that the fasteners of one side have among all."""
        return tuple(n for n, item in enumerate(self.held_by) if side is None or item.side in (None, side))
