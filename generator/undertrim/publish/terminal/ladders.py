"""A button ladder, as data and as text for a terminal: its bands, where they overlap, and which button a reading is."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.wiring.functions import cautions, functions
from undertrim.derive.wiring.ladder import Found, Overlap, Rung, leads_matter, overlaps, place, rungs
from undertrim.derive.wiring.measured import Measured
from undertrim.derive.wiring.readings import Reading
from undertrim.publish.facts.meter import ShownRung, ranged, rung_data
from undertrim.publish.facts.words import quantity
from undertrim.publish.terminal.lines import wrapped
from undertrim.publish.terminal.meter import warnings, worth
from undertrim.record.model import Blank, Ladder
from undertrim.words import Message, Value, Word, all_of, message, one_of, say


@dataclass(frozen=True, slots=True)
class ShownOverlap:
    """Two buttons that cannot be told apart in a band, in ohm; no upper end is None."""

    of: Sequence[Value]
    low: float
    high: float | None


@dataclass(frozen=True, slots=True)
class PlacedReading:
    """A reading, and the buttons that it can be."""

    text: str
    is_: str
    rungs: Sequence[Value]


@dataclass(frozen=True, slots=True)
class LadderAnswer:
    """A button ladder: its bands, where they overlap, and which button each reading is, in ohm."""

    ladder: str
    pin: str
    against: str
    rungs: Sequence[ShownRung]
    overlaps: Sequence[ShownOverlap]
    readings: Sequence[PlacedReading]
    cautions: Sequence[Word]
    taken: Sequence[Value]


def ladder_data(ladder: Ladder, readings: Sequence[Reading], taken: Sequence[Value] = ()) -> LadderAnswer:
    """Bands, overlaps and readings; `taken` says what of its plug another car lends."""
    steps = rungs(ladder)
    return LadderAnswer(
        ladder=ladder.id,
        pin=ladder.pin,
        against=ladder.return_,
        rungs=[rung_data(rung) for rung in steps],
        overlaps=[_overlap(both) for both in overlaps(steps)],
        readings=[_reading(reading, place(steps, reading.value)) for reading in readings],
        cautions=_cautions(),
        taken=taken,
    )


def _overlap(both: Overlap) -> ShownOverlap:
    high = None if math.isinf(both.high) else both.high
    return ShownOverlap([both.first.name, both.second.name], both.low, high)


def _reading(reading: Reading, found: Found) -> PlacedReading:
    return PlacedReading(reading.text, found.kind, [rung.name for rung in found.rungs])


def ladder_text(title: Value, ladder: Ladder, readings: Sequence[Reading], taken: Sequence[Value] = ()) -> str:
    """The same as text, ending in a newline."""
    steps = rungs(ladder)
    doubtful = (line for said in taken for line in wrapped(said, "! ", "  "))
    lines = [
        *_head(title, ladder, steps),
        *doubtful,
        *_overlaps(steps),
        *warnings(_cautions()),
        *_readings(steps, readings),
    ]
    return "\n".join([*lines, *worth(), ""])


def _head(title: Value, ladder: Ladder, steps: Sequence[Rung]) -> Iterator[str]:
    within = quantity(ladder.tolerance)
    at = {"pin": ladder.pin, "against": ladder.return_, "tolerance": within}
    yield from wrapped(message("ladders/title", car=title, ladder=ladder.id, **at), "", "  ")
    for rung in steps:
        code = "ladders/rung-idle" if rung.idle else "ladders/rung"
        yield f"  {say(message(code, name=rung.name, band=ranged(rung.low, rung.high, 'ohm')))}"
    for name in (name for name, nominal in ladder.buttons.items() if isinstance(nominal, Blank)):
        yield f"  {say(message('ladders/rung-unknown', name=name))}"
    if ladder.idle in (None, Blank.UNKNOWN):
        yield f"  {say(message('ladders/idle-unknown'))}"


def _overlaps(steps: Sequence[Rung]) -> Iterator[str]:
    for both in overlaps(steps):
        shared = ranged(both.low, both.high, "ohm")
        found = message("ladders/overlap", first=both.first.name, second=both.second.name, range=shared)
        yield f"  {say(found)}"


def _readings(steps: Sequence[Rung], readings: Sequence[Reading]) -> Iterator[str]:
    for reading in readings:
        yield ""
        meant = meaning(place(steps, reading.value))
        yield from wrapped(message("ladders/reading", reading=reading.text, found=meant), "", "  ")
        if leads_matter(reading.value):
            yield f"  {say(message('ladders/leads'))}"


def meaning(found: Found) -> Message:
    """What a reading means."""
    names = one_of(*(rung.name for rung in found.rungs))
    if found.kind == "ambiguous":
        return message("ladders/ambiguous", buttons=names)
    if found.kind == "none":
        return message("ladders/none-of-them", between=_between(found))
    return message("ladders/agrees", buttons=names)


def _between(found: Found) -> Value:
    parts = []
    if found.below:
        parts.append(message("ladders/above", button=found.below.name, ohms=Measured(found.below.high, "ohm")))
    if found.above:
        parts.append(message("ladders/below", button=found.above.name, ohms=Measured(found.above.low, "ohm")))
    return all_of(*parts) if parts else message("ladders/no-band")


def _cautions() -> tuple[Word, ...]:
    return cautions(ohms=True, care=functions().functions["wheel-buttons"].care)
