"""What can stop the job or costs the owner something: it stands above everything else."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.derive import doors
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.factory_sound import TURN_ON
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.derive.visit.visit import Visit
from undertrim.publish.facts import closed, duties, evidence, wiring, words
from undertrim.publish.facts.kinds import room
from undertrim.record.model import ALWAYS, Blank, Opening, VehicleRecord, When
from undertrim.record.model.kinds.receiver import InterfaceGear
from undertrim.words import Items, Value, message


@dataclass(frozen=True, slots=True)
class Blocker:
    """What is in the way: `weight` is stop, lost, unknown or need; `openings` are those it is about, none for every job."""

    weight: str
    title: Value
    text: Value
    openings: Sequence[str]
    when: Value
    clauses: words.Clauses


def blockers(record: VehicleRecord, address: str = "", stock: Stock = NOTHING) -> list[Blocker]:
    """In order of weight: `weight` is stop, lost, unknown or need. `stock` is the gear that may keep what the factory unit does."""
    return _by_weight(_found(record, address, stock, duties.duties(record, address, stock)))


def of_visit(made: Visit) -> list[Blocker]:
    """Those of a visit, in its cars: what hangs on gear is that of the gear it names, and of the stock where it names none."""
    kept = [duties.duty(made.record, item) for item in made.duties]
    found = [*_misfits(made), *_found(made.record, made.address, made.shelf, kept, made.functions)]
    return _by_weight([item for item in found if _concerns(item, made)])


def _concerns(item: Blocker, made: Visit) -> bool:
    there = not item.openings or any(opening.id in item.openings for opening in made.openings)
    return there and When(tuple((name, tuple(choices)) for name, choices in item.clauses.items())).holds(made.car)


def _misfits(made: Visit) -> Iterator[Blocker]:
    for found in made.misfits:
        title = message("blockers/gear-at", gear=found.fit.name, opening=found.opening.name)
        weight = "stop" if found.certain else "unknown"
        yield _item(made.record, weight, title, found.fit.headline, found.when, [found.opening.id])


def _by_weight(found: Iterable[Blocker]) -> list[Blocker]:
    order = ("stop", "lost", "unknown", "need")
    return sorted(found, key=lambda item: order.index(item.weight))


def _found(
    record: VehicleRecord,
    address: str,
    stock: Stock,
    kept: Sequence[duties.ShownDuty],
    functions: Collection[str] | None = None,
) -> list[Blocker]:
    """`functions` are those that the new receiver wants from the car; None: any."""
    return [
        *_closed(record),
        *_voltage(record),
        *_forty_eight(record),
        *_duties(record, kept),
        *_safety(record),
        *_conflicts(record),
        *_lids(record),
        *_needs(record, functions),
        *_amplifier(record, address, stock),
    ]


def _item(
    record: VehicleRecord, weight: str, title: Value, text: Value, when: When = ALWAYS, openings: Iterable[str] = ()
) -> Blocker:
    """One blocker; `openings` are those it is about, none for every job."""
    return Blocker(
        weight=weight,
        title=title,
        text=text,
        openings=tuple(openings),
        when=words.when(record, when),
        clauses=words.clauses(when),
    )


def _of_opening(record: VehicleRecord, weight: str, title: Value, text: Value, opening: Opening, when: When) -> Blocker:
    """One about an opening that its title names, with the cars that the name tells."""
    made = _item(record, weight, title, text, when, [opening.id])
    return replace(made, when=words.others(record, when, opening))


def _closed(record: VehicleRecord) -> Iterator[Blocker]:
    for opening, cars, text in closed.closings(record):
        yield _of_opening(record, "stop", message("closed/titled", opening=opening.name), text, opening, cars)


def _voltage(record: VehicleRecord) -> Iterator[Blocker]:
    if record.vehicle.high_voltage == "unknown":
        title, text = message("blockers/voltage-unknown"), message("blockers/voltage-unknown-do")
        yield _item(record, "stop", title, text)
    if record.vehicle.high_voltage == "yes":
        near = [name for name, area in record.areas.items() if area.high_voltage in ("near", "inside")]
        areas = Items(tuple(message(f"areas/{name}") for name in near), "and-the")
        orange = message("blockers/voltage-near", areas=areas) if near else message("blockers/voltage-do")
        yield _item(record, "stop", message("blockers/voltage"), orange)


def _forty_eight(record: VehicleRecord) -> Iterator[Blocker]:
    if record.vehicle.forty_eight_volt == "unknown":
        title, text = message("blockers/48-volt-unknown"), message("blockers/48-volt-unknown-do")
        yield _item(record, "unknown", title, text)
    if record.vehicle.forty_eight_volt == "yes":
        near = [message(f"areas/{name}") for name, area in record.areas.items() if area.forty_eight_volt == "yes"]
        where = message("blockers/48-volt-in", areas=words.listed(*near)) if near else message("blockers/48-volt-where")
        text = message("blockers/48-volt-do", where=where)
        yield _item(record, "stop", message("blockers/48-volt"), text)


def _receivers(record: VehicleRecord) -> list[str]:
    return [opening.id for opening in record.openings.values() if opening.takes_over]


def _duties(record: VehicleRecord, found: Sequence[duties.ShownDuty]) -> Iterator[Blocker]:
    """What is lost with the factory unit, what may be, and what keeps the rest."""
    for item in found:
        if item.word in _WEIGHTS:
            weight = _WEIGHTS[item.word]
            title = message(f"blockers/duty-{weight}-{item.fate}", duty=item.name)
            yield _of_duty(weight, title, duties.text(item), item)
    for keepers, when in dict.fromkeys((tuple(item.by), item.when) for item in found if item.by):
        kept = [item for item in found if (tuple(item.by), item.when) == (keepers, when)]
        order = message("blockers/order-for", duties=words.listed(*(item.name for item in kept)))
        said = words.listed(order, *(item.note for item in kept), joined="spaced")
        yield _of_duty("need", message("blockers/keeps", gear=words.either(keepers)), said, kept[0])


_WEIGHTS = {"STOP": "stop", "LOST": "lost", "UNKNOWN": "unknown"}


def _of_duty(weight: str, title: Value, text: Value, item: duties.ShownDuty) -> Blocker:
    return Blocker(weight, title, text, item.openings, item.when, item.clauses)


def _safety(record: VehicleRecord) -> Iterator[Blocker]:
    facts = record.restraint
    if facts is None or facts.wait is Blank.UNKNOWN:
        yield _item(record, "unknown", message("blockers/wait"), message("blockers/wait-do"))
    if facts and facts.memory_keeper == "forbidden":
        yield _item(record, "stop", message("blockers/no-keeper"), message("blockers/no-keeper-why"))
    for opening in record.openings.values():
        sensor = doors.sensor(record, opening)
        if sensor != "no":
            weight = "stop" if sensor == "yes" else "unknown"
            title, text = message("blockers/sensor", opening=opening.name), message(f"blockers/sensor-{sensor}")
            yield _of_opening(record, weight, title, text, opening, opening.when)


def _lids(record: VehicleRecord) -> Iterator[Blocker]:
    """What opens boot and bonnet while the battery is off, where that is not simply a key or a cable."""
    for lid in record.closures.values():
        if lid.latch != "mechanical":
            title, text = message(f"blockers/{lid.id}-{lid.latch}"), message(f"blockers/key-{lid.key}")
            yield _item(record, "need" if lid.latch == "electric" else "unknown", title, text)


def _conflicts(record: VehicleRecord) -> Iterator[Blocker]:
    for dispute in open_disputes(record):
        item = evidence.conflict(record, dispute)
        section, name = dispute.keys[:2]
        title = message("conflicts/titled", fact=item.fact)
        if section == "openings" and name in record.openings:
            opening = record.openings[name]
            yield _of_opening(record, "unknown", title, item.text, opening, opening.when)
        else:
            yield _item(record, "unknown", title, item.text, _holding(record, section, name))


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
            how = message("blockers/waking", gear=words.either(waking)) if waking else message("blockers/none-wakes")
            yield _item(record, "need", message("blockers/amplifier"), how, system.when, [opening])


def _needs(record: VehicleRecord, functions: Collection[str] | None) -> Iterator[Blocker]:
    by_data: dict[When, list[Value]] = {}
    for item in wiring.by_data(record):
        if functions is None or item.of in functions:
            by_data.setdefault(item.when, []).append(wiring.function_name(item.of))
    for when, data in by_data.items():
        text = message("blockers/by-data", count=len(data), functions=words.listed(*data))
        yield _item(record, "need", message("blockers/interface"), text, when, _receivers(record))
    for opening in record.openings.values():
        for what, why in room(opening).needs():
            title = message("blockers/at", what=what, opening=opening.name)
            yield _of_opening(record, "need", title, why, opening, opening.when)
