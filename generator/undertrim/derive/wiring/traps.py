"""Where colours mislead: the two ends of one joint differ, or a lead looks like a wire that does something else."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from undertrim.derive.wiring.leads import named
from undertrim.record import colours
from undertrim.record.gear import Lead
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Wire:
    """What a lead is held against: where it is, what it does, its colour as typed in a scheme (see record/colours.py)."""

    where: Value
    function: str
    colour: str
    scheme: str = ""


def same(one: str, other: str, scheme: str = "") -> bool | None:
    """Whether two colours are the same, base and tracers in order; None where one of them is not recorded. `other` is typed in `scheme`."""
    return _read(one) == _read(other, scheme) if one and other else None


def traps(lead: Lead, partners: Sequence[Wire], others: Sequence[Wire]) -> tuple[Message, ...]:
    """How the colour of a lead misleads beside these wires. `others` of its own function are passed over."""
    return (*_unlike(lead, partners), *_alike(lead, others))


def _unlike(lead: Lead, partners: Sequence[Wire]) -> Iterator[Message]:
    for wire in partners:
        if same(lead.colour, wire.colour, wire.scheme) is False:
            yield message(
                "joint/colours-differ",
                car=colours.as_typed(wire.colour, wire.scheme),
                where=wire.where,
                own=colours.as_typed(lead.colour),
                lead=lead.id,
            )


def _alike(lead: Lead, others: Sequence[Wire]) -> Iterator[Message]:
    for wire in others:
        if wire.function != lead.function and same(lead.colour, wire.colour, wire.scheme):
            yield message(
                "joint/colour-of-another",
                colour=colours.as_typed(lead.colour),
                where=wire.where,
                function=named(wire.function),
            )


@lru_cache(maxsize=4096)
def _read(text: str, scheme: str = "") -> tuple[str, ...]:
    """The codes of a colour; one that cannot be read is compared as typed."""
    try:
        wire = colours.parse(text, scheme or None)
    except colours.ColourError:
        return (text.casefold(),)
    return (wire.base.code, *(tracer.code for tracer in wire.tracers))
