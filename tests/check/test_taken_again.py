"""Random answers about the facts of shipped records: what is taken is there when it is taken again, and nothing else changed."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from answering import PLACE, RECORDS, answer, claims_text, entry_of, leaves, with_text
from undertrim.check import runner, taking
from undertrim.check.taking import Taken
from undertrim.derive.claims import Deed
from undertrim.record import claims
from undertrim.record.claims import Answer
from undertrim.record.migrations.marked import comments
from undertrim.record.problem import Problem
from undertrim.record.source import Pointer
from undertrim.record.store import Entry

AGAIN = (Deed.ALREADY, Deed.KEPT, Deed.REFUSED)
MAY_CHANGE = ("evidence", "conflicts", "verified")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("claims")


@settings(max_examples=settings().max_examples // 8)
@given(st.data())
def test_what_is_taken_is_already_so(folder: Path, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from(RECORDS))
    answers = _read(folder, path, data.draw(st.lists(answer(path), min_size=1, max_size=4)))
    entry = entry_of(path)
    first = _take(entry, answers)
    after = with_text(path, first.text)
    assert comments(after.source.as_typed.text) == comments(first.before)
    assert _problems(after) <= _problems(entry)
    _only_what_was_answered(entry, after, answers, first)
    second = _take(after, answers)
    assert second.text == first.text
    for one, two in zip(first.outcomes, second.outcomes, strict=True):
        assert two.deed in AGAIN
        assert (one.deed is Deed.REFUSED) == (two.deed is Deed.REFUSED)


def _read(folder: Path, path: Path, typed: list[dict[str, object]]) -> tuple[Answer, ...]:
    file = folder / "claims.json"
    file.write_text(claims_text(entry_of(path).address, typed), encoding="utf-8")
    found = claims.read(file)
    assert not found.problems
    return found.answers


def _take(entry: Entry, answers: tuple[Answer, ...]) -> Taken:
    return taking.taken(PLACE, entry, answers)


def _problems(entry: Entry) -> set[tuple[str, str]]:
    return {_said(problem) for problem in runner.check_entry(entry)}


def _said(problem: Problem) -> tuple[str, str]:
    return problem.rule, problem.message


def _only_what_was_answered(before: Entry, after: Entry, answers: tuple[Answer, ...], taken: Taken) -> None:
    """Beside evidence, conflicts and the names of evidence only the facts answered have changed."""
    old, new = (dict(leaves(item.source.data)) for item in (before, after))
    differing = {place for place in {*old, *new} if old.get(place) != new.get(place)}
    last = {one.keys[-1] for one, what in zip(answers, taken.outcomes, strict=True) if what.changes}
    for place in differing:
        assert place[0] in MAY_CHANGE or "source" in place or _ends_with(place, last), place


def _ends_with(place: Pointer, names: set[str]) -> bool:
    return str(place[-1]) in names or (isinstance(place[-1], int) and str(place[-2]) in names)
