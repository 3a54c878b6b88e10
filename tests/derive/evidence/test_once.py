"""What is worked out of a record is worked out once, and goes with it."""

import gc
from dataclasses import replace

from making import record
from undertrim.derive.evidence.once import once
from undertrim.record.model import VehicleRecord


def test_a_record_is_asked_once_and_its_answer_goes_with_it() -> None:
    asked: list[int] = []

    @once
    def parts(about: VehicleRecord) -> int:
        asked.append(len(about.parts))
        return len(about.parts)

    first = record("parts: {panel: {}}\nopenings: {front-door: {kind: speaker, behind: [panel]}}\n")
    other = replace(first, parts={})
    assert [parts(first), parts(first), parts(other)] == [1, 1, 0]
    assert asked == [1, 0]
    del first, other
    gc.collect()
    for _ in range(50):  # a new record may stand where one was that is gone
        assert (
            parts(record("parts: {panel: {}, grille: {}}\nopenings: {front-door: {kind: speaker, behind: [panel]}}\n"))
            == 2
        )
