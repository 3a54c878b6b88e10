"""What to measure next: the reading that tells apart best what the readings so far have left. meter-functions.js holds the same logic."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from undertrim.derive.wiring.functions import Band, Function, Pattern, expected, functions
from undertrim.derive.wiring.meter import findings, is_dead
from undertrim.derive.wiring.readings import Reading


@dataclass(frozen=True, slots=True)
class Outcome:
    """A band that a next reading may fall into, and the functions that it would leave."""

    band: Band
    functions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Next:
    """The reading that separates best what remains, and what its outcomes would mean."""

    kind: str
    state: str
    outcomes: tuple[Outcome, ...]


def next_reading(readings: Sequence[Reading], about: Function | None = None) -> Next | None:
    """What to measure next: what tells the leading patterns from the others for certain; None if nothing does.

    Leading are those of `about` if any of them remains, else those that most readings agree with. Of readings that do
    nearly as well (four fifths) the easiest is taken. Ohms are only asked for once the wire was seen dead, and never of a wire that nobody
    knows, or that is not what it is recorded as: it may belong to an igniter.
    """
    remaining = _remaining(readings)
    leading = _leading(remaining, readings, about)
    known = any(about and pattern.id in about.patterns for pattern in remaining)
    tried = [_try(kind, state, remaining, leading) for kind, state in _untried(readings, ohms=known)]
    for index in (0, 1):  # pairs of different functions before the ways of one function
        most = max((score[index] for score, _ in tried), default=0)
        if most:
            return next(found for score, found in tried if score[index] * 5 >= most * 4)
    return None


def _try(
    kind: str, state: str, remaining: Sequence[Pattern], leading: Sequence[Pattern]
) -> tuple[tuple[int, int], Next]:
    bands = [(pattern, expected(pattern, kind, state)) for pattern in remaining]
    known = [(pattern, band) for pattern, band in bands if band]
    return _score(known, leading), Next(kind, state, _outcomes(known))


def _leading(remaining: Sequence[Pattern], readings: Sequence[Reading], about: Function | None) -> Sequence[Pattern]:
    own = [pattern for pattern in remaining if about and pattern.id in about.patterns]
    agreeing = [_agreeing(pattern, readings) for pattern in remaining]
    best = [pattern for pattern, count in zip(remaining, agreeing, strict=True) if count == max(agreeing)]
    return own or best


def _agreeing(pattern: Pattern, readings: Sequence[Reading]) -> int:
    return sum(found.verdict == "agrees" for found in findings(pattern, readings))


def _remaining(readings: Sequence[Reading]) -> list[Pattern]:
    """The patterns that no reading speaks against."""
    patterns = functions().patterns.values()
    return [one for one in patterns if all(found.verdict != "disagrees" for found in findings(one, readings))]


def _untried(readings: Sequence[Reading], *, ohms: bool) -> Iterator[tuple[str, str]]:
    """Readings that can still be taken: volts before ohms, and the easy states first."""
    taken = {(reading.kind, reading.state) for reading in readings}
    for kind in functions().kinds.values():
        if kind.dead and not (ohms and is_dead(readings)):
            continue
        yield from ((kind.id, state) for state in functions().states if (kind.id, state) not in taken)


def _score(known: Sequence[tuple[Pattern, Band]], leading: Sequence[Pattern]) -> tuple[int, int]:
    """How many pairs with a leading pattern lie apart: those of different functions, and all."""
    pairs = [(a, b) for a, b in combinations(known, 2) if a[0] in leading or b[0] in leading]
    apart = [(a, b) for (a, one), (b, other) in pairs if one.high < other.low or other.high < one.low]
    return sum(_owners(a) != _owners(b) for a, b in apart), len(apart)


def _owners(pattern: Pattern) -> tuple[str, ...]:
    return tuple(one.id for one in functions().functions.values() if pattern.id in one.patterns)


def _outcomes(known: Sequence[tuple[Pattern, Band]]) -> tuple[Outcome, ...]:
    """Bands in the order of the table, each with its functions in the order of the table."""
    bands = {band.id: band for _, band in known}
    names = {id_: {owner for pattern, band in known if band.id == id_ for owner in _owners(pattern)} for id_ in bands}
    return tuple(
        Outcome(bands[id_], tuple(name for name in functions().functions if name in names[id_]))
        for id_ in functions().bands
        if id_ in bands
    )
