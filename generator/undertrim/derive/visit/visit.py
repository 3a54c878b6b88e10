"""A visit, and all that follows from it: each thing is worked out once, when somebody asks for it."""

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field, replace
from functools import cached_property

from undertrim.derive import jobs
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Answer, Vehicle, answer
from undertrim.derive.fit.duty_groups import Becomes, becomes
from undertrim.derive.fit.shopping import Order, orders
from undertrim.derive.fit.stock import Gear, Stock, of_kind
from undertrim.derive.procedure.planning import Planner, Procedure, Target
from undertrim.derive.procedure.steps import Step
from undertrim.derive.visit.between import Chosen, left
from undertrim.derive.visit.merged import merged
from undertrim.derive.visit.misfits import Misfit, misfits
from undertrim.derive.visit.totals import Totals, totals
from undertrim.derive.wiring import ends
from undertrim.derive.wiring.groups import Group, joints
from undertrim.derive.wiring.leads import NoLeads
from undertrim.record.model import Connector, Opening, VehicleRecord
from undertrim.record.model.kinds.receiver import LeadsGear, ReceiverGear

_AFTER_CARE = ("restore", "try", "after")


@dataclass(frozen=True, slots=True)
class Joined:
    """The joint at one opening: with whose leads, and a table for each group of cars that has the same one."""

    opening: Opening
    leads: Gear
    groups: tuple[Group, ...]


@dataclass(frozen=True)  # without slots: what follows from it is worked out once
class Visit:
    """A car of a record with its variants answered as far as known, the openings worked at, and the gear for each as far as chosen.

    `known` is the vehicle with the stock; `gear` by opening, what is not in it is left open; `between` is what somebody chose to stand between,
    by opening and kind of gear. `understanding.visit` makes one of words and refuses what is not so; here nothing is looked at again.
    """

    known: Vehicle
    targets: tuple[Target, ...] = ()
    answers: Mapping[str, str] = field(default_factory=dict)
    gear: Mapping[str, Gear] = field(default_factory=dict)
    between: Mapping[str, Chosen] = field(default_factory=dict)
    name: str = ""

    @property
    def called(self) -> str:
        """What the vehicle is called in the text of the visit: the id of its record, if no other name is given."""
        return self.name or self.address.rpartition("/")[2]

    @property
    def address(self) -> str:
        """The vehicle as `make/id`."""
        return self.known.address

    @cached_property
    def record(self) -> VehicleRecord:
        """The record as it is reckoned with, its conflicts on the safe side."""
        return reckoned(self.known.record)

    @cached_property
    def vehicle(self) -> Vehicle:
        """The vehicle with the gear of the visit and, at each opening, the stock that the choices leave."""
        shelves = {
            name: left(self.known.stock, self.record.openings[name], chosen) for name, chosen in self.between.items()
        }
        return replace(self.known, record=self.record, visit=dict(self.gear), shelves=shelves)

    @cached_property
    def shelf(self) -> Stock:
        """The stock with no more of what joins the new gear to the car than was chosen."""
        stock = self.known.stock
        for name, chosen in self.between.items():
            if self.record.openings[name].takes_over:
                stock = left(stock, self.record.openings[name], chosen)
        return stock

    @cached_property
    def openings(self) -> tuple[Opening, ...]:
        """The openings worked at, in the order of the record."""
        worked = {target.job for target in self.targets}
        return tuple(opening for name, opening in self.record.openings.items() if name in worked)

    @cached_property
    def car(self) -> dict[str, str]:
        """The answers that something depends on."""
        return jobs.car(self.record, self.answers)

    @cached_property
    def planner(self) -> Planner:
        """Plans the record."""
        return Planner(self.record)

    @cached_property
    def plans(self) -> tuple[Procedure, ...]:
        """The procedure for each kind of car that the answers leave open. Raises Unreachable, TooTangled."""
        return tuple(self.planner.plan(self.targets, car) for car in jobs.open_cars(self.record, self.car))

    @cached_property
    def steps(self) -> tuple[Step, ...]:
        """The steps of all these cars once each, in order, cautions with the step they guard. Raises what `plans` raises, and BadRequest where they have no common order."""
        return tuple(merged(self.planner, self.plans))

    @cached_property
    def after_care(self) -> tuple[Step, ...]:
        """What is to do once all is back in its place."""
        return tuple(step for step in self.steps if step.section in _AFTER_CARE)

    @cached_property
    def totals(self) -> tuple[Totals, ...]:
        """Tools, fasteners, what is to buy and minutes, for each group of cars in which they are the same."""
        return totals(self.plans)

    @cached_property
    def verdicts(self) -> tuple[Answer, ...]:
        """The verdicts on the gear that is chosen, with every number behind them, for each group of cars in which they are the same."""
        return tuple(found for opening in self.openings if opening.id in self.gear for found in self.offers(opening))

    @cached_property
    def misfits(self) -> tuple[Misfit, ...]:
        """The chosen gear that does not fit, or of which nobody can say so."""
        return tuple(misfits(self.verdicts))

    @cached_property
    def duties(self) -> tuple[Becomes, ...]:
        """What becomes of what the factory unit also does: with the receiver that is chosen and what may stand between, where it is open with any of the stock."""
        receivers = {name: item for name, gear in self.gear.items() for item in of_kind([gear], ReceiverGear)}
        worked = {opening.id for opening in self.openings}
        every = becomes(self.record, self.address, self.known.stock, receivers, self.vehicle.shelves)
        return tuple(item for item in every if worked & set(item.openings))

    @cached_property
    def functions(self) -> frozenset[str] | None:
        """The functions that the chosen receivers want from the car, or have a lead for; None where one is left open or nothing can be said of it, so that it may be any."""
        fits = [fit for answer in self.verdicts if answer.opening.takes_over for fit in answer.fits]
        told = {answer.opening.id for answer in self.verdicts if answer.fits}
        if any(opening.takes_over and opening.id not in told for opening in self.openings):
            return None
        wanted = {need.function for fit in fits for need in fit.needs}
        with suppress(NoLeads):  # then it is as the receiver says
            rows = (row for joined in self.joints for group in joined.groups for row in group.joint.rows)
            wanted |= {row.function for row in rows if row.lead}
        return frozenset(wanted)

    def offers(self, opening: Opening) -> list[Answer]:
        """The answers for an opening: the chosen gear, or the whole stock ranked where none is chosen."""
        gear = self.gear.get(opening.id)
        return answer(self.vehicle, opening, [gear] if gear else None, self.answers)

    def parts(self, opening: Opening) -> tuple[Gear, ...]:
        """What stands between there in any of these cars: it follows from the chosen gear; nothing where none is chosen."""
        found = {
            piece.id
            for answer in self.verdicts
            if answer.opening.id == opening.id
            for fit in answer.fits
            for piece in fit.parts
        }
        return tuple(item for item in self.known.stock.items if item.id in found)

    @cached_property
    def orders(self) -> tuple[Order, ...]:
        """What to order and to bring, for each group of cars that has the same list; cable and fuses are in it."""
        chosen = [(self.record.openings[name], gear) for name, gear in self.gear.items()]
        return tuple(orders(self.vehicle, self.targets, chosen, self.car))

    @cached_property
    def joints(self) -> tuple[Joined, ...]:
        """The joint of each opening whose leads are known by the gear chosen. Raises NoLeads where the gear names none."""
        return tuple(joined for opening in self.openings if opening.takes_over for joined in self._joint(opening))

    def _joint(self, opening: Opening) -> list[Joined]:
        leads = self.leads(opening)
        if leads is None:
            return []
        shelf = self.vehicle.shelf(opening.id)
        return [
            Joined(
                opening,
                leads,
                tuple(joints(self.record, self.address, opening, leads, shelf, chosen=self.answers)),
            )
        ]

    def leads(self, opening: Opening) -> Gear | None:
        """Whose leads are joined there: a lead set that was chosen, else the receiver with its own."""
        held = self.between.get(opening.id, {}).get(LeadsGear.kind, ())
        return held[0] if held else self.gear.get(opening.id)

    @cached_property
    def plugs(self) -> tuple[Connector, ...]:
        """The plugs of the car that new gear is joined to in any of these cars: those that a meter is held to."""
        worked = {name for target in self.targets for name in (target.job, str(target))}
        every = self.record.connectors.values()
        met = [plug for plug in every if worked.intersection(ends.serves(self.record, plug))]
        among = jobs.open_cars(self.record, self.car) if met else ()
        return tuple(plug for plug in met if any(plug.when.holds(car) for car in among))

    def laid_over(self, opening: Opening) -> Gear | None:
        """What the template of an opening shows over it: the gear chosen."""
        return self.gear.get(opening.id)
