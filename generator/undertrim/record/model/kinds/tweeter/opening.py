"""A tweeter's place, as typed data."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from undertrim.record.model.basics import Angle, Frequency, Impedance, Known, Length
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.kinds.tweeter.gear import CrossoverGear, TweeterGear
from undertrim.record.model.openings import AnyOpening, Depth

_FED = {"own-filter": "capacitor", "crossover": "crossover", "parallel": "direct", "unknown": "unknown", "": "unknown"}


@dataclass(frozen=True, slots=True)
class Cup:
    """A moulded cup in the trim."""

    diameter: Length
    depth: Length


@dataclass(frozen=True, slots=True)
class CrossoverPlace:
    """Where a crossover can go, with its room."""

    at: str
    width: Length
    height: Length
    depth: Length


@dataclass(frozen=True, slots=True)
class TweeterOpening(AnyOpening):
    """A place for a tweeter; `impedance`, `channel` and `feed` are those of the factory's, `corner` that of a crossover that stays."""

    kind: ClassVar[str] = "tweeter"
    takes: ClassVar[type[AnyGear]] = TweeterGear
    between: ClassVar[type[AnyGear] | None] = CrossoverGear
    sounds: ClassVar[bool] = True
    often_in_doors: ClassVar[bool] = True
    on_channel: ClassVar[bool] = True

    mount: str = ""
    place: str = ""
    cut_out: Length | None = None
    cup: Cup | None = None
    flat: Length | None = None
    angle: Angle | None = None
    depth: Depth | None = None
    room_in_front: Length | None = None
    feed: str = ""
    channel: str = ""
    corner: Frequency | None = None
    crossover_place: CrossoverPlace | None = None
    impedance: Impedance | None = None
    factory: Known | None = None
    crash_sensor: Known | None = None

    def with_sensor(self, answer: Known) -> Self:
        """This place with what its door says of a pressure sensor."""
        return replace(self, crash_sensor=answer)

    @property
    def occupied(self) -> bool:
        """Whether the record knows of a factory tweeter in it."""
        return self.factory == "yes"

    @property
    def empty(self) -> bool:
        """Whether there is none."""
        return self.factory == "no"

    @property
    def drawn_with(self) -> tuple[type[AnyGear], ...]:
        """A tweeter alone: a crossover lies elsewhere."""
        return (self.takes,)

    @property
    def asks(self) -> tuple[str, ...]:
        """How it is mounted, and `filter` where new gear must bring its high-pass."""
        return (*((self.mount,) if self.mount else ()), *(() if self.feed == "crossover" else ("filter",)))

    @property
    def fed_through(self) -> str:
        """What is between the channel and the factory tweeter."""
        return _FED[self.feed]

    @property
    def then_fed_through(self) -> str:
        """New tweeters play through a high-pass: that of the car, or their own."""
        return "crossover" if self.feed == "crossover" else "capacitor"
