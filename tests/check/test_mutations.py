"""Spoils the real records at random, one fault at a time: the rule whose business it is must find each.

What cannot be found from a record alone, because what is left reads like a true record of another car: a prerequisite that something
else also names; a part, a fastener line, a plug or a whole opening left out; a number changed where no second number stands beside
it (depth, hole, time, length, torque within the thread's range, a count without edges); glass up for glass down, where the usual
preparation does either; the battery of a preparation on for off; a plug parked on a part that goes back, since its function may have
gone with the radio; the one need for an open boot where another part under the same lid has it too; a replaced part said to go
back; left for right; a colour; a wrong source that exists; a consequence that is made light of in words nobody listed.
"""

import dataclasses
import random
from pathlib import Path
from typing import Any

import pytest
from mutations import KINDS

from undertrim import resources
from undertrim.check import one_file, runner
from undertrim.check.register import RECORD_RULES
from undertrim.record.copying import copied
from undertrim.record.source import Source
from undertrim.record.store import Workspace, entry

RECORDS = sorted((resources.top("records") / "vehicles").glob("*/*.yaml"))
SOURCES: dict[Path, Source] = {path: Workspace.holding(path).load(path).source for path in RECORDS}
MOST = 24
"""Places tried for one kind; random, but the same in every run."""


def places(kind: str) -> list[tuple[Source, str, dict[str, Any]]]:
    """Every place where a kind applies, in all records."""
    mutation, _ = KINDS[kind]
    found = []
    for source in SOURCES.values():
        assert isinstance(source.data, dict)
        untouched = copied(source.data)
        found += [(source, where, spoilt) for where, spoilt in mutation(source.data)]
        assert source.data == untouched
    return found


def problems(source: Source, data: dict[str, Any]) -> list[str]:
    """The ids of the rules that have something to say of a record with this data."""
    spoilt = dataclasses.replace(source, data=data)
    return [problem.rule for problem in runner.check_entry(entry(source.path, "vehicle", spoilt))]


def test_the_records_are_good_before() -> None:
    assert [problems(source, source.data) for source in SOURCES.values() if isinstance(source.data, dict)] == [
        []
    ] * len(RECORDS)


@pytest.mark.parametrize("kind", KINDS)
def test_every_fault_is_found(kind: str, monkeypatch: pytest.MonkeyPatch) -> None:
    _, rule = KINDS[kind]
    monkeypatch.setattr(one_file, "RECORD_RULES", {rule: RECORD_RULES[rule]})
    everywhere = places(kind)
    assert everywhere, "nowhere to try it"
    chosen = random.Random(kind).sample(everywhere, min(MOST, len(everywhere)))  # noqa: S311 - a draw, no secret
    for source, where, spoilt in chosen:
        assert set(problems(source, spoilt)) == {rule}, f"{source.path.name}: {where}"


def test_two_records_that_overlap_are_found(tmp_path: Path) -> None:
    folder = tmp_path / "records" / "vehicles" / "harrowby"
    folder.mkdir(parents=True)
    for path in RECORDS:
        if path.parent.name == "harrowby":
            text = path.read_text(encoding="utf-8").replace("to: 2016-07}", "to: 2016-09}")
            (folder / path.name).write_text(text, encoding="utf-8")
    found = runner.check(Workspace(tmp_path)).problems
    assert "overlapping-records" in {problem.rule for problem in found}
