"""What one side of the question, such as the feed or the turn-on, adds to the answer."""

from dataclasses import dataclass, field

from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.piece import Piece
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class PartOf:
    """Checks, notes, parts from stock, what is to be got, and what to bring besides."""

    checks: tuple[Check, ...] = ()
    notes: tuple[Value, ...] = ()
    parts: tuple[Piece, ...] = ()
    to_get: tuple[Value, ...] = ()
    bring: tuple[Value, ...] = field(default=())
