"""What a new speaker is to what drives it: the load of its channel, with all that is joined to it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.kinds.speaker.balance import balance
from undertrim.derive.fit.kinds.speaker.joined import DIRECT, Joined, Part, join, total
from undertrim.derive.fit.margins import Check, Number, Verdict, capped, typed, untold
from undertrim.derive.fit.stock import Gear, Stocked, of_kind
from undertrim.record.model import Blank, SoundSystem, VehicleRecord
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity, show

_TITLE = "Load on"
_DIGITS = 9  # of an ohm; takes up the rounding of floats


@dataclass(frozen=True, slots=True)
class Load:
    """What the impedance of a speaker comes to: checks against what the driving side allows, and notes."""

    checks: tuple[Check, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Driver:
    """What drives a channel, in words, and the least load that it allows."""

    what: str
    least: Quantity | Blank | None


def load(
    record: VehicleRecord, opening: SpeakerOpening, car: Mapping[str, str], gear: SpeakerGear, visit: Mapping[str, Gear]
) -> Load:
    """The load that a new speaker makes of its channel in one car. Openings of one channel are taken as joined in parallel, side by side.

    One that is fed through a capacitor or crossover loads the channel in its own range alone and is not counted. `visit` is what is
    fitted besides, by opening: its impedance counts in place of the factory's, and a new receiver drives what no amplifier does.
    """
    joined = join(record, opening, car, gear, visit)
    checks = tuple(check(driver, joined) for driver in drivers(record, car, visit))
    told = (
        *_together(opening, joined),
        *(_apart(part) for part in joined.parts[1:] if part.fed_through not in DIRECT),
    )
    return Load(checks, (*told, *balance(record, opening, car, gear, visit)))


def drivers(record: VehicleRecord, car: Mapping[str, str], visit: Mapping[str, Gear]) -> list[Driver]:
    """What may drive the speakers of a car: one thing, if the record is right. A factory amplifier stays when the radio goes."""
    new = next(iter(of_kind(visit.values(), ReceiverGear)), None)
    found = [_driver(system, new) for system in systems(record, car)]
    return found or [Driver(new.name, new.facts.least_load) if new else Driver("what drives it", None)]


def _driver(system: SoundSystem, new: Stocked[ReceiverGear] | None) -> Driver:
    if system.amplifier or system.output in ("line", "digital-ring"):
        return Driver("the factory amplifier", system.least_load)
    if new:
        return Driver(new.name, new.facts.least_load)
    return Driver("the factory radio", system.least_load)


def check(driver: Driver, joined: Joined) -> Check:
    """The load against what the driver allows. Where that is not known, no less than the factory's own is marginal, since it works there."""
    title, limit = f"{_TITLE} {driver.what}", _limit(driver, joined)
    if joined.missing:
        return untold("load", title, joined.missing)
    found = [_held(title, parts, limit) for parts in joined.sets]
    lowest = min(found, key=lambda check: check.have or 0)
    if limit.value is None or (limit.lacking and lowest.verdict == "fails"):
        return untold("load", title, [typed(f"least load of {driver.what}", driver.least).named], lowest.numbers)
    if {check.verdict for check in found} == {"fits", "fails"}:
        return untold("load", title, [f"how {' and '.join(joined.unfed)} is fed (unknown)"], lowest.numbers)
    lowest = capped(lowest, "look the least load up" if limit.lacking else "")
    return capped(lowest, f"find out the channel of {', '.join(joined.unplaced)}" if joined.unplaced else "")


def _limit(driver: Driver, joined: Joined) -> Number:
    """The least load in ohm; where nobody recorded it, what the factory speakers make of it."""
    if isinstance(driver.least, Quantity):
        return exact(f"least load of {driver.what}", driver.least)
    said = typed(f"least load of {driver.what}", driver.least)
    made = joined.factory
    if made is None:
        return said
    words = f"{said.text}, the factory speakers make {ohms(made)}"
    return replace(said, value=made, text=words, lacking=True)


def _held(title: str, parts: Sequence[Part], limit: Number) -> Check:
    """One set of speakers against the limit; nominal impedances are names of a kind, and taken as exact."""
    impedances = _impedances(parts)
    together, least = total(impedances), limit.value or 0
    margin = round(together - least, _DIGITS)
    numbers = (*(exact("impedance", one) for one in impedances), limit)
    allowed = f"least load {limit.text}" if limit.lacking else f"{ohms(least)} at least"
    verdict: Verdict = "fits" if margin >= 0 else "fails"
    words = f"{title}: {ohms(together)}, {allowed}"
    return Check("load", title, verdict, words, least, together, margin, 0, numbers, unit="ohm")


def _impedances(parts: Sequence[Part]) -> list[Quantity]:
    """Those that are known."""
    return [part.impedance for part in parts if isinstance(part.impedance, Quantity)]


def exact(label: str, value: Quantity) -> Number:
    """A nominal value in its own unit."""
    return Number(label, value.value, 0, show(value))


def _apart(part: Part) -> str:
    if part.fed_through == "unknown":
        return f"{part.name} on the same channel: how they are fed is unknown, reckoned both ways"
    return (
        f"{part.name} on the same channel are fed through a {part.fed_through}: they add load in their own range alone"
    )


def _together(opening: SpeakerOpening, joined: Joined) -> Iterator[str]:
    """What is joined in parallel, where all of it is known."""
    sets = [] if joined.missing else joined.sets
    if len(sets) == 1 and len(sets[0]) > 1:
        names = ", ".join(part.name for part in sets[0][1:])
        yield f"on the {opening.channel} channel with {names}: {ohms(total(_impedances(sets[0])))} together, in parallel"


def ohms(value: float) -> str:
    """A load in words: `2.67 Ω`."""
    return f"{round(value, 2):g} Ω"
