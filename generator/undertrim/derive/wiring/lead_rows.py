"""The row of one lead: where it goes in one car, and whether it may."""

from collections.abc import Sequence
from dataclasses import replace

from undertrim.derive.electrical.numbers import said
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
from undertrim.words import say

_BRAKE = "parking-brake"
SETTLED = ""  # the level of a sound wire is made right by gear between
_SWITCH = "join to the switch wire only"


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
    words = f"the lead '{other.id}' is joined in its place"
    if is_sound(lead.function) and level(lead) != level(other):
        words = f"the car wants {say(LEVELS[bench.output])}: {words}"
    return Row(lead.function, State.LEAD_ALONE, (), lead, words=(words,), do="insulate its end")


def _misled(lead: Lead, path: Path, wrong: Sequence[tuple[Contact, Point]]) -> Row:
    """An adapter that leads it to a contact of the car that does something else."""
    reasons = tuple(reason for _, point in wrong if (reason := apart(lead.function, point.function)))
    said = [f"{contact.gear.name} leads it to {contact.address}" for contact, _ in wrong]
    own = [f"the car has {named(lead.function)} on {point.address}" for point in path.sources if point.address]
    points = tuple(point for _, point in wrong)
    contacts = tuple(contact for contact, _ in wrong)
    return _refusal(Row(lead.function, State.NEVER, points, lead, contacts, _name(path), reasons, (*said, *own)))


def _beside_it(bench: Bench, lead: Lead, path: Path) -> Row:
    """An adapter that leads it to an empty position, while the car has it on a pin that the adapter leaves out."""
    at = " and ".join(contact.address for contact in path.contacts)
    there = " and ".join(point.address for point in path.sources)
    words = f"{_name(path)} leads it to {at}, where this car has nothing; the car has it on {there}"
    do = "compare the map of the plug with the car, then move the contact or join that wire by hand"
    more = traps(lead, (), bench.visible)
    return Row(lead.function, State.LEAD_ALONE, path.sources, lead, path.contacts, _name(path), (), (words, *more), do)


def _decided(bench: Bench, lead: Lead, path: Path) -> Row:
    """The row of a lead whose way leads to what the car has, if it has it."""
    bridge = bench.bridge(lead)
    output = SETTLED if bridge else bench.output
    state, words, do = _partner(lead, path, output)
    do = do if state is not State.JOINED else do + _left_out(path)
    if bridge and bridge is not path.carrier:
        words = (*words, f"{bridge.name} turns its level into {say(LEVELS[bench.output])}")
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


def _guarded(thin: Sequence[Thin], words: tuple[str, ...], do: str) -> tuple[tuple[str, ...], str]:
    """What is said and done with the fuse that a thin wire needs ahead of it."""
    if not thin:
        return words, do
    least = min((one.fuse for one in thin if one.fuse is not None), default=None)
    guard = f"with a fuse of at most {said(least, 'A')} at the joint" if least else "with a thicker wire"
    return (*words, *(one.words for one in thin)), f"{do}, {guard}"


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


def _asked(row: Row, unknown: Sequence[str], misleading: Sequence[str]) -> Row:
    """What nothing is against: unknown while something is not known, a trap while colours mislead, else joined."""
    only = row.do if row.function == _BRAKE else ""
    if unknown:
        do = f"{METER}, then {only}" if only else METER
        return replace(row, state=State.UNKNOWN, words=(*row.words, *unknown), do=do)
    if misleading:
        do = "join by function and not by colour; meter the wire before it is joined"
        return replace(row, state=State.OTHER_COLOUR, do=f"{only}; {do}" if only else do)
    return row


def _partner(lead: Lead, path: Path, output: str) -> tuple[State, tuple[str, ...], str]:
    """Whether there is something to join to, or something else must come first; with words and what to do."""
    by, what = path.sources[0].by, named(lead.function)
    if is_sound(lead.function) and output == "digital-ring":
        return State.INTERFACE, ("the car wants a digital ring on its sound wires",), _until("the digital ring")
    if by == "absent":
        usual = table("fit")["absent"]
        return State.LEAD_ALONE, (), usual.get(lead.function, usual["otherwise"])
    if by == "unknown":
        said = (f"{_name(path)} is said to bring it",) if path.interface else ()
        return State.UNKNOWN, ("whether and where the car has it is unknown", *said), _look_up(lead)
    if path.interface:
        return State.JOINED, (), f"join to the {what} of {_name(path)}{' only' if lead.function == _BRAKE else ''}"
    if by == "data":
        return State.INTERFACE, ("comes as data, and nothing here makes a wire of it",), _until(what)
    if any(by_data(lead, point) for point in path.sources):
        return State.INTERFACE, ("one end speaks data and the other does not",), _until(what)
    return State.JOINED, (), _SWITCH if lead.function == _BRAKE else _joint(path)


def _look_up(lead: Lead) -> str:
    only = f", then {_SWITCH}" if lead.function == _BRAKE else ""
    return f"look it up in the maker's information, or meter it first{only}"


def _until(what: str) -> str:
    return f"get an interface for {what}; insulate the lead until then"


def _joint(path: Path) -> str:
    if path.carrier:
        return f"join to its lead of {_name(path)}"
    return "join by hand" if path.sources[0].address else "run a lead to that wire and join it there"


def _left_out(path: Path) -> str:
    """The wires that are joined by hand beside the contacts of a harness."""
    held = {contact.address for contact in path.contacts}
    bare = [point.address for point in path.sources if held and point.address and point.address not in held]
    return f", and to {' and '.join(bare)} by hand" if bare and not path.interface else ""


def _name(path: Path) -> str:
    return path.carrier.name if path.carrier else ""


def _refusal(row: Row) -> Row:
    return replace(row, do="; ".join(dict.fromkeys(reason.do for reason in row.reasons)))
