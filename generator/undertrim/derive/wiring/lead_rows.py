"""The row of one lead: where it goes in one car, and whether it may."""

from collections.abc import Sequence
from dataclasses import replace

from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.fit.kinds.receiver.sound import LEVELS
from undertrim.derive.wiring.bench import Bench, Path
from undertrim.derive.wiring.contacts import Contact
from undertrim.derive.wiring.leads import is_sound, level, named, rival
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.never import apart, refused
from undertrim.derive.wiring.open_points import METER, open_points
from undertrim.derive.wiring.row import Row, State
from undertrim.derive.wiring.signals import by_data
from undertrim.derive.wiring.thin import Thin, thin_wires
from undertrim.derive.wiring.traps import traps
from undertrim.record.gear import Lead
from undertrim.resources import table
from undertrim.words import Items, Message, Value, all_of, message, word

_BRAKE = "parking-brake"
SETTLED = ""  # the level of a sound wire is made right by gear between
_SWITCH = message("joint/switch-wire-only")


def lead_row(bench: Bench, lead: Lead) -> Row:
    """The row of a lead. A lead that another one stands in for has no partner."""
    path = bench.path(lead)
    other = rival(lead, bench.leads, bench.levels)
    if other is not None:
        return _stood_in(bench, lead, other)
    met = [(contact, bench.at(contact.address)) for contact in path.contacts]
    wrong = [(contact, point) for contact, point in met if point is not None and point.function != lead.function]
    if wrong:
        return _misled(lead, path, wrong)
    reached = tuple(point for _, point in met if point is not None)
    if path.contacts and not reached and path.sources[0].by == "pin" and not path.interface:
        return _beside_it(bench, lead, path)
    return _decided(bench, lead, replace(path, sources=_met(lead, path, reached)))


def _met(lead: Lead, path: Path, reached: tuple[Point, ...]) -> tuple[Point, ...]:
    """The points that a lead is joined to. An output feeds every wire of its function: one that the harness leaves out stays dead otherwise,
    and what hangs on it counts against what the lead may deliver."""
    fed = not path.interface and lead.function in table("joining")["group"]["output"]
    return path.sources if fed or not reached else reached


def _stood_in(bench: Bench, lead: Lead, other: Lead) -> Row:
    """A second lead of one function."""
    words = message("joint/stood-in", lead=other.id)
    if is_sound(lead.function) and level(lead) != level(other):
        words = message("joint/stood-in-level", level=LEVELS[bench.output], lead=other.id)
    return Row(lead.function, State.LEAD_ALONE, (), lead, words=(words,), do=message("joint/insulate-end"))


def _misled(lead: Lead, path: Path, wrong: Sequence[tuple[Contact, Point]]) -> Row:
    """An adapter that leads it to a contact of the car that does something else."""
    reasons = tuple(reason for _, point in wrong if (reason := apart(lead.function, point.function)))
    said = [message("joint/led-to", gear=contact.gear.name, at=contact.address) for contact, _ in wrong]
    own = [
        message("joint/car-has", function=named(lead.function), at=point.address)
        for point in path.sources
        if point.address
    ]
    points = tuple(point for _, point in wrong)
    contacts = tuple(contact for contact, _ in wrong)
    return _refusal(Row(lead.function, State.NEVER, points, lead, contacts, _name(path), reasons, (*said, *own)))


def _beside_it(bench: Bench, lead: Lead, path: Path) -> Row:
    """An adapter that leads it to an empty position, while the car has it on a pin that the adapter leaves out."""
    at = all_of(*(contact.address for contact in path.contacts))
    there = all_of(*(point.address for point in path.sources))
    words = message("joint/led-to-nothing", gear=_name(path), at=at, there=there)
    do = message("joint/move-contact")
    more = traps(lead, (), bench.visible)
    return Row(lead.function, State.LEAD_ALONE, path.sources, lead, path.contacts, _name(path), (), (words, *more), do)


def _decided(bench: Bench, lead: Lead, path: Path) -> Row:
    """The row of a lead whose way leads to what the car has, if it has it."""
    bridge = bench.bridge(lead)
    output = SETTLED if bridge else bench.output
    state, words, do = _partner(lead, path, output)
    do = do if state is not State.JOINED else _and_by_hand(path, do)
    if bridge and bridge is not path.carrier:
        words = (*words, message("joint/level-turned", gear=bridge.name, level=LEVELS[bench.output]))
    misleading = traps(lead, bench.facing(path) if state is State.JOINED else (), bench.visible)
    if state is State.JOINED:
        words, do = _guarded(thin_wires(bench.record, lead, path), words, do)
    row = Row(lead.function, state, path.sources, lead, path.contacts, _name(path), (), (*words, *misleading), do)
    wired, straight = _wired(path), _as_met(lead, path)
    reasons = refused(straight, wired, output) if wired or state is State.JOINED else ()
    if reasons:
        return _refusal(replace(row, state=State.NEVER, reasons=reasons))
    if state is not State.JOINED:
        return row
    return _asked(row, open_points(straight, wired, output), misleading)


def _guarded(thin: Sequence[Thin], words: tuple[Value, ...], do: Value) -> tuple[tuple[Value, ...], Value]:
    """What is said and done with the fuse that a thin wire needs ahead of it."""
    if not thin:
        return words, do
    least = min((one.fuse for one in thin if one.fuse is not None), default=None)
    thick = message("joint/with-thicker-wire", do=do)
    guarded = message("joint/with-fuse", do=do, fuse=Amount(least, "A")) if least else thick
    return (*words, *(one.words for one in thin)), guarded


def _wired(path: Path) -> tuple[Point, ...]:
    """What the car has on wires."""
    return tuple(point for point in path.sources if point.by in ("pin", "wire"))


def _as_met(lead: Lead, path: Path) -> Lead:
    """The lead as the car meets it: an interface may say that its contact behaves otherwise or has another voltage, or it makes data a signal."""
    if not path.interface:
        return lead
    behaves, supply = (path.contacts[0].lead.behaves, path.contacts[0].lead.supply) if path.contacts else ("", None)
    kept = "" if lead.behaves == "message" else lead.behaves
    return replace(lead, behaves=behaves or kept, supply=supply or lead.supply)


def _asked(row: Row, unknown: Sequence[Message], misleading: Sequence[Message]) -> Row:
    """What nothing is against: unknown while something is not known, a trap while colours mislead, else joined."""
    only = row.function == _BRAKE
    if unknown:
        do = message("joint/meter-then", do=row.do) if only else METER
        return replace(row, state=State.UNKNOWN, words=(*row.words, *unknown), do=do)
    if misleading:
        by_function = message("joint/by-function")
        both = Items((row.do, by_function), "semicolon")
        return replace(row, state=State.OTHER_COLOUR, do=both if only else by_function)
    return row


def _partner(lead: Lead, path: Path, output: str) -> tuple[State, tuple[Value, ...], Value]:
    """Whether there is something to join to, or something else must come first; with words and what to do."""
    by = path.sources[0].by
    if is_sound(lead.function) and output == "digital-ring":
        return State.INTERFACE, (message("joint/wants-ring"),), message("joint/until-ring")
    if by == "absent":
        return State.LEAD_ALONE, (), _instead(lead.function)
    if by == "unknown":
        brought = (message("joint/said-to-bring", gear=_name(path)),) if path.interface else ()
        return State.UNKNOWN, (message("joint/whether-unknown"), *brought), _look_up(lead)
    if path.interface:
        return State.JOINED, (), _to_interface(lead, path)
    if by == "data":
        return State.INTERFACE, (message("joint/as-data"),), _until(lead)
    if any(by_data(lead, point) for point in path.sources):
        return State.INTERFACE, (message("joint/one-end-data"),), _until(lead)
    return State.JOINED, (), _SWITCH if lead.function == _BRAKE else _joint(path)


def _instead(function: str) -> Value:
    """What is usually done where the car has no such function (data/fit.toml)."""
    return word("fit", "absent", function if function in table("fit")["absent"] else "otherwise")


def _look_up(lead: Lead) -> Message:
    return message("joint/look-up-brake") if lead.function == _BRAKE else message("joint/look-up")


def _to_interface(lead: Lead, path: Path) -> Message:
    if lead.function == _BRAKE:
        return message("joint/join-interface-only", function=named(lead.function), gear=_name(path))
    return message("joint/join-interface", function=named(lead.function), gear=_name(path))


def _until(lead: Lead) -> Message:
    return message("joint/until", function=named(lead.function))


def _joint(path: Path) -> Message:
    if path.carrier:
        return message("joint/join-to-lead", gear=_name(path))
    return message("joint/by-hand") if path.sources[0].address else message("joint/run-lead")


def _and_by_hand(path: Path, do: Value) -> Value:
    """What to do, with the wires that are joined by hand beside the contacts of a harness."""
    held = {contact.address for contact in path.contacts}
    bare = [point.address for point in path.sources if held and point.address and point.address not in held]
    return message("joint/then-by-hand", do=do, others=all_of(*bare)) if bare and not path.interface else do


def _name(path: Path) -> str:
    return path.carrier.name if path.carrier else ""


def _refusal(row: Row) -> Row:
    return replace(row, do=Items(tuple(dict.fromkeys(reason.do for reason in row.reasons)), "semicolon"))
