"""What is worked out of a record is worked out once, and goes with it."""

import gc
import weakref

from making import record
from undertrim.derive.once import once
from undertrim.record.model import VehicleRecord

SMALL = "parts: {panel: {}}\nopenings: {front-door: {kind: speaker, behind: [panel]}}\n"


class Answer:
    """Something that is worked out of a record, and does not hold it."""


@once
def answer(_: VehicleRecord) -> Answer:
    return Answer()


def test_equal_records_are_each_asked_once() -> None:
    first, other = record(SMALL), record(SMALL)
    assert first == other
    assert answer(first) is answer(first)
    assert answer(first) is not answer(other)


def test_an_answer_goes_with_its_record() -> None:
    about = record(SMALL)
    kept = weakref.ref(answer(about))
    assert kept() is not None
    del about
    gc.collect()
    assert kept() is None
