"""The usual room around gear, from the room of each kind (record/model/kinds/usual.py)."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache

from undertrim.derive.fit.margins import Number, typed
from undertrim.record.model import OPENINGS
from undertrim.record.model.kinds.usual import Clearance, usual_for, usual_word
from undertrim.record.units import Quantity, parse


@dataclass(frozen=True, slots=True)
class Clearances:
    """Lengths that hold where neither record nor maker says otherwise, by name; those of all kinds together."""

    by_name: Mapping[str, Number]

    def __getitem__(self, name: str) -> Number:
        """One of them. Raises KeyError for a name that no kind has."""
        return self.by_name[name]


def clearances(**changed: str) -> Clearances:
    """The usual values, some of them replaced by texts such as "2 mm". Raises UnitError, and ValueError for a name that no kind has.

    A usual value may spread; one that somebody chose does not.
    """
    if strange := sorted(changed.keys() - _named().keys()):
        raise ValueError(f"no clearance is called '{strange[0]}'")
    return Clearances({name: _number(kind, name, entry, changed.get(name)) for name, (kind, entry) in _named().items()})


def _number(kind: str, name: str, entry: Clearance, chosen: str | None) -> Number:
    """One clearance: exact, since nobody measured it; with how far others usually lie from it, where it spreads."""
    found = typed(usual_word(kind, "clearances", name, "label"), _length(chosen or entry.size))
    number = Number(found.label, found.value, 0, found.text, default=True)
    if chosen is not None or entry.spreads is None or number.value is None:
        return number
    low, high = (_length(text).value for text in entry.spreads)
    return replace(number, less=number.value - low, more=high - number.value)


def _length(text: str) -> Quantity:
    return parse(text, "length")


@cache
def _named() -> Mapping[str, tuple[str, Clearance]]:
    """Each clearance with the kind it stands at. Raises ValueError where two kinds give one name: the forms ask by name alone."""
    found: dict[str, tuple[str, Clearance]] = {}
    for kind, name, entry in _all():
        if name in found:
            raise ValueError(
                f"clearance '{name}' stands both at '{found[name][0]}' and at '{kind}': give one another name"
            )
        found[name] = kind, entry
    return found


def _all() -> Iterator[tuple[str, str, Clearance]]:
    return ((kind, name, entry) for kind in OPENINGS for name, entry in usual_for(kind).clearances.items())
