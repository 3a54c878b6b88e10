"""Whatever is planned, nothing is lost or left over, and everything single-use is bought."""

from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure import tally
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Procedure, targets
from undertrim.derive.procedure.steps import FastenerLine
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import Items, Value, say

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])


def assert_balanced(procedure: Procedure) -> None:
    """Nothing is lost or left over, everything single-use is bought, and every tool is listed."""
    for count in tally.fasteners(procedure.steps):
        assert count.out == count.back + count.moved + count.bagged + count.binned, count
    lines = [(step, line) for step in procedure.steps for line in step.fasteners]
    returned = {(step.part, step.side) for step in procedure.steps if step.kind in ("refit", "move", "restore")}
    single_use = [line for step, line in lines if line.fastener.single_use and (step.part, step.side) in returned]
    counted = [line for line in single_use if line.fate == "out" and line.fastener.kind not in ("hook", "bond")]
    assert sum(count.new for count in tally.fasteners(procedure.steps)) == known(counted)
    assert_bought(procedure, [line for line in single_use if line.fate == "out"])
    used = [line for _, line in lines if line.fate != "leave" and line.tool]
    tools: set[Value] = {line.tool for line in used}.union(*(step.tools for step in procedure.steps))
    spare = {line.tool for line in used if not tools.isdisjoint(tally.either(line))}
    assert {tool.name for tool in tally.tools(procedure.steps)} == tools - spare


def assert_bought(procedure: Procedure, single_use: list[FastenerLine]) -> None:
    """What is bought: as many as came out and go back in new, and a seal for every part that is sealed again."""
    bought = [item.count for item in tally.purchases(procedure.steps)]
    sealed = [
        step
        for step in procedure.steps
        if step.kind in ("refit", "move") and "Seal it again" in say(Items(step.text, "spaced"))
    ]
    parts = [step for step in procedure.steps if step.new]
    resealed = [
        line for step in sealed for line in step.fasteners if line.fate == "new" and line.fastener.kind == "bond"
    ]
    if None not in bought:
        assert sum(count or 0 for count in bought) == known(single_use) - known(resealed) + len(sealed) + len(parts)
    else:
        assert any(not isinstance(line.count, int) for line in single_use)


def known(lines: list[FastenerLine]) -> int:
    return sum(line.count for line in lines if isinstance(line.count, int))


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_every_visit_of_every_record_is_balanced(path: Path) -> None:
    about = WORKSPACE.load(path).record
    assert isinstance(about, VehicleRecord)
    planner = Planner(about)
    for car in cars.assignments(about):
        for chosen in (*([target] for target in targets(about)), targets(about)):
            assert_balanced(planner.plan(chosen, car))


@settings(deadline=None, max_examples=100)
@given(st.data(), records())
def test_every_random_visit_is_balanced(data: st.DataObject, case: Case) -> None:
    car = data.draw(st.sampled_from(cars.assignments(case.record)))
    chosen = data.draw(st.lists(st.sampled_from(targets(case.record)), min_size=1, unique=True))
    try:
        assert_balanced(Planner(case.record).plan(chosen, car))
    except Unreachable:
        assume(False)
