"""The joints of a receiver in one opening of a vehicle: one for each group of cars in which the table is the same."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.factory_sound import TURN_ON, woken_by_data
from undertrim.derive.fit.stock import Gear, Stock, of_kind
from undertrim.derive.wiring.join import Joint, join
from undertrim.derive.wiring.leads import is_sound, lead_set, level, named
from undertrim.derive.wiring.needs import conditions_of, output, points, sources
from undertrim.derive.wiring.signals import by_data
from undertrim.record.gear import Lead
from undertrim.record.model import Opening, VehicleRecord, When
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear, ReceiverGear
from undertrim.words import Items, Message, message


@dataclass(frozen=True, slots=True)
class Group:
    """One table and the kinds of the car that it holds for; no kinds: every car asked for."""

    cars: tuple[Mapping[str, str], ...]
    joint: Joint


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a receiver goes: a vehicle with its address (`make/id`), an opening, and the stock to choose from."""

    record: VehicleRecord
    address: str
    opening: Opening
    stock: Stock


def joints(
    record: VehicleRecord,
    address: str,
    opening: Opening,
    receiver: Gear,
    stock: Stock,
    *,
    harness: Gear | None = None,
    by_hand: bool = False,
    chosen: Mapping[str, str] | None = None,
) -> list[Group]:
    """The joints of a receiver, or of a lead set, for all cars that `chosen` leaves open and that have the opening. Raises NoLeads.

    Without `harness` the one that suits and brings most is taken from stock, unless the joint is made `by_hand`. Interfaces are taken for
    what comes as data, and a converter where no lead has the level that the car wants.
    """
    place = _Place(reckoned(record), address, opening, stock)
    leads = lead_set(receiver, stock)
    found: list[tuple[Joint, list[Mapping[str, str]]]] = []
    every = list(_kinds(place, chosen or {}))
    having = [car for car in every if opening.when.holds(car)]
    for car in having:
        made = _joint(place, car, receiver, leads, (harness, by_hand))
        same = next((kinds for joint, kinds in found if joint == made), None)
        if same is None:
            found.append((made, [car]))
        else:
            same.append(car)
    apart = len(found) > 1 or len(having) < len(every)
    return [Group(tuple(kinds) if apart else (), joint) for joint, kinds in found]


def _joint(
    place: _Place, car: Mapping[str, str], receiver: Gear, leads: Gear, asked: tuple[Gear | None, bool]
) -> Joint:
    harness, by_hand = asked
    shelf = place.stock.suiting(place.address, place.opening.written, car)
    wanted = [lead.function for lead in leads.facts.leads.values()]
    between = _interfaces(place.record, car, tuple(leads.facts.leads.values()), shelf)
    between += [item for item in _converter(place.record, car, leads, shelf) if item not in between]
    adapter = harness if harness or by_hand else _harness(wanted, shelf, between)
    made = join(place.record, car, leads.facts, adapter, between)
    notes = (*made.notes, *_not_made(place, car, harness), *_unled(receiver, leads))
    return replace(made, notes=notes)


def _harness(wanted: Sequence[str], shelf: Sequence[Gear], between: Sequence[Gear]) -> Gear | None:
    """The harness that brings most of what the leads want, the first of equals. What goes into a contact that an interface takes is left."""
    taken = _taken(between)
    harnesses = sorted((item for item in shelf if isinstance(item.facts, HarnessGear)), key=lambda item: item.id)
    free = [item for item in harnesses if not taken & _taken([item])]
    return max(free, key=lambda item: len(set(wanted) & set(item.facts.brings)), default=None)


def _taken(gear: Sequence[Gear]) -> set[tuple[str, str]]:
    return {(plug, pin) for item in gear for plug, held in item.facts.plugs.items() for pin in held}


def _interfaces(
    record: VehicleRecord, car: Mapping[str, str], leads: Sequence[Lead], shelf: Sequence[Gear]
) -> list[Gear]:
    """The interfaces for what is data at one end, by greed: always the one that brings most of what is left."""
    having = points(record, car)
    met = ((lead, point) for lead in leads for point in sources(lead.function, record, car, having))
    left = {lead.function for lead, point in met if by_data(lead, point)}
    left |= {TURN_ON} if woken_by_data(record, car) else set()
    chosen: list[Gear] = []
    offered = sorted((item for item in shelf if isinstance(item.facts, InterfaceGear)), key=lambda item: item.id)
    while offered and left:
        best = max(offered, key=lambda item: len(left & set(item.facts.brings)))
        if not left & set(best.facts.brings):
            break
        chosen.append(best)
        offered.remove(best)
        left -= set(best.facts.brings)
    return chosen


def _converter(record: VehicleRecord, car: Mapping[str, str], leads: Gear, shelf: Sequence[Gear]) -> list[Gear]:
    """A converter, or an interface, that turns a level of the leads into the one the car wants, where no lead has it."""
    wanted = output(record, car)
    levels = {level(lead) for lead in leads.facts.leads.values() if is_sound(lead.function)}
    if wanted == "unknown" or wanted in levels:
        return []
    giving = sorted((item for item in shelf if item.facts.gives == wanted), key=lambda item: item.id)
    return [item for item in giving if not item.facts.takes or item.facts.takes in levels][:1]


def _not_made(place: _Place, car: Mapping[str, str], harness: Gear | None) -> Iterator[Message]:
    """A harness named by hand that is made for another car."""
    if harness and not harness.place(place.address, place.opening.written, car):
        yield message("joint/made-for-others", gear=harness.name)


def _unled(receiver: Gear, leads: Gear) -> Iterator[Message]:
    """Functions that a receiver needs and its lead set does not have."""
    held = {lead.function for lead in leads.facts.leads.values()}
    for one in of_kind([receiver], ReceiverGear):
        lacking = tuple(named(function) for function in one.facts.needs if function not in held)
        if lacking:
            yield message("joint/leads-lacking", gear=one.name, functions=Items(lacking, "comma"))


def _kinds(place: _Place, chosen: Mapping[str, str]) -> Iterator[dict[str, str]]:
    """The kinds of car that may have different tables: every choice of the variants on which one depends."""
    used = {name for when in _conditions(place) for name in when.variants}
    return iter(cars.told_apart(place.record, used, chosen))


def _conditions(place: _Place) -> Iterator[When]:
    record = place.record
    yield place.opening.when
    for plug in record.connectors.values():
        yield from conditions_of(record, plug)
        yield from (pin.when for pin in plug.pins.values())
    yield from (fact.when for fact in record.functions.values())
    yield from (system.when for system in record.sound.values())
    yield from (ladder.when for ladder in record.ladders.values())
    yield from place.stock.conditions(place.address, place.opening.written)
