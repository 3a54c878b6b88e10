"""Amounts, names of sides and numbers of a sort are put into words where they are read, in the reader's language."""

import pytest

from undertrim.derive.fit.verdict import KINDS
from undertrim.derive.procedure.closing import at_rest
from undertrim.publish.facts import words
from undertrim.publish.terminal.plan import tether_name
from undertrim.record import units
from undertrim.record.model import Rest
from undertrim.words import ENGLISH, Language, Value, message, say, speaking

COMMA = Language("xx", decimal_mark=",")
DRAWS, ASLEEP = units.parse("12.5 mA", "current"), units.parse("2.5 min", "time")


def both(value: Value) -> tuple[str, str]:
    """What was reckoned once, said to two readers."""
    return say(value, ENGLISH), say(value, COMMA)


def test_a_quantity_is_said_by_whoever_shows_it() -> None:
    assert both(words.quantity(DRAWS)) == ("12.5 mA", "12,5 mA")


def test_a_step_made_once_says_its_amounts_to_each_reader() -> None:
    [step] = at_rest(Rest(DRAWS, ASLEEP))
    in_english, with_comma = zip(*map(both, step.text), strict=True)
    assert "12.5 mA" in " ".join(in_english)
    assert "12,5 mA" in " ".join(with_comma)


def test_the_side_of_a_tether_is_said_not_its_code() -> None:
    line = {"name": "Antenna plug", "part": "Factory radio", "side": "left"}
    assert tether_name(line) == "Antenna plug (Factory radio, left)"
    with speaking(Language("xx", {("sides/left", "left"): "links"})):
        assert tether_name(line) == "Antenna plug (Factory radio, links)"


@pytest.mark.parametrize("verdict", [*KINDS, "stop", "to-get"])
def test_verdicts_are_counted_in_whole_sentences(verdict: str) -> None:
    one, many = (say(message(f"verdicts/number-{verdict}", count=count)) for count in (1, 5))
    assert one.startswith("1 ")
    assert many.startswith("5 ")


def test_some_do_not_fit_and_one_does_not() -> None:
    assert [say(message("verdicts/number-does-not-fit", count=count)) for count in (1, 5)] == [
        "1 does not fit",
        "5 do not fit",
    ]
