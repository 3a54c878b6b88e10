"""What the speakers of each channel are to an amplifier: to one output alone, and to two that are bridged."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.joined import parallel
from undertrim.derive.fit.kinds.amplifier.part_of import PartOf
from undertrim.derive.fit.margins import Check, Number, Verdict, typed, untold
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Gear, only
from undertrim.record.model import Blank
from undertrim.record.model.kinds.amplifier import AmplifierGear
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.words import Message, message

_DIGITS = 9  # of an ohm; takes up the rounding of floats
_SINGLE = ("bass",)
"""Channels that an amplifier of one output is for."""
_APART = ("capacitor", "crossover")
"""What is fed through these loads its own range alone and is not counted."""


@dataclass(frozen=True, slots=True)
class Channel:
    """One channel with the speakers of each side that load it together."""

    name: str
    sides: tuple[tuple[Number, ...], ...]

    @property
    def missing(self) -> list[Message]:
        """The impedances that are needed and not known."""
        return list(dict.fromkeys(one.named for side in self.sides for one in side if one.value is None))

    @property
    def lowest(self) -> tuple[float, tuple[Number, ...]]:
        """The lowest load of its sides in ohm, with what makes it; none of their impedances may be missing."""
        return min(((_together(side), side) for side in self.sides), key=_load_of)


def _load_of(found: tuple[float, tuple[Number, ...]]) -> float:
    return found[0]


def _together(side: Sequence[Number]) -> float:
    """Speakers in parallel, in ohm; 0 where one of them is typed as 0."""
    return parallel([one.value or 0.0 for one in side])


def loads(place: Place, facts: AmplifierGear) -> PartOf:
    """A check for each channel that it can drive, and what would be so bridged. Where it suits some, those that it does not suit are a caution."""
    channels = [one for one in _channels(place) if facts.channels > 1 or one.name in _SINGLE]
    if not channels:
        return PartOf(notes=(message("fit-amplifier/no-load"),))
    checks = [_alone(one, facts.least_load) for one in channels]
    if any(check.verdict == "fits" for check in checks):
        checks = [_other_channel(check) for check in checks]
    notes = [_bridged(one, facts) for one in channels if facts.channels > 1 and not one.missing]
    return PartOf(tuple(checks), tuple(notes))


def _channels(place: Place) -> Iterator[Channel]:
    openings = [
        one for one in place.vehicle.record.openings_of(SpeakerOpening) if one.channel and one.when.holds(place.car)
    ]
    for name in dict.fromkeys(one.channel for one in openings):
        counted = [one for one in openings if one.channel == name and one.fed_through not in _APART]
        if counted:
            yield Channel(name, tuple(_sides(counted, place.vehicle.visit)))


def _sides(openings: Sequence[SpeakerOpening], visit: Mapping[str, Gear]) -> Iterator[tuple[Number, ...]]:
    """The speakers of the left, of the right, and of the middle alone; what is there once may be on either side."""
    for side in ("left", "right"):
        here = tuple(_impedance(one, visit) for one in openings if not one.each or side in one.each)
        if here:
            yield here


def _impedance(opening: SpeakerOpening, visit: Mapping[str, Gear]) -> Number:
    new = visit.get(opening.id)
    ohms: Quantity | Blank | None = only(new, SpeakerGear).facts.impedance if new else opening.impedance
    return typed(message("fit-amplifier/impedance-of", of=opening.name), ohms)


def _alone(channel: Channel, least: Quantity | Blank | None) -> Check:
    title, name = message("fit-amplifier/load", channel=message(f"channels/{channel.name}")), f"load-{channel.name}"
    limit = typed(message("fit-amplifier/least-load"), least)
    if missing := [*channel.missing, *([limit.named] if limit.value is None else [])]:
        return untold(name, title, missing)
    load, parts = channel.lowest
    return _held(name, title, load, replace(limit, step=0), [replace(one, step=0) for one in parts])


def _held(name: str, title: Message, load: float, limit: Number, parts: Sequence[Number]) -> Check:
    """One load against the limit, both nominal, so that they are exact."""
    least = limit.value or 0
    margin = round(load - least, _DIGITS)
    verdict: Verdict = "fits" if margin >= 0 else "fails"
    words = message("fit-amplifier/held", check=title, load=round(load, 2), least=round(least, 2))
    return Check(name, title, verdict, words, least, load, margin, 0, (*parts, limit), unit="ohm")


def _other_channel(check: Check) -> Check:
    """What it cannot drive, where there is something that it can."""
    if check.verdict == "fits":
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
