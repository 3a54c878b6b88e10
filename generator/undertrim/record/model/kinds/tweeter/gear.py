"""Tweeters and two-way crossovers, as typed data."""

from dataclasses import dataclass
from typing import ClassVar

from undertrim.record.model.basics import Frequency, Impedance, Length, Power
from undertrim.record.model.gear import AnyGear


@dataclass(frozen=True, slots=True)
class Mount:
    """One way to mount a tweeter: `flush`, `surface` or `angled`, with the sizes that it then has."""

    mount: str
    diameter: Length | None = None
    depth: Length | None = None
    over: Length | None = None
    rim: Length | None = None


@dataclass(frozen=True, slots=True)
class HighPass:
    """The filter that a tweeter must have, and the power at which that holds."""

    frequency: Frequency
    filter_order: str
    power: Power


@dataclass(frozen=True, slots=True)
class TweeterGear(AnyGear):
    """A tweeter."""

    kind: ClassVar[str] = "tweeter"

    nominal: str = ""
    mounts: tuple[Mount, ...] = ()
    impedance: Impedance | None = None
    high_pass: HighPass | None = None
    comes_with: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Box:
    """The outside of something that may lie in any way."""

    width: Length
    height: Length
    depth: Length


@dataclass(frozen=True, slots=True)
class CrossoverGear(AnyGear):
    """A passive two-way crossover.

    A kind of its own, since it goes to another place than the tweeter, one serves several tweeters, and it is ordered by itself.
    """

    kind: ClassVar[str] = "crossover"

    box: Box | None = None
    impedance: Impedance | None = None
    frequency: Frequency | None = None
    filter_order: str = ""
    pads: tuple[str, ...] = ()
