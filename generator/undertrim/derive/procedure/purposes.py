"""What a plug serves: what must be joined before a test, what is tried at the end, what may lie about under power."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from undertrim.derive.procedure import states
from undertrim.record.model import OPENINGS, Assignment, Opening, Part, Tether
from undertrim.record.model.kinds.usual import usual_for
from undertrim.resources import table
from undertrim.words import Word, word


@dataclass(frozen=True, slots=True)
class Purpose:
    """One thing that works through a plug; `try_` is None for restraint wiring, which nobody tries by hand."""

    label: Word
    try_: Word | None = None
    restraint: bool = False
    loose: bool = False


@cache
def purpose(name: str) -> Purpose:
    """The purpose of this name."""
    entry = table("purposes")["purpose"][name]
    label, way = (word("purposes", "purpose", name, key) for key in ("label", "try"))
    return Purpose(label, way if "try" in entry else None, entry.get("restraint", False), entry.get("loose", False))


def served(tether: Tether) -> tuple[str, ...]:
    """What works through a tether: as recorded, with what is so by its kind; empty where nobody has recorded it."""
    return tuple(dict.fromkeys((*tether.serves, *states.tether_kind(tether.kind).serves)))


def may_serve(tether: Tether, used: tuple[str, ...]) -> bool:
    """Whether something of what a test uses may work through it: unknown is not a no."""
    known = served(tether)
    return not known or not set(used).isdisjoint(known)


def wiring(part: Part, car: Assignment) -> Iterator[Tether]:
    """The plugs of a part that can be tried: electric, neither restraint nor high-voltage wiring, and in this car."""
    for tether in part.tethers.values():
        if tether.circuit == "ordinary" and tether.when.holds(car) and states.tether_kind(tether.kind).electric:
            yield tether


def for_a_test(tether: Tether) -> bool:
    """Whether a plug that is undone is joined again before any test: what a test may use cannot lie on the bench meanwhile."""
    ordinary = tether.circuit == "ordinary" and states.tether_kind(tether.kind).electric
    return ordinary and may_serve(tether, tested())


@cache
def tested() -> tuple[str, ...]:
    """What any test of fitted gear uses."""
    entries = [entry for kind in OPENINGS for entry in usual_for(kind).test.values()]
    return tuple(dict.fromkeys(name for entry in entries for name in entry.uses))


def may_lie_loose(tether: Tether) -> bool:
    """Whether a part may lie about under power with this restraint plug joined: only where what hangs on it is known and cannot fire."""
    return bool(tether.serves) and all(purpose(name).loose for name in tether.serves)


def seat_loose(part: Part, car: Assignment) -> bool:
    """Whether a seat is unbolted once the part is off: it is held by seat bolts, and is not known to be something beside the seat."""
    bolted = any(f.role == "seat" and f.leave == "no" and f.when.holds(car) for f in part.held_by)
    return bolted and part.area in ("", "seat")


def window(opening: Opening) -> str:
    """Whether a window moves behind an opening: yes where it ends the depth or was moved for the measurement, no or unknown."""
    depth = opening.depth
    if depth and (depth.obstruction == "glass" or depth.over in _WITH_GLASS):
        return "yes"
    if depth and depth.over == "no-glass":
        return "no"
    return "unknown" if opening.in_a_door else "no"


_WITH_GLASS = ("whole-travel", "glass-down")
"""Ways to measure a depth that only an opening with a window has."""
