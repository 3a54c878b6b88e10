"""What to order and to bring for a visit: the gear, what goes between, what is single-use, and what is used up."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.fitting import Fitting, fitting
from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.stock import Gear, of_kind
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.procedure import tally
from undertrim.derive.procedure.planning import Planner, Procedure, Target
from undertrim.record.model import Opening
from undertrim.record.model.kinds.receiver import LeadsGear, ReceiverGear
from undertrim.record.model.kinds.usual import used_up
from undertrim.record.units import Quantity
from undertrim.words import Value, Word, message

Choice = tuple[Opening, Gear]


@dataclass(frozen=True, slots=True)
class Item:
    """So many of something, and for which opening."""

    count: int
    what: Value
    opening: str


@dataclass(frozen=True, slots=True)
class Line:
    """The verdict on one piece of gear in one opening."""

    opening: Opening
    fit: Fit


@dataclass(frozen=True, slots=True)
class Order:
    """The list for the kinds of car that have the same one; `cars` is empty where all have it.

    `order` is in stock, `to_get` is not; `single_use` are the car's own parts that cannot go back, `used_up` what any such job uses up.
    `closed` are openings inside the high-voltage system, with the names of what is: nothing is ordered for them.
    """

    cars: tuple[Mapping[str, str], ...]
    lines: tuple[Line, ...]
    order: tuple[Item, ...]
    to_get: tuple[Item, ...]
    single_use: tuple[tally.Purchase, ...]
    used_up: tuple[Value, ...]
    tools: tuple[tally.Tool, ...]
    fitting: Fitting
    closed: tuple[tuple[Opening, tuple[str, ...]], ...] = ()

    @property
    def fits(self) -> bool:
        """Whether every piece goes in, as far as is known, nothing is lost for it that must not be, and no opening is inside high voltage."""
        return not self.closed and all(line.fit.kind not in ("stop", "does-not-fit") for line in self.lines)


def orders(
    vehicle: Vehicle, wanted: Sequence[Target], chosen: Sequence[Choice], fixed: Mapping[str, str]
) -> list[Order]:
    """The lists for every kind of car that `fixed` leaves open, equal ones together.

    Raises what `Planner.plan` raises.
    """
    planner = Planner(vehicle.record)
    found: dict[tuple[object, ...], tuple[list[Mapping[str, str]], Order]] = {}
    for car in jobs.open_cars(vehicle.record, fixed):
        one = _order(vehicle, planner, wanted, chosen, car)
        shut = tuple(opening.id for opening, _ in one.closed)
        key = (one.lines, one.order, one.to_get, one.single_use, one.tools, shut)
        found.setdefault(key, ([], one))[0].append(car)
    several = len(found) > 1
    return [replace(one, cars=tuple(kinds) if several else ()) for kinds, one in found.values()]


def _order(
    vehicle: Vehicle, planner: Planner, wanted: Sequence[Target], chosen: Sequence[Choice], car: Mapping[str, str]
) -> Order:
    plan = planner.plan(wanted, car)
    steps, closed = plan.steps, _closed(vehicle, plan)
    shut = [opening for opening, _ in closed]
    present = [(opening, gear) for opening, gear in chosen if opening.when.holds(car) and opening not in shut]
    vehicle = replace(vehicle, visit={opening.id: gear for opening, gear in present})
    lines = tuple(Line(opening, _fit(vehicle, opening, gear, car)) for opening, gear in present)
    return Order(
        (),
        lines,
        tuple(_items(wanted, present, lines)),
        tuple(
            Item(_sides(wanted, line.opening), what, line.opening.name) for line in lines for what in line.fit.to_get
        ),
        tally.purchases(steps),
        tuple(dict.fromkeys((*_brought(lines), *_fuses(vehicle, present), *_used_up(present)))),
        tally.tools(steps),
        fitting(vehicle.stock, ((count, piece) for count, piece, _ in _pieces(wanted, present, lines))),
        closed,
    )


def _closed(vehicle: Vehicle, plan: Procedure) -> tuple[tuple[Opening, tuple[str, ...]], ...]:
    """The openings of a visit that are inside the high-voltage system, with the names of what is."""
    found: dict[str, list[str]] = {}
    for target, things in plan.closed:
        found.setdefault(target.job, []).extend(thing.name for thing in things)
    return tuple((vehicle.record.openings[name], tuple(dict.fromkeys(names))) for name, names in found.items())


def _brought(lines: Sequence[Line]) -> list[Value]:
    """What a job takes besides its gear; said once where several jobs share it."""
    return [thing for line in lines for thing in line.fit.bring]


def _used_up(present: Sequence[Choice]) -> list[Word]:
    """What any such job uses up."""
    return [thing for opening, _ in present for thing in used_up(opening.kind)]


def _fuses(vehicle: Vehicle, present: Sequence[Choice]) -> list[Value]:
    """Spare fuses for the leads of the receiver."""
    sets = {item.id: item for item in vehicle.stock.of(LeadsGear)}
    held = (sets.get(gear.facts.lead_set) for gear in of_kind([gear for _, gear in present], ReceiverGear))
    leads = (lead for item in held if item for lead in item.facts.leads.values())
    return [message("shopping/fuse", fuse=lead.fuse, lead=lead.id) for lead in leads if isinstance(lead.fuse, Quantity)]


def _fit(vehicle: Vehicle, opening: Opening, gear: Gear, car: Mapping[str, str]) -> Fit:
    return answer(vehicle, opening, [gear], car)[0].fits[0]


def _items(wanted: Sequence[Target], present: Sequence[Choice], lines: Sequence[Line]) -> list[Item]:
    """The gear and what goes between, once for each side."""
    return [Item(count, piece, opening.name) for count, piece, opening in _pieces(wanted, present, lines)]


def _pieces(
    wanted: Sequence[Target], present: Sequence[Choice], lines: Sequence[Line]
) -> Iterator[tuple[int, Piece, Opening]]:
    """Each piece with how many of it go into which opening."""
    for (opening, gear), line in zip(present, lines, strict=True):
        for piece in (gear.piece, *line.fit.parts):
            yield _sides(wanted, opening), piece, opening


def _sides(wanted: Sequence[Target], opening: Opening) -> int:
    return sum(target.job == opening.id for target in wanted)
