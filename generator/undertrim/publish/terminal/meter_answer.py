"""What was measured, and what it says, as data."""

import math
from dataclasses import dataclass
from typing import Any

from undertrim.derive.wiring.asking import Next, next_reading
from undertrim.derive.wiring.functions import Band, Function, cautions, functions
from undertrim.derive.wiring.meter import Candidate, Finding, consider, weigh
from undertrim.derive.wiring.readings import Reading
from undertrim.derive.wiring.suspects import Suspicion, stops, suspicions
from undertrim.publish.encoding import said
from undertrim.record.model import Pin
from undertrim.record.units import Quantity
from undertrim.words import Value, Word

Data = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Question:
    """What was measured: the car and the wire in words, the record's pin if it has one, the readings."""

    title: Value
    wire: Value
    pin: Pin | None
    readings: tuple[Reading, ...]

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


def meter_data(question: Question) -> Data:
    """The answer as plain data: V and ohm; no upper end of a band is null."""
    recorded, asked = question.recorded, question.next
    made = {
        "wire": question.wire,
        "readings": [_reading(reading) for reading in question.readings],
        "stop": question.stops,
        "suspects": [_suspicion(one) for one in question.suspicions],
        "record": _candidate(recorded) if recorded else None,
        "candidates": [_candidate(one) for one in weigh(question.readings)],
        "next": _next(asked) if asked else None,
        "cautions": list(question.cautions),
    }
    return dict(said(made))


def _reading(reading: Reading) -> Data:
    value = None if math.isinf(reading.value) else reading.value
    row = {"text": reading.text, "kind": reading.kind, "state": reading.state}
    return {**row, "value": value, "open": math.isinf(reading.value), "step": reading.step}


def _suspicion(one: Suspicion) -> Data:
    suspect = one.suspect
    return {
        "id": suspect.id,
        "words": suspect.words,
        "do": suspect.do,
        "stop": suspect.stop,
        "readings": list(one.readings),
    }


def _candidate(one: Candidate) -> Data:
    return {
        "function": one.function.id,
        "name": one.function.words,
        "pattern": one.pattern.words if one.pattern else None,
        "standing": one.standing,
        "findings": [_finding(finding) for finding in one.findings],
    }


def _finding(finding: Finding) -> Data:
    return {
        "verdict": finding.verdict,
        "expected": _band(finding.band) if finding.band else None,
        "sure": finding.sure,
        "why": finding.why,
    }


def _band(band: Band) -> Data:
    return {"words": band.words, "low": band.low, "high": None if math.isinf(band.high) else band.high}


def _next(asked: Next) -> Data:
    outcomes = [{**_band(outcome.band), "functions": list(outcome.functions)} for outcome in asked.outcomes]
    return {"kind": asked.kind, "state": asked.state, "outcomes": outcomes}
