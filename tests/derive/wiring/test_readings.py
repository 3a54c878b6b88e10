"""Readings as they are typed: every way to say a state, units and short names, and the way out where one cannot be read."""

import math

import pytest

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.readings import ReadingError, read, short
from undertrim.record.units import parse
from undertrim.words import say, sentence, way_out
from undertrim.words.catalogue import english


def test_every_way_to_say_a_state_is_read() -> None:
    for one in functions().states.values():
        for phrase in (*one.says, say(one.words), say(one.name)):
            assert read(f"1.2 V {phrase}").state == one.id, phrase


def test_no_phrase_names_two_states() -> None:
    said = [phrase for state in functions().states.values() for phrase in state.says]
    assert len(said) == len(set(said))


@pytest.mark.parametrize(
    ("text", "kind", "state", "value", "step"),
    [
        ("12.6 V key off", "volts", "key-off", 12.6, 0.05),
        ("12 V ignition on", "volts", "key-on", 12.0, 0.5),
        ("450 mV radio playing", "volts", "radio-on", 0.45, 0.0005),
        ("-0.2 V key off", "volts", "key-off", -0.2, 0.05),
        ("1.2 V AC radio on", "ac", "radio-on", 1.2, 0.05),
        ("1.2VAC radio on", "ac", "radio-on", 1.2, 0.05),
        ("3.6 ohm across the pair", "pair", "key-off", 3.6, 0.05),
        ("4.7k", "ohms", "key-off", 4700.0, 50.0),
        ("4.70 kohm", "ohms", "key-off", 4700.0, 5.0),
        ("330Ω to ground, key off", "ohms", "key-off", 330.0, 0.5),
        ("open brake off", "ohms", "brake-off", math.inf, 0.0),
        ("OL across the pair", "pair", "key-off", math.inf, 0.0),
        ("0 V key on, parking brake on", "volts", "brake-on", 0.0, 0.5),
        ("12.1 V lamps on, dimmed", "volts", "lamps-dimmed", 12.1, 0.05),
    ],
)
def test_readings(text: str, kind: str, state: str, value: float, step: float) -> None:
    found = read(text)
    assert (found.kind, found.state, found.value) == (kind, state, value)
    assert found.step == pytest.approx(step)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "write a number, a unit and the state of the car"),
        ("12 V", "add one of these: key off, key accessory, key on, running"),
        ("12", "write V, mV, ohm or kohm after the number"),
        ("12,6 V key off", "write a decimal point"),
        ("12 W key on", "write V, mV, ohm or kohm"),
        ("12 V key sideways", "write one of these: key off"),
        ("12 V key off key on", "give one reading for each state"),
        ("-3 ohm", "without the minus sign"),
        ("3 ohm AC", "write '1.2 V AC radio on'"),
        ("1 V AC DC key on", "keep the one"),
        ("1 V across the pair key on", "write AC"),
        ("about 12 V key on", "Where the meter shows no connection, write 'open'"),
        ("1" * 61, "write one number"),
    ],
)
def test_what_cannot_be_read_says_the_way_out(text: str, said: str) -> None:
    with pytest.raises(ReadingError) as error:
        read(text)
    why = sentence(error.value.said)
    assert said in way_out(error.value.said)
    assert why[0] in "'tsu"  # lower case, or the value in quotes
    assert not why.endswith(".")
    assert len(why) < 120


def test_no_way_out_has_a_gap() -> None:
    for id_ in english("readings"):
        found = ReadingError(id_, "12 X", "X").said
        assert "{" not in sentence(found) + way_out(found)
        assert way_out(found)


@pytest.mark.parametrize(
    ("unit", "kind"),
    [
        ("V", "voltage"),
        ("mV", "voltage"),
        ("ohm", "resistance"),
        ("kohm", "resistance"),
        ("mohm", "resistance"),
        ("kΩ", "resistance"),
    ],
)
def test_units_are_those_of_the_records(unit: str, kind: str) -> None:
    """The same text comes to the same number in both readers."""
    for number in ("0.1", "4.7", "12.65", "330", "2.2", "1000"):
        assert read(f"{number} {unit} key off").value == parse(f"{number} {unit}", kind).value


def test_short_names_are_read_as_they_stand() -> None:
    for state in functions().states.values():
        assert read(f"1 V {short(state)}").state == state.id
