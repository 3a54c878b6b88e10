"""What can stop a job or costs the owner something: it stands above everything else, whoever shows it."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.derive.conflict_texts import conflict
from undertrim.derive.evidence.disputed import open_disputes, reckoned
from undertrim.derive.fit import duty_texts
from undertrim.derive.fit.duty_groups import Becomes, becomes
from undertrim.derive.fit.factory_sound import TURN_ON
from undertrim.derive.fit.kinds import room
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.derive.procedure.closed import closings
from undertrim.derive.wiring.leads import named
from undertrim.record.model import ALWAYS, Blank, Opening, VehicleRecord, When
from undertrim.record.model.kinds.receiver import InterfaceGear
from undertrim.words import Items, Value, message

_ORDER = ("stop", "lost", "unknown", "need")


@dataclass(frozen=True, slots=True)
class Blocker:
    """What is in the way: `weight` is stop, lost, unknown or need; `openings` are those it is about, none for every job.

    `titled` is the opening that the title names: who shows the cars leaves out what that name tells already.
    """

    weight: str
    title: Value
    text: Value
    when: When = ALWAYS
    openings: tuple[str, ...] = ()
    titled: Opening | None = None


def blockers(record: VehicleRecord, address: str = "", stock: Stock = NOTHING) -> list[Blocker]:
    """Those of every job, in order of weight. `stock` is the gear that may keep what the factory unit does."""
    return by_weight(of_record(record, address, stock, becomes(reckoned(record), address, stock)))


def by_weight(found: Iterable[Blocker]) -> list[Blocker]:
    """What stops the job first."""
    return sorted(found, key=lambda item: _ORDER.index(item.weight))


def of_record(
    record: VehicleRecord,
    address: str,
    stock: Stock,
    kept: Sequence[Becomes],
    functions: Collection[str] | None = None,
) -> list[Blocker]:
    """In the order in which they are found. `kept` is what becomes of the duties; `functions` are those that the new receiver wants from the car; None: any."""
    return [
        *_closed(record),
        *_voltage(record),
        *_forty_eight(record),
        *_duties(kept),
        *_safety(record),
        *_conflicts(record),
        *_lids(record),
        *_needs(record, functions),
        *_amplifier(record, address, stock),
    ]


def of_opening(weight: str, title: Value, text: Value, opening: Opening, when: When) -> Blocker:
    """One about an opening that its title names."""
    return Blocker(weight, title, text, when, (opening.id,), opening)


def _closed(record: VehicleRecord) -> Iterator[Blocker]:
    for opening, cars, text in closings(record):
        yield of_opening("stop", message("closed/titled", opening=opening.name), text, opening, cars)


def _voltage(record: VehicleRecord) -> Iterator[Blocker]:
    if record.vehicle.high_voltage == "unknown":
        yield Blocker("stop", message("blockers/voltage-unknown"), message("blockers/voltage-unknown-do"))
    if record.vehicle.high_voltage == "yes":
        near = [name for name, area in record.areas.items() if area.high_voltage in ("near", "inside")]
        areas = Items(tuple(message(f"areas/{name}") for name in near), "and-the")
        orange = message("blockers/voltage-near", areas=areas) if near else message("blockers/voltage-do")
        yield Blocker("stop", message("blockers/voltage"), orange)


def _forty_eight(record: VehicleRecord) -> Iterator[Blocker]:
    if record.vehicle.forty_eight_volt == "unknown":
        yield Blocker("unknown", message("blockers/48-volt-unknown"), message("blockers/48-volt-unknown-do"))
    if record.vehicle.forty_eight_volt == "yes":
        near = [message(f"areas/{name}") for name, area in record.areas.items() if area.forty_eight_volt == "yes"]
        where = message("blockers/48-volt-in", areas=_listed(near)) if near else message("blockers/48-volt-where")
        yield Blocker("stop", message("blockers/48-volt"), message("blockers/48-volt-do", where=where))


def _receivers(record: VehicleRecord) -> tuple[str, ...]:
    return tuple(opening.id for opening in record.openings.values() if opening.takes_over)


def _duties(found: Sequence[Becomes]) -> Iterator[Blocker]:
    """What is lost with the factory unit, what may be, and what keeps the rest."""
    for item in found:
        if weight := _WEIGHTS.get(duty_texts.word(item)):
            title = message(f"blockers/duty-{weight}-{item.outcome.fate}", duty=item.outcome.name)
            yield Blocker(weight, title, duty_texts.text(item), item.when, item.openings)
    for keepers, when in dict.fromkeys((item.outcome.by, item.when) for item in found if item.outcome.by):
        kept = [item for item in found if (item.outcome.by, item.when) == (keepers, when)]
        order = message("blockers/order-for", duties=_listed([item.outcome.name for item in kept]))
        notes = (item.duty.note for item in kept if item.duty.note)
        title = message("blockers/keeps", gear=Items(keepers, "either"))
        yield Blocker("need", title, _listed([order, *notes], "spaced"), when, kept[0].openings)


_WEIGHTS = {"STOP": "stop", "LOST": "lost", "UNKNOWN": "unknown"}


def _safety(record: VehicleRecord) -> Iterator[Blocker]:
    facts = record.restraint
    if facts is None or facts.wait is Blank.UNKNOWN:
        yield Blocker("unknown", message("blockers/wait"), message("blockers/wait-do"))
    if facts and facts.memory_keeper == "forbidden":
        yield Blocker("stop", message("blockers/no-keeper"), message("blockers/no-keeper-why"))
    for opening in record.openings.values():
        sensor = doors.sensor(record, opening)
        if sensor != "no":
            weight = "stop" if sensor == "yes" else "unknown"
            title, text = message("blockers/sensor", opening=opening.name), message(f"blockers/sensor-{sensor}")
            yield of_opening(weight, title, text, opening, opening.when)


def _lids(record: VehicleRecord) -> Iterator[Blocker]:
    """What opens boot and bonnet while the battery is off, where that is not simply a key or a cable."""
    for lid in record.closures.values():
        if lid.latch != "mechanical":
            title, text = message(f"blockers/{lid.id}-{lid.latch}"), message(f"blockers/key-{lid.key}")
            yield Blocker("need" if lid.latch == "electric" else "unknown", title, text)


def _conflicts(record: VehicleRecord) -> Iterator[Blocker]:
    for dispute in open_disputes(record):
        item = conflict(record, dispute)
        section, name = dispute.keys[:2]
        title = message("conflicts/titled", fact=item.fact)
        if section == "openings" and name in record.openings:
            opening = record.openings[name]
            yield of_opening("unknown", title, item.text, opening, opening.when)
        else:
            yield Blocker("unknown", title, item.text, _holding(record, section, name))


def _holding(record: VehicleRecord, section: str, name: str) -> When:
    """In which cars the thing that a dispute is about is there."""
    things = getattr(record, section)
    when = getattr(things.get(name), "when", ALWAYS) if isinstance(things, dict) else ALWAYS
    return when if isinstance(when, When) else ALWAYS


def _amplifier(record: VehicleRecord, address: str, stock: Stock) -> Iterator[Blocker]:
    """What wakes a factory amplifier that has no wire for it."""
    for system in record.sound.values():
        if system.turn_on != "data":
            continue
        for opening in _receivers(record):
            waking = [
                item.name
                for item in stock.of(InterfaceGear)
                if TURN_ON in item.facts.brings and item.conditions(address, record.openings[opening].written)
            ]
            yield Blocker("need", message("blockers/amplifier"), _waking(waking, stock), system.when, (opening,))


def _waking(names: Sequence[str], stock: Stock) -> Value:
    if names:
        return message("blockers/waking", gear=Items(tuple(names), "either"))
    return message("blockers/none-wakes" if stock.asked else "blockers/wakes-by-interface")


def _needs(record: VehicleRecord, functions: Collection[str] | None) -> Iterator[Blocker]:
    by_data: dict[When, list[Value]] = {}
    for item in record.functions.values():
        if item.by == "data" and (functions is None or item.of in functions):
            by_data.setdefault(item.when, []).append(named(item.of))
    for when, data in by_data.items():
        text = message("blockers/by-data", count=len(data), functions=_listed(data))
        yield Blocker("need", message("blockers/interface"), text, when, _receivers(record))
    for opening in record.openings.values():
        for what, why in room(opening).needs():
            title = message("blockers/at", what=what, opening=opening.name)
            yield of_opening("need", title, why, opening, opening.when)


def _listed(values: Sequence[Value], joined: str = "comma") -> Items:
    return Items(tuple(values), joined)
