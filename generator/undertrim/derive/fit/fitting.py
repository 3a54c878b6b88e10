"""How long it takes to fit new gear, as far as the gear says."""

from collections.abc import Iterable
from dataclasses import dataclass

from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.record.units import Quantity


@dataclass(frozen=True, slots=True)
class Fitting:
    """Minutes of fitting for all pieces that say so, each as often as it is fitted; `unsaid` are those that do not."""

    minutes: float = 0.0
    unsaid: tuple[Piece, ...] = ()


def fitting(stock: Stock, pieces: Iterable[tuple[int, Piece]]) -> Fitting:
    """The time for so many of each piece: two speakers take twice the time of one, also where somebody is quick at the second."""
    known = {item.id: item for item in stock.items}
    found = [(count, piece, minutes(known[piece.id])) for count, piece in pieces]
    whole = sum(count * each for count, _, each in found if each is not None)
    return Fitting(whole, tuple(dict.fromkeys(piece for _, piece, each in found if each is None)))


def minutes(gear: Gear) -> float | None:
    """The minutes that fitting one takes; None where its record does not say."""
    takes = gear.facts.fitting
    return takes.value / 60 if isinstance(takes, Quantity) else None
