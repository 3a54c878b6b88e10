"""What was measured, and what it says, as data."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.wiring.asking import Next, next_reading
from undertrim.derive.wiring.functions import Band, Function, cautions, functions
from undertrim.derive.wiring.meter import Candidate, Finding, consider, weigh
from undertrim.derive.wiring.readings import Reading
from undertrim.derive.wiring.suspects import Suspicion, stops, suspicions
from undertrim.publish.encoding import Spread
from undertrim.record.model import Pin
from undertrim.record.units import Quantity
from undertrim.words import Value, Word


@dataclass(frozen=True, slots=True)
class Question:
    """What was measured: the car and the wire in words, the record's pin if it has one, the readings; `taken` says what of the plug another car lends."""

    title: Value
    wire: Value
    pin: Pin | None
    readings: tuple[Reading, ...]
    taken: tuple[Value, ...] = ()

    @property
    def function(self) -> Function | None:
        """The function that the record gives the wire."""
        return functions().functions[self.pin.function] if self.pin else None

    @property
    def supply(self) -> float | None:
        """The voltage in V that the record says the wire carries, where that is not the battery's."""
        return self.pin.supply.value if self.pin and isinstance(self.pin.supply, Quantity) else None

    @property
    def recorded(self) -> Candidate | None:
        """What the readings say of the record's function."""
        if self.pin is None or self.function is None:
            return None
        return consider(self.function, self.readings, self.pin.behaves, self.supply)

    @property
    def next(self) -> Next | None:
        """What to measure next; nothing on a wire that is to be left."""
        return None if self.stops else next_reading(self.readings, self.function)

    @property
    def suspicions(self) -> tuple[Suspicion, ...]:
        """What the readings can be besides the functions of a radio."""
        return suspicions(self.readings, self.recorded)

    @property
    def stops(self) -> bool:
        """Whether nothing more may be measured on the wire."""
        return stops(self.suspicions)

    @property
    def cautions(self) -> tuple[Word, ...]:
        """The cautions due: for all wiring, and for the recorded function. Ohms may always come next."""
        return cautions(ohms=True, care=self.function.care if self.function else ())


@dataclass(frozen=True, slots=True)
class ShownReading:
    """One reading in V or ohm; None where it was open."""

    text: str
    kind: str
    state: str
    value: float | None
    open: bool
    step: float


@dataclass(frozen=True, slots=True)
class ShownSuspicion:
    """What the readings can be besides a function of a radio, and what to do then."""

    id: str
    words: Value
    do: Value
    stop: bool
    readings: Sequence[str]


@dataclass(frozen=True, slots=True)
class ShownBand:
    """A band in V or ohm; no upper end is None."""

    words: Value
    low: float
    high: float | None


@dataclass(frozen=True, slots=True)
class ShownFinding:
    """What one reading says of a function."""

    verdict: str
    expected: ShownBand | None
    sure: str
    why: Value


@dataclass(frozen=True, slots=True)
class ShownCandidate:
    """What the readings say of one function."""

    function: str
    name: Value
    pattern: Value | None
    standing: str
    findings: Sequence[ShownFinding]


@dataclass(frozen=True, slots=True)
class Outcome:
    """A band of the next reading, and the functions that it would leave."""

    band: Spread[ShownBand]
    functions: Sequence[Value]


@dataclass(frozen=True, slots=True)
class NextReading:
    """What to measure next, in which state of the car, and what each outcome would say."""

    kind: str
    state: str
    outcomes: Sequence[Outcome]


@dataclass(frozen=True, slots=True)
class MeterAnswer:
    """What was measured, and what it says."""

    wire: Value
    readings: Sequence[ShownReading]
    stop: bool
    suspects: Sequence[ShownSuspicion]
    record: ShownCandidate | None
    candidates: Sequence[ShownCandidate]
    next: NextReading | None
    cautions: Sequence[Word]
    taken: Sequence[Value]


def meter_data(question: Question) -> MeterAnswer:
    """The answer, in V and ohm."""
    recorded, asked = question.recorded, question.next
    return MeterAnswer(
        wire=question.wire,
        readings=[_reading(reading) for reading in question.readings],
        stop=question.stops,
        suspects=[_suspicion(one) for one in question.suspicions],
        record=_candidate(recorded) if recorded else None,
        candidates=[_candidate(one) for one in weigh(question.readings)],
        next=_next(asked) if asked else None,
        cautions=question.cautions,
        taken=question.taken,
    )


def _reading(reading: Reading) -> ShownReading:
    is_open = math.isinf(reading.value)
    value = None if is_open else reading.value
    return ShownReading(reading.text, reading.kind, reading.state, value, is_open, reading.step)


def _suspicion(one: Suspicion) -> ShownSuspicion:
    suspect = one.suspect
    return ShownSuspicion(
        id=suspect.id,
        words=suspect.words,
        do=suspect.do,
        stop=suspect.stop,
        readings=one.readings,
    )


def _candidate(one: Candidate) -> ShownCandidate:
    return ShownCandidate(
        function=one.function.id,
        name=one.function.words,
        pattern=one.pattern.words if one.pattern else None,
        standing=one.standing,
        findings=[_finding(finding) for finding in one.findings],
    )


def _finding(finding: Finding) -> ShownFinding:
    return ShownFinding(
        verdict=finding.verdict,
        expected=_band(finding.band) if finding.band else None,
        sure=finding.sure,
        why=finding.why,
    )


def _band(band: Band) -> ShownBand:
    return ShownBand(band.words, band.low, None if math.isinf(band.high) else band.high)


def _next(asked: Next) -> NextReading:
    outcomes = [Outcome(_band(outcome.band), outcome.functions) for outcome in asked.outcomes]
    return NextReading(asked.kind, asked.state, outcomes)
