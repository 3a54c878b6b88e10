"""What an instrument can tell: the steps of its scales, read out of what evidence says it was measured with."""

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from undertrim.record.unit_table import kinds
from undertrim.record.units import Quantity, UnitError, parse

_VALUE = re.compile(r"(?:[0-9]+[ -])?[0-9]+ ?[/⁄] ?[0-9]+|[0-9]*\.?[0-9]+")
_UNIT = re.compile(r"\s*([^\s\d,;()]+)")
_SLACK = 1e-9


@lru_cache(maxsize=512)
def scales(said: str) -> tuple[Quantity, ...]:
    """Every quantity in a text such as "Calliper 0.05 mm, angle gauge 0.1 deg": the step of each scale, of whatever kind its unit is.

    What is no number with a known unit is passed over.
    """
    return tuple(_found(said))


def _found(said: str) -> Iterator[Quantity]:
    for number in _VALUE.finditer(said):
        unit = _UNIT.match(said, number.end())
        if unit:
            yield from _read(f"{number.group()} {unit.group(1)}", f"{number.group()} {unit.group(1).rstrip('.')}")


def _read(*texts: str) -> Iterator[Quantity]:
    """The first of some spellings that is a quantity of some kind."""
    for text in texts:
        for kind in kinds():
            try:
                found = parse(text, kind)
            except UnitError:
                continue
            if found.value > 0 and not kinds()[kind].whole:
                yield found
                return


def coarseness(value: Quantity, instruments: Sequence[Sequence[Quantity]]) -> float:
    """The uncertainty of a value in its canonical unit: of its digits, or of what it was measured with, whichever is larger.

    `instruments` are the scales of each piece of evidence behind it. Of several scales of one piece those can be meant that are as
    fine as the digits, if any is; of several pieces the coarsest counts. A scale is read to half of its step, as digits are.
    """
    halves = [_half(value, scales) for scales in instruments]
    return max([value.step, *(half for half in halves if half is not None)])


def _half(value: Quantity, scales: Sequence[Quantity]) -> float | None:
    """Half the step of the scale that can have been meant; None where no scale is of the value's kind."""
    steps = [scale.value / 2 for scale in scales if scale.kind == value.kind]
    meant = [step for step in steps if step <= value.step * (1 + _SLACK)]
    return max(meant or steps, default=None)


def too_fine(value: Quantity, scales: Sequence[Quantity]) -> Quantity | None:
    """The finest scale of the value's kind, where it is too coarse for the digits typed and the value is no multiple of its step."""
    fitting = sorted((scale for scale in scales if scale.kind == value.kind), key=lambda scale: scale.value)
    if not fitting or fitting[0].value / 2 <= value.step * (1 + _SLACK):
        return None
    times = value.value / fitting[0].value
    return None if abs(times - round(times)) <= _SLACK * max(1.0, times) else fitting[0]
