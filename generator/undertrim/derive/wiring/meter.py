"""Which functions meter readings agree with. meter-functions.js holds the same logic."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from undertrim.derive.wiring.functions import Band, Function, Pattern, expected, functions, sureness
from undertrim.derive.wiring.readings import Reading

Verdict = Literal["agrees", "disagrees", "nothing"]
Standing = Literal["agrees", "open", "disagrees"]
_STANDINGS: tuple[Standing, ...] = ("agrees", "open", "disagrees")


@dataclass(frozen=True, slots=True)
class Finding:
    """What one reading says of one pattern. `band` is what was expected; `why` is "power" or "live" for idle ohms."""

    verdict: Verdict
    band: Band | None = None
    sure: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A function with the pattern of it that the readings suit best; findings in the order of the readings."""

    function: Function
    pattern: Pattern | None
    findings: tuple[Finding, ...]

    @property
    def agreeing(self) -> int:
        """How many readings agree."""
        return sum(finding.verdict == "agrees" for finding in self.findings)

    @property
    def disagreeing(self) -> int:
        """How many readings disagree."""
        return sum(finding.verdict == "disagrees" for finding in self.findings)

    @property
    def standing(self) -> Standing:
        """One disagreement outweighs everything; "open" where no reading says anything."""
        if self.disagreeing:
            return "disagrees"
        return "agrees" if self.agreeing else "open"


def weigh(readings: Sequence[Reading]) -> tuple[Candidate, ...]:
    """Every function, the best first: those that agree, then those not ruled out, then the rest; more agreement first."""
    found = [consider(function, readings) for function in functions().functions.values()]
    return tuple(sorted(found, key=lambda one: (_STANDINGS.index(one.standing), one.disagreeing, -one.agreeing)))


def consider(
    function: Function, readings: Sequence[Reading], behaves: str = "", supply: float | None = None
) -> Candidate:
    """One function; `behaves` as in the schema and `supply` in V narrow it to what a record says of a pin."""
    patterns = [pattern for pattern in _of(function, behaves) if _proved(pattern, readings)]
    tried = [Candidate(function, pattern, findings(pattern, readings, supply)) for pattern in patterns]
    if not tried:
        return Candidate(function, None, tuple(Finding("nothing") for _ in readings))
    return min(tried, key=lambda one: (one.disagreeing, -one.agreeing))


def _of(function: Function, behaves: str) -> list[Pattern]:
    patterns = [functions().patterns[name] for name in function.patterns]
    known = behaves not in ("", "unknown")
    return [one for one in patterns if not known or not one.behaves or behaves in one.behaves]


def _proved(pattern: Pattern, readings: Sequence[Reading]) -> bool:
    """Whether the state was read without which a pattern looks like another function's."""
    return not pattern.needs or any(reading.state == pattern.needs for reading in readings)


def findings(pattern: Pattern, readings: Sequence[Reading], supply: float | None = None) -> tuple[Finding, ...]:
    """What each reading says of a pattern."""
    live = has_voltage(readings)
    return tuple(judge(pattern, reading, supply, live=live) for reading in readings)


def judge(pattern: Pattern, reading: Reading, supply: float | None = None, *, live: bool = False) -> Finding:
    """What one reading says of a pattern; `live` if the wire had voltage with the key off: ohms then say nothing."""
    everything = functions()
    if everything.kinds[reading.kind].dead and not everything.states[reading.state].ohms:
        return Finding("nothing", why="power")
    if everything.kinds[reading.kind].dead and live:
        return Finding("nothing", why="live")
    band = expected(pattern, reading.kind, reading.state, supply)
    if band is None:
        return Finding("nothing")
    return Finding("agrees" if inside(reading, band) else "disagrees", band, sureness(pattern, band))


def inside(reading: Reading, band: Band) -> bool:
    """Whether what was read, give or take half its last digit, reaches into a band."""
    return reading.value + reading.step >= band.low and reading.value - reading.step <= band.high


def has_voltage(readings: Sequence[Reading]) -> bool:
    """Whether the wire had voltage with the key off, or with the car asleep."""
    at_rest = (reading for reading in readings if reading.kind == "volts" and functions().states[reading.state].rest)
    return any(not inside(reading, functions().bands["zero"]) for reading in at_rest)


def is_dead(readings: Sequence[Reading]) -> bool:
    """Whether the wire was seen to be without voltage with the key off. Asleep alone does not count: ohms are taken before that."""
    key_off = any((reading.kind, reading.state) == ("volts", "key-off") for reading in readings)
    return key_off and not has_voltage(readings)
