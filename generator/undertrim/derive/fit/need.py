"""A function that a receiver needs, and where it gets it in one car."""

from dataclasses import dataclass, field

from undertrim.derive.fit.piece import Piece
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Need:
    """One function: `by` is wire, data, absent or unknown; `providers` is gear in stock that brings it.

    `disputed` where the evidence disagrees on how the car has it: `by` is then unknown.
    """

    function: str
    by: str
    words: Value = field(hash=False)
    providers: tuple[Piece, ...] = ()
    disputed: bool = False
