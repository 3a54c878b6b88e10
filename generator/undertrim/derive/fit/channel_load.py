"""What new gear that plays is to what drives it: the load of its channel, with all that is joined to it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit import powering
from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.joined import DIRECT, Joined, Part, join, total
from undertrim.derive.fit.margins import Check, Number, Verdict, capped, each, typed, untold
from undertrim.derive.fit.stock import Gear, Stocked, of_kind
from undertrim.record.model import Blank, Opening, SoundSystem, VehicleRecord
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, Value, message

_DIGITS = 9  # of an ohm; takes up the rounding of floats


@dataclass(frozen=True, slots=True)
class Load:
    """What an impedance comes to: checks against what the driving side allows, and notes."""

    checks: tuple[Check, ...] = ()
    notes: tuple[Message, ...] = ()


@dataclass(frozen=True, slots=True)
class Driver:
    """What drives a channel, by name, and the least load that it allows."""

    what: Value
    least: Quantity | Blank | None


def load(
    record: VehicleRecord,
    opening: Opening,
    car: Mapping[str, str],
    new: Quantity | Blank | None,
    visit: Mapping[str, Gear],
) -> Load:
    """The load that new gear of that impedance makes of its channel in one car. Openings of one channel are taken as joined in parallel, side by side.

    One that is fed through a capacitor or crossover loads the channel in its own range alone and is not counted. `visit` is what is
    fitted besides, by opening: its impedance counts in place of the factory's, and a new receiver drives what no amplifier does.
    """
    joined = join(record, opening, car, new, visit)
    checks = tuple(check(driver, joined) for driver in drivers(record, car, visit, opening.channel))
    told = (
        *_together(opening, joined),
        *(_apart(part) for part in joined.parts[1:] if part.fed_through not in DIRECT),
    )
    return Load(checks, told)


def drivers(
    record: VehicleRecord, car: Mapping[str, str], visit: Mapping[str, Gear], channel: str = ""
) -> list[Driver]:
    """What may drive the speakers of a channel: one thing, if the record is right. A factory amplifier stays when the radio goes.

    New amplifiers drive them in place of both, each its own channels (`powering.py`).
    """
    if amplifiers := powering.added(record, visit, channel):
        return [Driver(one.name, one.facts.least_load) for one in amplifiers]
    new = next(iter(of_kind(visit.values(), ReceiverGear)), None)
    found = [_driver(system, new, channel) for system in systems(record, car)]
    return found or [Driver(new.name, new.facts.least_load) if new else Driver(message("fit-speaker/driver"), None)]


def _driver(system: SoundSystem, new: Stocked[ReceiverGear] | None, channel: str) -> Driver:
    if powering.by_radio(system, channel):  # the least load is that of the amplifier
        return Driver(new.name, new.facts.least_load) if new else Driver(message("fit-speaker/factory-radio"), None)
    if amplified(system):
        return Driver(message("fit-speaker/factory-amplifier"), system.least_load)
    if new:
        return Driver(new.name, new.facts.least_load)
    return Driver(message("fit-speaker/factory-radio"), system.least_load)


def amplified(system: SoundSystem) -> bool:
    """Whether a factory amplifier follows the radio: it stays when that goes."""
    return bool(system.amplifier) or system.output in ("line", "digital-ring")


def check(driver: Driver, joined: Joined) -> Check:
    """The load against what the driver allows. Where that is not known, no less than the factory's own is marginal, since it works there."""
    title, limit = message("fit-speaker/load-on", driver=driver.what), _limit(driver, joined)
    if joined.missing:
        return untold("load", title, joined.missing)
    found = [_held(title, parts, limit) for parts in joined.sets]
    lowest = min(found, key=lambda check: check.have or 0)
    if limit.value is None or (limit.lacking and lowest.verdict == "fails"):
        return untold("load", title, [_said(driver).named], lowest.numbers)
    if {check.verdict for check in found} == {"fits", "fails"}:
        return untold("load", title, [message("fit-speaker/how-fed", names=each(joined.unfed))], lowest.numbers)
    lowest = capped(lowest, message("fit-speaker/look-up") if limit.lacking else "")
    unplaced = message("fit-speaker/find-channel", names=Items(joined.unplaced, "comma"))
    return capped(lowest, unplaced if joined.unplaced else "")


def _limit(driver: Driver, joined: Joined) -> Number:
    """The least load in ohm; where nobody recorded it, what the factory speakers make of it."""
    if isinstance(driver.least, Quantity):
        return exact(_said(driver).label, driver.least)
    said = _said(driver)
    made = joined.factory
    if made is None:
        return said
    words = message("fit-speaker/factory-load", how=said.text, load=ohms(made))
    return replace(said, value=made, text=words, lacking=True)


def _said(driver: Driver) -> Number:
    """The least load as the record says it."""
    return typed(message("fit-speaker/least-load", driver=driver.what), driver.least)


def _held(title: Message, parts: Sequence[Part], limit: Number) -> Check:
    """One set of speakers against the limit; nominal impedances are names of a kind, and taken as exact."""
    impedances = _impedances(parts)
    together, least = total(impedances), limit.value or 0
    margin = round(together - least, _DIGITS)
    numbers = (*(exact(message("fit-speaker/impedance"), one) for one in impedances), limit)
    allowed = (
        message("fit-speaker/lacking-load", load=limit.text)
        if limit.lacking
        else message("fit-speaker/least", load=ohms(least))
    )
    verdict: Verdict = "fits" if margin >= 0 else "fails"
    words = message("fit-speaker/load", check=title, load=ohms(together), allowed=allowed)
    return Check("load", title, verdict, words, least, together, margin, 0, numbers, unit="ohm")


def _impedances(parts: Sequence[Part]) -> list[Quantity]:
    """Those that are known."""
    return [part.impedance for part in parts if isinstance(part.impedance, Quantity)]


def exact(label: Value, value: Quantity) -> Number:
    """A nominal value in its own unit."""
    return Number(label, value.value, 0, value)


def _apart(part: Part) -> Message:
    """That one on the same channel is fed through something that keeps it to its own range, or may be."""
    return message(f"fit-speaker/fed-{part.fed_through}", name=part.name)


def _together(opening: Opening, joined: Joined) -> Iterator[Message]:
    """What is joined in parallel, where all of it is known."""
    sets = [] if joined.missing else joined.sets
    if len(sets) == 1 and len(sets[0]) > 1:
        names = Items(tuple(part.name for part in sets[0][1:]), "comma")
        channel, together = message(f"channels/{opening.channel}"), ohms(total(_impedances(sets[0])))
        yield message("fit-speaker/together", channel=channel, names=names, load=together)


def ohms(value: float) -> Message:
    """A load in words: `2.67 Ω`."""
    return message("fit-speaker/ohms", value=round(value, 2))
