"""Why each receiver of the stock, and one that is only typed in, is no plain replacement at an opening, and in which cars."""

from dataclasses import dataclass

from undertrim.derive.fit.duty_groups import outcomes_at
from undertrim.derive.fit.stock import Stock, Stocked
from undertrim.record.model import Opening, VehicleRecord, When
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.words import Message

TYPED = Stocked("", ReceiverGear("", ""))
"""A receiver of which only the size is known: it keeps nothing by itself, and nobody has recorded its leads."""


@dataclass(frozen=True, slots=True)
class Stopping:
    """One reason, with the cars and the gear (ids; that of `TYPED` is empty) that it stops."""

    words: Message
    when: When
    gear: tuple[str, ...]


def stopping(record: VehicleRecord, address: str, stock: Stock, opening: Opening) -> tuple[Stopping, ...]:
    """Every reason at one opening, in the order of the duties. Only an opening for a receiver has any."""
    found: dict[tuple[str, Message, When], list[str]] = {}
    for receiver in (TYPED, *stock.of(ReceiverGear)):
        for outcome, when in outcomes_at(record, address, stock, opening, receiver):
            if outcome.stops:
                found.setdefault((outcome.duty, outcome.words, when), []).append(receiver.id)
    order = list(record.duties)
    made = sorted(found.items(), key=lambda item: order.index(item[0][0]))
    return tuple(Stopping(words, when, tuple(ids)) for (_, words, when), ids in made)
