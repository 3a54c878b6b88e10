"""What switches an amplifier on, and whether the lead that does bears all that hang on it."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.fit.factory_sound import TURN_ON
from undertrim.derive.fit.kinds.amplifier.feed import Amplifier, beside
from undertrim.derive.fit.kinds.amplifier.inputs import Heard
from undertrim.derive.fit.kinds.amplifier.part_of import PartOf
from undertrim.derive.fit.margins import untold
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import of_kind
from undertrim.record.gear import Lead
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.record.model.kinds.receiver import LeadsGear, ReceiverGear
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import message

_TURN_ON = message("fit-amplifier/turn-on")


@dataclass(frozen=True, slots=True)
class Source:
    """What there is: `by` is wire, data, signal, none or unknown; `limit` in A is what a wire gives where its maker says so."""

    by: str
    limit: float | None = None


def match(place: Place, opening: AmplifierOpening, gear: Amplifier, heard: Heard) -> PartOf:
    """How it wakes. A wire comes first; a signal at speaker level does for one that senses it, and a converter may make a turn-on of it."""
    source = _source(place, opening)
    ways = gear.facts.wakes_by
    if source.by == "wire" and "wire" in ways:
        return _on_a_wire(source, [gear, *beside(place, opening, on_run=False)])
    if "signal" in ways and heard.level == "speaker":
        return PartOf(notes=(message("fit-amplifier/wakes-by-signal"),))
    if "wire" in ways and heard.converter and heard.converter.facts.makes_turn_on == "yes":
        return PartOf(notes=(message("fit-amplifier/turn-on-made", by=heard.converter.name),))
    if source.by in ("none", "data", "signal", "wire"):
        return PartOf(to_get=(message(f"fit-amplifier/get-turn-on-{source.by}"),))
    return PartOf((untold("turn-on", _TURN_ON, [message("fit-amplifier/lacks-turn-on")]),))


def _source(place: Place, opening: AmplifierOpening) -> Source:
    """A turn-on lead of a new receiver, else what the record says of the place."""
    for lead in _leads(place):
        return Source("wire", lead.limit.value if isinstance(lead.limit, Quantity) else None)
    return Source(opening.switched_on_by or "unknown")


def _leads(place: Place) -> list[Lead]:
    new = next(iter(of_kind(place.vehicle.visit.values(), ReceiverGear)), None)
    sets = [one for one in place.vehicle.stock.of(LeadsGear) if new and one.id == new.facts.lead_set]
    return [lead for one in sets for lead in one.facts.leads.values() if lead.function == TURN_ON]


def _on_a_wire(source: Source, every: Sequence[Amplifier]) -> PartOf:
    """All that hang on the lead against what it gives; a relay where that is too little. What is only usual asks and never decides."""
    drawn = total([one.facts for one in every])
    if drawn is None:
        return PartOf(notes=(message("fit-amplifier/turn-on-unmeasured"),))
    usual = float(table("amplifiers")["usual"]["turn_on"])
    amounts = {"drawn": Amount(drawn, "A"), "limit": Amount(usual if source.limit is None else source.limit, "A")}
    if source.limit is None:
        return PartOf(notes=(message(f"fit-amplifier/turn-on-{'ask' if drawn > usual else 'usual'}", **amounts),))
    if drawn > source.limit:
        return PartOf(
            notes=(message("fit-amplifier/turn-on-short", **amounts),), to_get=(message("fit-amplifier/get-relay"),)
        )
    return PartOf(notes=(message("fit-amplifier/turn-on-fits", **amounts),))


def total(every: Sequence[AmplifierGear]) -> float | None:
    """What the turn-on terminals take together, in A; None where one of them is not known."""
    drawn = [one.turn_on_draws for one in every]
    known = [one.value for one in drawn if isinstance(one, Quantity)]
    return sum(known) if len(known) == len(drawn) else None
