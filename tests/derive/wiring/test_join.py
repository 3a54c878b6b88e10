"""The joint by kinds: what each row becomes, told on small cars; many are cases as they happen in the bay."""

from dataclasses import replace

import pytest

from joining import AMPLIFIED, DATA, car, harness, interface, joined, only, row
from undertrim.derive.wiring.row import State
from undertrim.record.model import When
from undertrim.words import say


def test_functions_that_come_as_data_need_an_interface() -> None:
    """Permanent feed on pin 4, switched feed and illumination by data: an interface is needed for two functions."""
    about = car(
        "4: {colour: yellow, function: battery-feed}",
        "functions: {switched-feed: {by: data}, illumination: {by: data}}\n",
    )
    wanted = """
    battery: {function: battery-feed, colour: yellow}
    switched: {function: switched-feed, colour: red}
    lamps: {function: illumination, colour: orange/white}
    """
    without = joined(about, wanted)
    assert [item.state for item in without.rows] == [State.INTERFACE, State.INTERFACE, State.JOINED]
    assert say(row(without, "switched").do) == "get an interface for switched feed; insulate the lead until then"
    through = joined(about, wanted, DATA)
    assert [item.state for item in through.rows] == [State.JOINED] * 3
    assert row(through, "switched").through == "Pellworth Weir"


COLOURS = """
8: {colour: black, function: ground}
13: {colour: pink, function: switched-feed}
14: {colour: red/white, function: speed, behaves: pulses}
"""


def test_a_colour_that_misleads_is_said_with_the_wire_it_belongs_to() -> None:
    joint = joined(
        car(COLOURS), "switched: {function: switched-feed, colour: red}\nspeed: {function: speed, colour: pink}"
    )
    assert {row(joint, name).state for name in ("switched", "speed")} == {State.OTHER_COLOUR}
    assert tuple(map(say, row(joint, "switched").words)) == (
        "the colours differ: pink at radio-main/13, red at the lead 'switched'",
    )
    assert say(row(joint, "speed").words[1]) == "pink is also the colour of radio-main/13, which is switched feed"
    assert "meter the wire" in say(row(joint, "speed").do)


@pytest.mark.parametrize(
    ("colour", "state"),
    [
        ("RD/WH", State.JOINED),
        ("red with white stripe", State.JOINED),
        ("white/red", State.OTHER_COLOUR),
        ("red", State.OTHER_COLOUR),
    ],
)
def test_base_and_tracer_keep_their_order(colour: str, state: State) -> None:
    assert only(car(COLOURS), f"function: speed, colour: {colour}").state is state


def test_behind_an_adapter_its_own_colours_count() -> None:
    adapter = harness(
        "8: {function: ground, colour: black}\n13: {function: switched-feed, colour: red}\n14: {function: speed, colour: violet}"
    )
    joint = joined(
        car(COLOURS), "it: {function: switched-feed, colour: red}\nspeed: {function: speed, colour: black}", adapter
    )
    assert row(joint, "it").state is State.JOINED
    assert tuple(map(say, row(joint, "speed").words)) == (
        "the colours differ: violet at Pellworth Knot radio-main/14, black at the lead 'speed'",
        "black is also the colour of Pellworth Knot radio-main/8, which is ground",
    )


def test_an_interface_does_not_make_what_the_car_has_not() -> None:
    box = interface("provides: [camera-video, reverse]")
    about = car("", "functions: {camera-video: {by: absent}}\n")
    assert only(about, "function: camera-video", box).state is State.LEAD_ALONE
    assert only(about, "function: reverse", box).state is State.UNKNOWN


def test_wires_without_a_lead_are_said_and_spare_ones_are_not() -> None:
    joint = joined(
        car("1: {function: chime}\n2: {function: data-high}\n3: {function: spare}\n4: {function: microphone-plus}"),
        "it: {function: ground}",
        harness("4: {function: microphone-plus}\n3: {function: chime}"),
        interface("provides: [chime]"),
    )
    said = {item.id: say(item.do) for item in joint.rows if item.state is State.PIN_ALONE}
    assert said == {
        "pin-radio-main-1": "leave it to Pellworth Weir",
        "pin-radio-main-2": "leave it to Pellworth Weir",
        "pin-radio-main-4": "insulate its end at the adapter",
    }


def test_two_leads_of_one_function() -> None:
    about = car("1: {function: ground}\n2: {function: speed, behaves: pulses}")
    joint = joined(about, "a: {function: ground}\nb: {function: ground}\nc: {function: speed}\nd: {function: speed}")
    assert {name: row(joint, name).state for name in "abcd"} == {
        "a": State.JOINED,
        "b": State.JOINED,
        "c": State.JOINED,
        "d": State.LEAD_ALONE,
    }


def test_pins_count_as_numbers() -> None:
    """Whatever the order of the file: pin 2 before pin 10, in one row and from row to row."""
    about = car("10: {function: ground}\n2: {function: ground}\n12: {function: chime}\n3: {function: chime}")
    joint = joined(about, "it: {function: ground}")
    assert [point.pin for point in row(joint, "it").car] == ["2", "10"]
    assert [item.car[0].pin for item in joint.rows if item.lead is None] == ["3", "12"]


def test_what_the_record_says_of_other_cars_does_not_count() -> None:
    about = car("", AMPLIFIED, "functions: {reverse: {by: absent, when: {sound: amplified}}}\n")
    assert only(about, "function: reverse", sound="amplified").state is State.LEAD_ALONE
    assert only(about, "function: reverse", sound="plain").state is State.UNKNOWN


def test_a_plug_is_there_with_the_part_it_belongs_to() -> None:
    plug = "connectors: {p: {name: Plug, at: factory-radio/radio-main, view: wires, rows: 1, columns: 4, pins: {1: {function: ground}}}}\n"
    about = car("", AMPLIFIED, plug)
    radio = about.parts["factory-radio"]
    only_amplified = When((("sound", ("amplified",)),))
    tethers = {"radio-main": replace(radio.tethers["radio-main"], when=only_amplified)}
    for part in (replace(radio, when=only_amplified), replace(radio, tethers=tethers)):
        made = replace(about, parts={"factory-radio": part})
        assert only(made, "function: ground", sound="amplified").state is State.JOINED
        assert only(made, "function: ground", sound="plain").state is State.UNKNOWN


def test_colours_of_what_is_not_joined_are_not_compared() -> None:
    about = car("1: {function: ground}", "functions: {speed: {by: absent}}\n")
    item = only(about, "function: speed, colour: red", harness("2: {function: speed, colour: pink}"))
    assert (item.state, item.words) == (State.LEAD_ALONE, ())
