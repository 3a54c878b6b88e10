"""Which cars something is true of, in the words of a message."""

from collections.abc import Sequence
from math import prod

from undertrim.check.findings import shown
from undertrim.record.model import Assignment


def where(hit: Sequence[Assignment], cars: Sequence[Assignment]) -> str:
    """What sets the cars of `hit` apart among all `cars`, as ` where radio=map`; empty if it is all.

    Cars that no choice of variants picks out exactly are given by the first of them and how many others.
    """
    if len(hit) == len(cars):
        return ""
    of_hit, of_all = _choices(hit), _choices(cars)
    if prod(len(choices) for choices in of_hit.values()) == len(hit):
        narrow = {name: " or ".join(some) for name, some in of_hit.items() if len(some) < len(of_all[name])}
        return f" where {shown(narrow)}"
    others = len(hit) - 1
    return f" where {shown(hit[0])} (and in {others} other {'car' if others == 1 else 'cars'})"


def _choices(cars: Sequence[Assignment]) -> dict[str, list[str]]:
    return {name: list(dict.fromkeys(car[name] for car in cars)) for name in cars[0]}
