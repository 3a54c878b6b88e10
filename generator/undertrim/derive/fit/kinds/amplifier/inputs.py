"""Whether the sound signal that an amplifier finds is one that it takes."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.kinds.amplifier.part_of import PartOf
from undertrim.derive.fit.margins import untold
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Stocked, of_kind
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.record.model.kinds.receiver import ConverterGear, ReceiverGear
from undertrim.words import message

_INPUT = message("fit-amplifier/input")
_BEST = ("line", "speaker", "digital-ring")
"""Where several are there, the one that is taken first: line level is made for it."""


@dataclass(frozen=True, slots=True)
class Heard:
    """What it comes to, the `level` that the amplifier is fed with (empty where none is known), and the converter that makes it."""

    part_of: PartOf
    level: str = ""
    converter: Stocked[ConverterGear] | None = None


def match(place: Place, opening: AmplifierOpening, facts: AmplifierGear) -> Heard:
    """The level found against the inputs; a converter from stock where they differ."""
    found = _found(place, opening)
    if not found:
        return Heard(PartOf((untold("input", _INPUT, [message("fit-amplifier/lacks-level")]),)))
    if found == ("none",):
        return Heard(
            PartOf(notes=(message("fit-amplifier/no-signal"),), to_get=(message("fit-amplifier/get-signal-lead"),))
        )
    if level := next((one for one in _BEST if one in found and one in facts.inputs), ""):
        return Heard(PartOf(notes=(message("fit-amplifier/level-taken", level=message(f"levels/{level}")),)), level)
    return _converted(place, found, facts)


def _found(place: Place, opening: AmplifierOpening) -> Sequence[str]:
    """The levels there: a new receiver's, else what the record says of the place, else what the factory radio sends."""
    new = next(iter(of_kind(place.vehicle.visit.values(), ReceiverGear)), None)
    if new and new.facts.outputs:
        return new.facts.outputs
    said = opening.finds or next((one.output for one in systems(place.vehicle.record, place.car)), "unknown")
    return () if said == "unknown" else (said,)


def _without_turn_on(one: Stocked[ConverterGear]) -> bool:
    """One that makes a turn-on saves a lead, and comes first."""
    return one.facts.makes_turn_on != "yes"


def _converted(place: Place, found: Sequence[str], facts: AmplifierGear) -> Heard:
    shelf = of_kind(place.suiting, ConverterGear)
    fitting = [one for one in shelf if one.facts.takes in found and one.facts.gives in facts.inputs]
    part = next(iter(sorted(fitting, key=_without_turn_on)), None)
    level = message(f"levels/{found[0]}")
    if part:
        note = message("fit-amplifier/level-turned", level=level, by=part.name)
        return Heard(PartOf(notes=(note,), parts=(part.piece,)), part.facts.gives, part)
    return Heard(PartOf(to_get=(message("fit-amplifier/get-converter", level=level),)))
