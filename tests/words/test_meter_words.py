"""What is said of a meter reading, and the table that the pages' guide reads, stand in the catalogue whole."""

from collections.abc import Iterator
from typing import Any

from marked import language, unmarked

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.readings import read
from undertrim.publish.facts.meter import meter_table
from undertrim.publish.terminal.meter import meter_text
from undertrim.publish.terminal.meter_answer import Question
from undertrim.record.model import Pin
from undertrim.words import speaking
from vectors.meter import SETS


def test_an_answer_has_no_word_of_its_own() -> None:
    """What was typed stays as it was typed."""
    with speaking(language()):
        for texts in SETS:
            said = meter_text(Question("", "", None, tuple(map(read, texts))))
            typed = {word for text in texts for word in unmarked(text)}
            assert set(unmarked(said)) <= typed, texts


def test_what_is_expected_has_no_word_of_its_own() -> None:
    with speaking(language()):
        for function in functions().functions:
            said = meter_text(Question("", "", Pin(id="1", function=function), ()))
            assert unmarked(said) == [], function


def test_the_table_of_the_guide_is_said() -> None:
    with speaking(language()):
        said = list(_words("", meter_table()))
    assert len(said) > 150
    assert [text for text in said if unmarked(text)] == []


def _words(section: str, data: Any) -> Iterator[str]:
    if isinstance(data, dict):
        for key, value in data.items():
            if isinstance(value, str) and (key in ("words", "do", "text", "name") or section in ("sure", "together")):
                yield value
            yield from _words(key, value)
