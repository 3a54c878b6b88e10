"""The replay catches a procedure that is wrong, whoever wrote it: each way of spoiling a good one has a fault of its own."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from spoiling import RECORDS, SPOILERS, record_of, stateless
from undertrim.derive import cars
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import replay
from undertrim.words import sentence


@cache
def procedures(path: Path) -> list[tuple[Mapping[str, str], tuple[Step, ...]]]:
    """The good procedure for all openings of a record, for each car."""
    record = record_of(path)
    planner = Planner(record)
    return [(car, tuple(stateless(planner.plan(targets(record), car).steps))) for car in cars.assignments(record)]


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_every_job_pair_and_car_of_the_records_is_safe(path: Path) -> None:
    record = record_of(path)
    planner, every = Planner(record), targets(record)
    visits = (
        [[one] for one in every]
        + [[one, other] for i, one in enumerate(every) for other in every[i + 1 :]]
        + [list(every)]
    )
    for car in cars.assignments(record):
        for visit in visits:
            assert replay(record, car, planner.plan(visit, car).steps) == []


@pytest.mark.parametrize("name", SPOILERS)
def test_a_spoiled_procedure_is_caught(name: str) -> None:
    spoil, kinds = SPOILERS[name]
    tried = 0
    for path in RECORDS:
        record = record_of(path)
        for car, good in procedures(path):
            for bad in spoil(record, list(good)):
                tried += 1
                faults = replay(record, car, bad)
                assert faults, f"{record.vehicle.model}: nothing was said"
                assert {fault.kind for fault in faults} <= kinds, [sentence(fault.said) for fault in faults]
    assert tried, "no record has anything to spoil in this way"
