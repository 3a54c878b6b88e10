"""What people mistype ends in a message that is enough by itself, or is read as it was meant; nothing is read as something else without a word."""

from pathlib import Path

import pytest
from typing_mistakes import MISTAKES, Mistake

from undertrim.check import runner
from undertrim.record.problem import Problem
from undertrim.record.source import read_text
from undertrim.record.store import Entry, Workspace

TYPED = (Path(__file__).parent / "typed.yaml").read_text(encoding="utf-8")
HERE = Workspace(Path("nowhere").absolute())
PLACE = HERE.records / "vehicles" / "brindleway" / "otter-2014-2018.yaml"


def entry(text: str) -> Entry:
    return HERE.entry(PLACE, read_text(text, PLACE))


def said_on(problems: tuple[Problem, ...], line: int) -> list[str]:
    return [f"{one.message} ({one.hint})" for one in problems if one.position.line == line]


def test_the_record_has_no_fault_and_each_mistake_is_made_in_one_place() -> None:
    assert runner.check_entry(entry(TYPED)) == ()
    assert [one.name for one in MISTAKES if TYPED.count(one.right) != 1] == []
    assert len({one.name for one in MISTAKES}) == len(MISTAKES) >= 88


@pytest.mark.parametrize("made", MISTAKES, ids=lambda made: made.name)
def test_what_is_said_is_enough(made: Mistake) -> None:
    text = TYPED.replace(made.right, made.typed)
    found = entry(text)
    problems = runner.check_entry(found)
    lengths = [max(len(line), 1) for line in text.splitlines()]
    assert [one for one in problems if one.position.column > lengths[one.position.line - 1]] == []  # where it was typed
    for told in made.told:
        here = said_on(problems, text[: text.index(told.line)].count("\n") + 1)
        assert any(all(word in said for word in told.words) for said in here), (told, problems)
    if not made.told:
        meant = entry(TYPED.replace(made.right, made.meant))
        assert (problems, runner.check_entry(meant)) == ((), ())
        spelt = made.typed.partition(":")[2].strip(), made.meant.partition(":")[2].strip()
        assert repr(found.record).replace(repr(spelt[0]), repr(spelt[1])) == repr(meant.record)
