"""A hint says what the trade calls a thing, or mends a slip of the finger; it never takes likeness for meaning."""

from collections.abc import Iterator

import pytest

from undertrim.record import colours, schema
from undertrim.record.nearness import near, nearest, slip, slips, suggestion
from undertrim.resources import table
from undertrim.words import message, one_of, quoted

FUNCTIONS = schema.resolve("urn:undertrim:vehicle#/$defs/functionName")["enum"]
ALL = "functions: " + ", ".join(FUNCTIONS)


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("ignition", "write 'switched-feed'"),
        ("ACC", "write 'switched-feed'"),
        ("constant", "write 'battery-feed'"),
        ("earth", "write 'ground'"),
        ("GND", "write 'ground'"),
        ("remote", "write 'amplifier-turn-on'"),
        ("amp_remote", "write 'amplifier-turn-on'"),
        ("dimmer", "write 'illumination' or 'illumination-return'"),
        ("power", "write 'battery-feed' or 'switched-feed'"),
        ("handbrake", "write 'parking-brake'"),
        ("CAN-H", "write 'data-high'"),
        ("FL+", "write 'front-left-plus'"),
        ("fl-", "write 'front-left-minus'"),
        ("rear right positive", "write 'rear-right-plus'"),
        ("mic+", "write 'microphone-plus'"),
        ("sub neg", "write 'bass-minus'"),
        ("iluminación", "write 'illumination'"),
        ("delantero izquierdo +", "write 'front-left-plus'"),
        ("trasero derecho negativo", "write 'rear-right-minus'"),
        ("front-left-pluss", "did you mean 'front-left-plus'?"),
        ("illuminaton", "did you mean 'illumination'?"),
        ("inlumination", "did you mean 'illumination'?"),
    ],
)
def test_words_of_the_trade_go_before_likeness(typed: str, hint: str) -> None:
    assert nearest(typed, FUNCTIONS, "functions") == hint


@pytest.mark.parametrize(
    "typed", ["telephone", "heater", "fan", "front-left", "igniter", "dome", "aux", "data", "plus", "grand"]
)
def test_nothing_is_guessed_by_likeness_alone(typed: str) -> None:
    assert nearest(typed, FUNCTIONS, "functions").startswith(ALL[:60])


def test_no_function_is_a_slip_of_another_that_is_meant() -> None:
    """Every word of the table is offered as what it says, never as what it only looks like."""
    for word, meant in table("trade-words")["words"].items():
        expected = [name for name in meant if name in FUNCTIONS]
        if expected:
            said = message("nearness/write", names=one_of(*map(quoted, expected)))
            assert suggestion(word, FUNCTIONS, "functions") == said


def _words(found: object) -> Iterator[str]:
    """Every word that a schema lets somebody choose, and every name of a field."""
    if isinstance(found, dict):
        yield from (str(word) for word in found.get("enum", ()) if isinstance(word, str))
        yield from found.get("properties", {})
        for value in found.values():
            yield from _words(value)
    elif isinstance(found, list):
        for value in found:
            yield from _words(value)


KNOWN = {word for name in schema.NAMES for word in _words(schema.load(name))}


@pytest.mark.parametrize("word", table("trade-words")["words"])
def test_what_the_table_says_may_stand_somewhere(word: str) -> None:
    for meant in table("trade-words")["words"][word]:
        assert meant in KNOWN or colours.parse(meant) is not None  # which raises for no colour


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("takse", "takes"),
        ("taks", "takes"),
        ("tkaes", "takes"),
        ("take", "takes"),
        ("tak", ""),
        ("stake", ""),
        ("on", ""),
    ],
)
def test_a_slip_is_a_stroke_or_two(typed: str, meant: str) -> None:
    assert slip(typed, ["takes", "release", "of"]) == meant


def test_two_that_are_as_near_are_both_named() -> None:
    assert slips("lest", ["left", "rest", "right"]) == ["left", "rest"]
    assert near("lest", ["left", "rest", "right"]) == ""
    assert nearest("lest", ["left", "rest", "right"], "x") == "did you mean 'left' or 'rest'?"
