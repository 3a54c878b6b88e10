"""What must never be joined, each with a reason that has a name (data/joining.toml)."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from undertrim.derive.fit.kinds.receiver.sound import LEVELS
from undertrim.derive.wiring.leads import is_sound, level, named
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.signals import meeting, side, voltages, wanted_by
from undertrim.record.gear import Lead
from undertrim.record.model import Blank, Voltage
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Message, Value, Word, message, word


@dataclass(frozen=True, slots=True)
class Reason:
    """Why two ends must not meet: a name that does not change, words, and what to do instead."""

    name: str
    words: Value
    do: Word


def refused(lead: Lead, points: Sequence[Point], output: str) -> tuple[Reason, ...]:
    """Every reason not to join a lead straight to these points of the car; empty where nothing known is against it.

    `output` is what the car wants on its sound wires: speaker, line, digital-ring or unknown. That nothing is known to be against a joint
    does not make it right: see `open_points`.
    """
    return (*_each(lead, points), *_level(lead, points, output), *_current(lead, points))


def apart(lead: str, car: str) -> Reason | None:
    """Why two functions never meet; None for the same function."""
    if lead == car:
        return None
    name = next(name for name, row in table("joining")["apart"].items() if _holds(row, lead, car))
    place = ("joining", "apart", name)
    said = message("joint/apart", lead=named(lead), car=named(car), why=word(*place, "words"))
    return Reason(name, said, word(*place, "do"))


def _each(lead: Lead, points: Sequence[Point]) -> Iterator[Reason]:
    for point in points:
        acting = (acts_as(end.function, end.behaves) for end in (lead, point))
        different = apart(lead.function, point.function) or apart(*acting)
        if different:
            yield different
        else:
            yield from _signal(lead, point)
            yield from _voltage(lead, point)


def acts_as(function: str, behaves: str) -> str:
    """What an end is by how it behaves: a battery feed that goes on and off is a switched one, and the other way round."""
    acts: dict[str, dict[str, str]] = table("joining")["acts"]
    return acts.get(function, {}).get(behaves, function)


def _holds(row: dict[str, Any], lead: str, car: str) -> bool:
    one, other = row["one"], row["other"]
    straight = _in(lead, one) and _in(car, other)
    return straight or (not row.get("way") and _in(car, one) and _in(lead, other))


def _in(function: str, group: str) -> bool:
    """Whether a function belongs to a group; `any`, `speaker` and `speaker-minus` follow from the functions themselves."""
    if group.startswith("speaker"):
        return is_sound(function) and function.endswith(group.removeprefix("speaker"))
    return group == "any" or function in table("joining")["group"][group]


def _signal(lead: Lead, point: Point) -> Iterator[Reason]:
    met = meeting(lead, point)
    if met == "opposite":
        yield _of_signal(_lamp_side(point) if lead.function == "illumination" else "other-side", lead)
    elif met == "other":
        yield _of_signal("other-signal", lead)


def _lamp_side(point: Point) -> str:
    """The reason that a lamp wire is on the other side than the lead wants."""
    if side(point.behaves) == "plus":
        return "dimmed-on-plus-side"
    return "dimmed-on-ground-side" if point.behaves == "dimmed-ground" else "switched-on-ground-side"


def _of_signal(name: str, lead: Lead) -> Reason:
    if lead.behaves:
        return _reason(name, _why(name))
    return _reason(name, message("joint/signal-usual", why=_why(name), usual=wanted_by(lead)))


def _voltage(lead: Lead, point: Point) -> Iterator[Reason]:
    if voltages(lead, point) == "other":
        yield _reason(
            "other-voltage",
            message("joint/voltages", why=_why("other-voltage"), car=volts(point.supply), lead=volts(lead.supply)),
        )


def volts(supply: Voltage | None) -> Value:
    """A voltage in words; the battery's where nothing is stated."""
    if supply is None:
        return message("joint/battery-voltage")
    return message("joint/unknown-voltage") if isinstance(supply, Blank) else supply


def _level(lead: Lead, points: Sequence[Point], output: str) -> Iterator[Reason]:
    if not is_sound(lead.function) or not all(is_sound(point.function) for point in points):
        return
    if output in ("speaker", "line") and level(lead) != output:
        name = f"{level(lead)}-to-{output}"
        yield _reason(name, message("joint/level", why=_why(name), level=LEVELS[output]))


def _current(lead: Lead, points: Sequence[Point]) -> Iterator[Reason]:
    """Too much is too much even where the rest of what hangs on the output is not known."""
    if not isinstance(lead.limit, Quantity):
        return
    drawn = round(sum(point.draws.value for point in points if isinstance(point.draws, Quantity)), 9)
    if drawn > lead.limit.value:
        yield _reason(
            "too-much-current",
            message("joint/current", why=_why("too-much-current"), drawn=milliamperes(drawn), limit=lead.limit),
        )


def milliamperes(value: float) -> Message:
    """A current in A, in words."""
    return message("joint/milliamperes", value=value * 1000) if value < 1 else message("joint/amperes", value=value)


def _why(name: str) -> Word:
    return word("joining", "reason", name, "words")


def _reason(name: str, words: Value) -> Reason:
    return Reason(name, words, word("joining", "reason", name, "do"))
