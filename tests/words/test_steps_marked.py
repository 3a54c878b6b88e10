"""In a made-up language, no word of the program's own is left in English in a step, a tally or a blocker."""

import re
from pathlib import Path

import pytest
from marked import SYMBOLS, language
from test_generated_sentences import NAME, SHIPPED, bare, made, record, told

from undertrim.derive import coverage, mirroring
from undertrim.derive.measuring import next_to_measure
from undertrim.derive.procedure import tally
from undertrim.derive.visit import totals as derived
from undertrim.publish.facts import blockers, totals
from undertrim.publish.facts import steps as facts
from undertrim.words import Message, Value, say

_WORD = re.compile(r"[A-Za-z]{2,}")


def own(value: Value) -> list[str]:
    """Latin words of a value that no record typed; what a fact is called is the schema's word, and looked at with that."""
    if isinstance(value, str) or (isinstance(value, Message) and value.code == "conflicts/titled"):
        return []
    said = say(bare(value), language()).replace(NAME, "")
    return [word for word in _WORD.findall(said) if word.lower() not in SYMBOLS]


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_no_word_of_a_step_is_left_in_english(path: Path) -> None:
    about, steps = record(path), made(path).steps
    values: list[Value] = [value for step in steps for value in told(about, step)]
    values += [facts.section_title(step.section) for step in steps]
    values += [facts.state_words(step.state) for step in steps]
    values += [text for item in blockers.blockers(about, path.stem) for text in (item.title, item.text)]
    values += [tool.name for tool in tally.tools(steps)]
    values += [totals.shown(derived.of(steps)).time_text, *(facts.count(item).sort for item in tally.fasteners(steps))]
    assert {word: value for value in values for word in own(value)} == {}


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_no_word_of_what_to_find_out_is_left_in_english(path: Path) -> None:
    about = record(path)
    values: list[Value] = [task.words for task in next_to_measure(about)]
    values += [row.label for row in coverage.matrix(about).rows]
    values += [fact.ask for side in ("left", "right") for fact in mirroring.mirrored(about, side)]
    assert {word: value for value in values for word in own(value)} == {}
