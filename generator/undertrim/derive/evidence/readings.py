"""What somebody says a fact is: a quantity, or a word such as `yes` or `unknown`."""

from undertrim.record import units
from undertrim.record.model import Blank
from undertrim.record.units import Quantity, UnitError

Reading = Quantity | str

_SAME = 1e-9


def read(says: str, kind: str) -> Reading:
    """A claim as typed, read as a quantity of a kind; as a word where the kind is empty or it is none such."""
    word = " ".join(says.split())
    if not kind or word in tuple(Blank):
        return word
    try:
        return units.parse(word, kind)
    except UnitError:
        return word


def same(one: Reading, other: Reading) -> bool:
    """Whether two readings are one value: `6.4 cm` and `64 mm` are, `64 mm` and `64.2 mm` are not."""
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        return one.kind == other.kind and abs(one.value - other.value) <= _SAME * max(abs(one.value), abs(other.value))
    return one == other


def text(reading: Reading) -> str:
    """A reading as typed."""
    return reading.text if isinstance(reading, Quantity) else reading
