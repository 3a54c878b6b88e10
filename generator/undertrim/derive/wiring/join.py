"""The joint of a receiver's leads and the factory plugs of one car, by function: one table, exceptions first."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.evidence.claims import claims
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.bench import Bench, visible
from undertrim.derive.wiring.conflicting import doubted
from undertrim.derive.wiring.contacts import Comparison, compare, contacts
from undertrim.derive.wiring.ends import further
from undertrim.derive.wiring.lead_rows import lead_row
from undertrim.derive.wiring.leads import leads_of
from undertrim.derive.wiring.needs import output, points
from undertrim.derive.wiring.pin_rows import pin_rows
from undertrim.derive.wiring.row import Row, sorting
from undertrim.record.field_titles import FieldTitles, field_titles
from undertrim.record.gear import GearFacts
from undertrim.record.model import VehicleRecord
from undertrim.words import Items, Message, all_of, message


@dataclass(frozen=True, slots=True)
class Joint:
    """A table for one car. `adapter` is None for a joint made by hand, `output` what the car wants on its sound wires."""

    adapter: Gear | None
    interfaces: tuple[Gear, ...]
    output: str
    rows: tuple[Row, ...]
    contacts: Comparison
    notes: tuple[Message, ...] = ()


def join(
    record: VehicleRecord,
    car: Mapping[str, str],
    leads: GearFacts,
    adapter: Gear | None,
    interfaces: Sequence[Gear] = (),
) -> Joint:
    """Join a lead set to one car, through a harness or by hand, and through interfaces and level converters.

    `car` chooses every variant that the wiring depends on. Every lead is in exactly one row, and so is every contact of the car that does
    something, whatever order the files have. Nothing is joined but what has one function at both ends.
    """
    between = (*([adapter] if adapter else []), *interfaces)
    held, having = contacts(record, car, between), points(record, car)
    lying_open = visible(having, held)
    bench = Bench(record, car, having, leads_of(leads), held, tuple(interfaces), output(record, car), lying_open)
    of_leads = [lead_row(bench, lead) for lead in bench.leads]
    found = (doubted(bench, row) for row in (*of_leads, *pin_rows(bench, of_leads)))
    rows = sorted((_followed(bench, row) for row in found), key=sorting)
    compared = compare(record, car, bench.held, bench.points)
    return Joint(adapter, bench.interfaces, bench.output, tuple(rows), compared, tuple(_notes(bench)))


def _followed(bench: Bench, row: Row) -> Row:
    """A row that says where its wire of the car shows again, and in which colour: at a door or a speaker."""
    names = {point.function: None for point in row.car if point.address}
    beyond = [said for name in names for said in further(bench.record, bench.car, name)]
    return replace(row, words=(*row.words, *beyond))


_TURN_ON = {
    "wire": "joint/amplifier-by-wire",
    "data": "joint/amplifier-by-data",
    "signal": "joint/amplifier-by-signal",
    "unknown": "joint/amplifier-unknown",
}


def _notes(bench: Bench) -> Iterator[Message]:
    for system in systems(bench.record, bench.car):
        if system.amplifier:
            yield message(_TURN_ON[system.turn_on or "unknown"], place=system.amplifier.rstrip("."))
        if system.powers:
            powered = Items(tuple(message(f"channels/{name}") for name in system.powers), "comma")
            yield message("joint/amplifier-powers", channels=powered)
        for dispute in open_disputes(bench.record, "sound", system.id):
            yield message(
                "joint/sound-disputed",
                field=FieldTitles(field_titles(dispute.keys).titles[-1:]),
                claims=claims(dispute),
            )
    yield from _other_maps(bench)
    yield from _crowded(bench)


def _other_maps(bench: Bench) -> Iterator[Message]:
    """Gear that is made for another map of the plug that this car has."""
    plugs = bench.record.connectors
    others = {(held.gear.name, held.made_for, held.plug): None for held in bench.held if held.made_for != held.plug}
    for name, made_for, plug in others:
        if not plugs[plug].is_named(made_for):
            meant = plugs[made_for].name if made_for in plugs else made_for
            yield message("joint/another-map", gear=name, meant=meant, plug=plugs[plug].name)


def _crowded(bench: Bench) -> Iterator[Message]:
    """Pieces of gear that want the same contact of the car."""
    takers: dict[str, list[str]] = {}
    for contact in bench.held:
        takers.setdefault(contact.address, []).append(contact.gear.name)
    pairs = {tuple(names): None for names in takers.values() if len(names) > 1}
    for names in pairs:
        at = Items(tuple(address for address, found in takers.items() if tuple(found) == names), "comma")
        yield message("joint/same-contacts", gear=all_of(*names), at=at)
