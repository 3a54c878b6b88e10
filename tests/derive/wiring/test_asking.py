"""What to measure next: what tells functions apart, and ohms on a wire alone that was seen dead."""

from itertools import product

import pytest
from hypothesis import given

from readings_taken import readings, taken
from undertrim.derive.wiring.asking import next_reading
from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.meter import inside, weigh
from undertrim.derive.wiring.readings import Reading


def test_ohms_are_asked_for_once_the_wire_was_seen_dead() -> None:
    """With every voltage known and none there, ohms alone tell what is left; with the key-off one missing, that comes first."""
    dead = [f"0 V {state.says[0]}" for state in functions().states.values()]
    about = functions().functions["ground"]
    asked = next_reading(taken(*dead), about)
    assert asked is not None
    assert functions().kinds[asked.kind].dead
    unseen = next_reading(taken(*(text for text in dead if text != "0 V key off")), about)
    assert unseen is None or not functions().kinds[unseen.kind].dead


@pytest.mark.parametrize("about", [None, "battery-feed"])
def test_ohms_are_never_asked_for_on_a_wire_that_nobody_knows(about: str | None) -> None:
    """It may belong to an igniter; nor where the record's function is ruled out, for then nobody knows it either."""
    function = functions().functions[about] if about else None
    for number in range(len(functions().states) + 1):
        asked = next_reading(
            taken(*(f"0 V {state.says[0]}" for state in [*functions().states.values()][:number])), function
        )
        assert asked is None or not functions().kinds[asked.kind].dead


def test_without_a_reading_everything_is_open() -> None:
    assert {found.standing for found in weigh([])} == {"open"}
    asked = next_reading([])
    assert asked is not None
    assert asked.kind == "volts"


def test_next_separates_a_switched_feed_from_what_else_is_dead_with_the_key_off() -> None:
    asked = next_reading(taken("0 V key off"))
    assert asked is not None
    assert (asked.kind, asked.state) == ("volts", "key-on")
    outcomes = {outcome.band.id: outcome.functions for outcome in asked.outcomes}
    assert outcomes["battery"] == ("switched-feed",)
    assert "ground" in outcomes["zero"]


def test_next_speaks_for_the_function_of_the_record() -> None:
    """After this nothing but the lamps tells illumination from the dead wires."""
    texts = taken("0 V key off", "0 V key on", "0 V accessory")
    about = functions().functions["illumination"]
    asked = next_reading(texts, about)
    assert asked is not None
    assert asked.state in ("lamps-on", "lamps-dimmed")


def test_speakers_alike_are_not_told_apart() -> None:
    """All twelve read the same: no reading is offered as if it told left from right."""
    texts = taken("0 V key off", "0 V key on", "3.4 ohm across the pair", "open", "6.9 V radio on", "2 V AC radio on")
    speakers = {one.id for one in functions().functions.values() if one.group == "speaker"}
    found = weigh(texts)
    assert {one.function.id for one in found[:12]} == speakers
    assert found[11].agreeing > found[12].agreeing
    asked = next_reading(texts)
    assert asked is not None
    for outcome in asked.outcomes:
        assert not speakers & set(outcome.functions) or speakers <= set(outcome.functions)


def test_nothing_is_asked_for_where_nothing_would_tell() -> None:
    """A live wire that a feed, a pulled-up contact and data at battery voltage all give: their ranges overlap everywhere."""
    assert next_reading(taken("12.6 V key off", "12.6 V asleep")) is None


def test_a_feed_that_may_go_off_late_is_read_again_with_the_car_asleep() -> None:
    asked = next_reading(taken("12.6 V key off"))
    assert asked is not None
    assert (asked.kind, asked.state) == ("volts", "asleep")
    assert {outcome.band.id: outcome.functions for outcome in asked.outcomes} == {
        "battery": ("battery-feed",),
        "zero": ("switched-feed",),
    }


@given(readings())
def test_ohms_are_never_asked_for_on_a_wire_that_was_not_seen_dead(found: list[Reading]) -> None:
    asked = next_reading(found)
    if asked and functions().kinds[asked.kind].dead:
        zero = functions().bands["zero"]
        key_off = [reading for reading in found if (reading.kind, reading.state) == ("volts", "key-off")]
        assert key_off
        assert all(inside(reading, zero) for reading in key_off)
        assert functions().states[asked.state].ohms


@given(readings())
def test_what_is_asked_for_is_new_and_its_outcomes_rule_something_out(found: list[Reading]) -> None:
    asked = next_reading(found)
    if asked is None:
        return
    assert (asked.kind, asked.state) not in {(reading.kind, reading.state) for reading in found}
    assert len(asked.outcomes) > 1
    bands = [outcome.band for outcome in asked.outcomes]
    assert any(a.high < b.low for a, b in product(bands, bands))
