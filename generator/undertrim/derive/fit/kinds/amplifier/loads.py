"""What the speakers of each channel are to an amplifier: to one output alone, and to two that are bridged."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import inf
from operator import itemgetter

from undertrim.derive.fit import powering
from undertrim.derive.fit.joined import Joined, Part, on_channels, parallel
from undertrim.derive.fit.kinds.amplifier.part_of import PartOf
from undertrim.derive.fit.margins import Check, Number, Verdict, capped, each, typed, untold
from undertrim.derive.fit.place import Place
from undertrim.record.model import Blank
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, message

_DIGITS = 9  # of an ohm; takes up the rounding of floats


@dataclass(frozen=True, slots=True)
class Channel:
    """One channel with what loads it on each side."""

    name: str
    sides: tuple[Joined, ...]

    @property
    def missing(self) -> list[Message]:
        """The impedances that are needed and not known."""
        found = (_impedance(part) for side in self.sides for parts in side.ranges for part in parts)
        return list(dict.fromkeys(one.named for one in found if one.value is None))

    @property
    def lowest(self) -> tuple[float, tuple[Part, ...]]:
        """The lowest load of its sides in ohm, with what makes it; none of their impedances may be missing."""
        return min((_loaded(parts) for side in self.sides for parts in side.ranges), key=itemgetter(0))

    @property
    def surely(self) -> float:
        """The lowest that it is, however that is fed of which nobody knows how; in ohm."""
        return min((_loaded(parts)[0] for side in self.sides for parts in side.surely), default=inf)


def _loaded(parts: tuple[Part, ...]) -> tuple[float, tuple[Part, ...]]:
    """Speakers in parallel, in ohm; 0 where one of them is typed as 0."""
    return parallel([_impedance(part).value or 0.0 for part in parts]), parts


def loads(place: Place, facts: AmplifierGear) -> PartOf:
    """A check for each channel that it can drive, and what would be so bridged.

    Where its place names none and it suits some, those that it does not suit are a caution: it may be joined to the others alone.
    """
    bay = place.opening if isinstance(place.opening, AmplifierOpening) else None
    channels = [one for one in _channels(place) if powering.may_power(facts, bay, one.name)]
    if not channels:
        return PartOf(notes=(message("fit-amplifier/no-load"),))
    checks = [_alone(one, facts.least_load) for one in channels]
    if not (bay and bay.powers) and any(check.verdict in ("fits", "marginal") for check in checks):
        checks = [_other_channel(check) for check in checks]
    notes = [_bridged(one, facts) for one in channels if facts.channels > 1 and not one.missing]
    return PartOf(tuple(checks), tuple(notes))


def _channels(place: Place) -> Iterator[Channel]:
    found = on_channels(place.vehicle.record, place.car, place.vehicle.visit)
    yield from (Channel(name, sides) for name, sides in found.items())


def _impedance(part: Part) -> Number:
    return typed(message("fit-amplifier/impedance-of", of=part.name), part.impedance)


def _alone(channel: Channel, least: Quantity | Blank | None) -> Check:
    title, name = message("fit-amplifier/load", channel=message(f"channels/{channel.name}")), f"load-{channel.name}"
    limit = typed(message("fit-amplifier/least-load"), least)
    if missing := [*channel.missing, *([limit.named] if limit.value is None else [])]:
        return untold(name, title, missing)
    load, parts = channel.lowest
    found = _held(name, title, load, replace(limit, step=0), [replace(_impedance(one), step=0) for one in parts])
    if found.verdict == "fails" and channel.surely >= (limit.value or 0):
        unfed = dict.fromkeys(one for side in channel.sides for one in side.unfed)
        return untold(name, title, [message("fit-speaker/how-fed", names=each(tuple(unfed)))], found.numbers)
    unplaced = channel.sides[0].unplaced
    return capped(found, message("fit-speaker/find-channel", names=Items(unplaced, "comma")) if unplaced else "")


def _held(name: str, title: Message, load: float, limit: Number, parts: Sequence[Number]) -> Check:
    """One load against the limit, both nominal, so that they are exact."""
    least = limit.value or 0
    margin = round(load - least, _DIGITS)
    verdict: Verdict = "fits" if margin >= 0 else "fails"
    words = message("fit-amplifier/held", check=title, load=round(load, 2), least=round(least, 2))
    return Check(name, title, verdict, words, least, load, margin, 0, (*parts, limit), unit="ohm")


def _other_channel(check: Check) -> Check:
    """What it cannot drive, where there is something that it can."""
    if check.verdict in ("fits", "marginal"):
        return check
    return replace(check, verdict="marginal", said=message("fit-amplifier/not-this-channel", words=check.words))


def _bridged(channel: Channel, facts: AmplifierGear) -> Message:
    """Whether two outputs may be bridged for one side of a channel."""
    name, (load, _) = message(f"channels/{channel.name}"), channel.lowest
    if facts.bridged_load is Blank.NONE:
        return message("fit-amplifier/never-bridged", channel=name)
    if not isinstance(facts.bridged_load, Quantity):
        return message("fit-amplifier/bridged-unknown", channel=name, load=round(load, 2))
    least = facts.bridged_load.value
    code = "bridged-fits" if load >= least * (1 - 1e-9) else "bridged-fails"
    return message(f"fit-amplifier/{code}", channel=name, load=round(load, 2), least=round(least, 2))
