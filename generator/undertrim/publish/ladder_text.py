"""A button ladder, as data and as text for a terminal: its bands, where they overlap, and which button a reading is."""

import math
from collections.abc import Iterator, Sequence
from typing import Any

from undertrim.derive.wiring.functions import cautions, functions
from undertrim.derive.wiring.ladder import Found, Overlap, Rung, leads_matter, overlaps, place, rungs
from undertrim.derive.wiring.readings import Reading
from undertrim.publish.facts.meter import measured, ranged, rung_data
from undertrim.publish.facts.words import quantity
from undertrim.publish.meter_text import closing, warnings, wrapped
from undertrim.record.model import Blank, Ladder
from undertrim.words import say

Data = dict[str, Any]


def ladder_data(ladder: Ladder, readings: Sequence[Reading]) -> Data:
    """Bands, overlaps and readings as data, in ohm."""
    steps = rungs(ladder)
    return {
        "ladder": ladder.id,
        "pin": ladder.pin,
        "against": ladder.return_,
        "rungs": [rung_data(rung) for rung in steps],
        "overlaps": [_overlap(both) for both in overlaps(steps)],
        "readings": [_reading(reading, place(steps, reading.value)) for reading in readings],
        "cautions": list(_cautions()),
    }


def _overlap(both: Overlap) -> Data:
    high = None if math.isinf(both.high) else both.high
    return {"of": [both.first.name, both.second.name], "low": both.low, "high": high}


def _reading(reading: Reading, found: Found) -> Data:
    return {"text": reading.text, "is": found.kind, "rungs": [rung.name for rung in found.rungs]}


def ladder_text(title: str, ladder: Ladder, readings: Sequence[Reading]) -> str:
    """The same as text, ending in a newline."""
    steps = rungs(ladder)
    lines = [*_head(title, ladder, steps), *_overlaps(steps), *warnings(_cautions()), *_readings(steps, readings)]
    return "\n".join([*lines, *closing(), ""])


def _head(title: str, ladder: Ladder, steps: Sequence[Rung]) -> Iterator[str]:
    yield from wrapped(
        f"{title}: ladder {ladder.id} on {ladder.pin} against {ladder.return_}, within {say(quantity(ladder.tolerance))}",
        "",
        "  ",
    )
    for rung in steps:
        yield f"  {rung.name}{' (no button pressed)' if rung.idle else ''}: {ranged(rung.low, rung.high, 'ohm')}"
    for name in (name for name, nominal in ladder.buttons.items() if isinstance(nominal, Blank)):
        yield f"  {name}: unknown"
    if ladder.idle in (None, Blank.UNKNOWN):
        yield "  idle: unknown, nobody has recorded what it reads with no button pressed"


def _overlaps(steps: Sequence[Rung]) -> Iterator[str]:
    for both in overlaps(steps):
        shared = ranged(both.low, both.high, "ohm")
        yield f"  OVERLAP: {both.first.name} and {both.second.name} share {shared}, a reading there tells neither"


def _readings(steps: Sequence[Rung], readings: Sequence[Reading]) -> Iterator[str]:
    for reading in readings:
        yield ""
        yield from wrapped(f"{reading.text}: {said(place(steps, reading.value))}", "", "  ")
        if leads_matter(reading.value):
            yield "  Hold the meter's leads together first, and take off what they read by themselves."


def said(found: Found) -> str:
    """What a reading means, in words."""
    names = " or ".join(rung.name for rung in found.rungs)
    if found.kind == "ambiguous":
        return f"ambiguous: {names}, their bands overlap here"
    if found.kind == "none":
        return f"none of them: {_between(found)}"
    return f"agrees with {names}"


def _between(found: Found) -> str:
    below = f"above {found.below.name} (to {measured(found.below.high, 'ohm')})" if found.below else ""
    above = f"below {found.above.name} (from {measured(found.above.low, 'ohm')})" if found.above else ""
    return " and ".join(part for part in (below, above) if part) or "no band is recorded"


def _cautions() -> tuple[str, ...]:
    return cautions(ohms=True, care=functions().functions["wheel-buttons"].care)
