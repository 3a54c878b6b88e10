"""Which fields are still to be asked at one car, and whether what is typed can be an answer."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive.claims.addresses import AtCar, place_of
from undertrim.derive.claims.outcome import Refused
from undertrim.derive.claims.values import allowed
from undertrim.derive.evidence.seen import answers, seen
from undertrim.derive.questions.asking import questions
from undertrim.derive.questions.question import Field, Question
from undertrim.record import build
from undertrim.record.changing.edits import at
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data, Source
from undertrim.words import Message


@dataclass(frozen=True, slots=True)
class Interview:
    """The questions of a record at one car, `choices` by variant; what is not known of it is left out there."""

    record: VehicleRecord
    source: Source
    choices: Mapping[str, str]

    @classmethod
    def at(cls, record: VehicleRecord, source: Source, car: Data) -> "Interview":
        """At a car as evidence says it: its year, side and choices."""
        known = seen(record, build.car_seen(car)) if car else seen(record, None)
        return cls(record, source, answers(record, known))

    def questions(self) -> Iterator[Question]:
        """Those with fields that this car can answer."""
        for question in questions(self.record, self.source):
            if question.fields and self._is_about(question):
                yield question

    def _is_about(self, question: Question) -> bool:
        """Whether the car is known to be one of those it is about."""
        return all(
            self.choices.get(name, "") in ([said] if isinstance(said, str) else said)
            for name, said in question.cars.items()
        )

    def asks(self, field: Field, said: Mapping[str, str]) -> bool:
        """Whether a field is to be asked, after what was `said` of others by their addresses, and what the record says."""
        if field.only_if is None:
            return True
        about, words = field.only_if
        return (said.get(about) or self._stands(about)) in words

    def wrong(self, field: Field, value: str) -> Message | None:
        """What the record's schema has against a value; None for one that it takes."""
        try:
            allowed(place_of(self.source, tuple(field.about.split("/")), AtCar(self.choices)), value)
        except Refused as error:
            return error.said
        return None

    def _stands(self, about: str) -> str:
        return str(at(self.source.data, place_of(self.source, tuple(about.split("/")), AtCar(self.choices))) or "")
