"""Lengths that were worked out, as values that say themselves."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from undertrim.record import equivalents
from undertrim.record.unit_table import kinds
from undertrim.words import Language


@dataclass(frozen=True, slots=True)
class Length:
    """A length in mm, to a hundredth, as people read it: `16.5 mm (0.65 in)`."""

    mm: float

    def say(self, speech: Language) -> str:
        """In both systems of units."""
        return _said(self.mm, speech.decimal_mark)


def both(value: float) -> Length:
    """A length in mm as people read it, in both systems."""
    return Length(round(value, 2))


@lru_cache(maxsize=65536)  # the same few lengths come again and again over a whole stock
def _said(value: float, mark: str) -> str:
    kind = kinds()["length"]
    metric = equivalents.rounded(Fraction(repr(value)), 2).replace(".", mark)
    return f"{metric} mm ({equivalents.other_system(value, kind.units['mm'], kind, mark) or '0 in'})"
