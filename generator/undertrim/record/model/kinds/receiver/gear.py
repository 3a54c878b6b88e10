"""Receivers and what goes between one and the car, as typed data."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import ClassVar

from undertrim.record.model.basics import Impedance, Known, Length
from undertrim.record.model.gear import AnyGear, Assembly, Lead, Place
from undertrim.record.model.openings import Face
from undertrim.record.units import Quantity


@dataclass(frozen=True, slots=True)
class ReceiverGear(AnyGear):
    """A receiver; `lead_set` names the record of its leads."""

    kind: ClassVar[str] = "receiver"

    nominal: str = ""
    body: Face | None = None
    chassis_depth: Length | None = None
    plug_room: Length | None = None
    trim: Face | None = None
    least_load: Impedance | None = None
    lead_set: str = ""
    outputs: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    keeps: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class KitGear(AnyGear):
    """A dash kit: `opening` is what it offers the receiver."""

    kind: ClassVar[str] = "kit"

    opening: Face | None = None
    alters: tuple[str, ...] = ()
    suits: tuple[Place, ...] = ()
    contains: tuple[str, ...] = ()
    assembly: tuple[Assembly, ...] = ()


@dataclass(frozen=True, slots=True)
class HarnessGear(AnyGear):
    """A harness; `plugs` are its contacts by pin, by the plug of the car."""

    kind: ClassVar[str] = "harness"

    suits: tuple[Place, ...] = ()
    keeps: tuple[str, ...] = ()
    plugs: dict[str, dict[str, Lead]] = field(default_factory=dict)

    @classmethod
    def folder(cls) -> str:
        """The folder of its records."""
        return "harnesses"

    @property
    def brings(self) -> tuple[str, ...]:
        """The functions on its contacts."""
        return tuple(dict.fromkeys(_on_contacts(self.plugs)))


@dataclass(frozen=True, slots=True)
class InterfaceGear(AnyGear):
    """An interface to the data of the car."""

    kind: ClassVar[str] = "interface"

    suits: tuple[Place, ...] = ()
    provides: tuple[str, ...] = ()
    gives: str = ""
    keeps: tuple[str, ...] = ()
    plugs: dict[str, dict[str, Lead]] = field(default_factory=dict)
    contains: tuple[str, ...] = ()

    @property
    def brings(self) -> tuple[str, ...]:
        """The functions it is said to provide and those on its contacts."""
        return tuple(dict.fromkeys((*self.provides, *_on_contacts(self.plugs))))


@dataclass(frozen=True, slots=True)
class ConverterGear(AnyGear):
    """What makes one level of sound of another."""

    kind: ClassVar[str] = "converter"

    takes: str = ""
    gives: str = ""
    makes_turn_on: Known = "unknown"
    suits: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True)
class Limit:
    """The most that a lead of a function gives."""

    function: str
    limit: Quantity


@dataclass(frozen=True, slots=True)
class LeadsGear(AnyGear):
    """The leads of a receiver."""

    kind: ClassVar[str] = "leads"

    leads: dict[str, Lead] = field(default_factory=dict)

    @classmethod
    def folder(cls) -> str:
        """The folder of its records."""
        return "leads"

    @property
    def functions(self) -> tuple[str, ...]:
        """The functions that it has a lead for."""
        return tuple(dict.fromkeys(lead.function for lead in self.leads.values()))

    @property
    def limits(self) -> tuple[Limit, ...]:
        """What its leads give, where it says so."""
        return tuple(
            Limit(lead.function, lead.limit) for lead in self.leads.values() if isinstance(lead.limit, Quantity)
        )


def _on_contacts(plugs: dict[str, dict[str, Lead]]) -> Iterator[str]:
    return (lead.function for plug in plugs.values() for lead in plug.values())
