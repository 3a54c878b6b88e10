"""Signals in the joint: a lead goes on a wire that behaves as it wants, the parking brake on its switch alone."""

from dataclasses import replace

import pytest

from joining import DATA, car, harness, interface, joined, only, reasons, row
from undertrim.derive.wiring.row import State
from undertrim.record.model import Ladder
from undertrim.record.units import parse
from undertrim.words import say

BRAKE = "function: parking-brake, colour: light green, behaves: closes-to-ground"


@pytest.mark.parametrize(
    ("fact", "state", "do"),
    [
        ("{by: data}", State.INTERFACE, "get an interface for parking brake; insulate the lead until then"),
        ("{by: wire, behaves: closes-to-ground}", State.JOINED, "join to the switch wire only"),
        ("{by: wire}", State.UNKNOWN, "unknown: meter it first, then join to the switch wire only"),
        ("{by: unknown}", State.UNKNOWN, "look it up in the maker's information, or meter it first, then join to the switch wire only"),
        ("{by: absent}", State.LEAD_ALONE, "the car has no switch wire for it: see the maker's information, and leave no joint that stands in for the brake"),
    ],
)  # fmt: skip
def test_the_parking_brake_input(fact: str, state: State, do: str) -> None:
    item = only(car("", f"functions: {{parking-brake: {fact}}}\n"), BRAKE)
    assert (item.state, say(item.do)) == (state, do)


def test_the_parking_brake_input_by_an_interface() -> None:
    item = only(car("", "functions: {parking-brake: {by: data}}\n"), BRAKE, DATA)
    assert (item.state, say(item.do)) == (State.JOINED, "join to the parking brake of Pellworth Weir only")


def test_the_parking_brake_input_on_its_switch_pin() -> None:
    item = only(car("3: {function: parking-brake, behaves: closes-to-ground}"), BRAKE)
    assert (item.state, say(item.do), item.car[0].address) == (
        State.JOINED,
        "join to the switch wire only",
        "radio-main/3",
    )


@pytest.mark.parametrize("ground", ["ground", "camera-ground", "wheel-buttons-return"])
def test_the_parking_brake_input_never_meets_ground(ground: str) -> None:
    """Refused with and without a lead, whichever end is the ground."""
    on_ground = only(car(f"3: {{function: {ground}}}"), BRAKE, harness("3: {function: parking-brake}"))
    assert (on_ground.state, reasons(on_ground)) == (State.NEVER, ["parking-brake-to-ground"])
    assert say(on_ground.do) == "refused: it belongs on the wire of the brake switch only"
    about = car("3: {function: parking-brake, behaves: closes-to-ground}")
    turned = only(about, f"function: {ground}", harness(f"3: {{function: {ground}}}"))
    assert (turned.state, reasons(turned)) == (State.NEVER, ["parking-brake-to-ground"])
    unled = row(joined(about, "it: {function: speed}", harness(f"3: {{function: {ground}}}")), "radio-main/3")
    assert (unled.state, reasons(unled)) == (State.NEVER, ["parking-brake-to-ground"])


@pytest.mark.parametrize(
    ("behaves", "wants", "expected"),
    [
        ("dimmed-ground", "dimmed-plus", "dimmed-on-ground-side"),
        ("dimmed-ground", "on-off", "dimmed-on-ground-side"),
        ("dimmed-ground", "", "dimmed-on-ground-side"),
        ("dimmed-plus", "dimmed-ground", "dimmed-on-plus-side"),
        ("on-off", "dimmed-ground", "dimmed-on-plus-side"),
        ("closes-to-ground", "on-off", "switched-on-ground-side"),
        ("closes-to-ground", "dimmed-plus", "switched-on-ground-side"),
        ("closes-to-plus", "dimmed-ground", "dimmed-on-plus-side"),
        ("closes-to-ground", "dimmed-ground", State.JOINED),
        ("dimmed-plus", "", State.JOINED),
        ("on-off", "dimmed-plus", State.JOINED),
        ("dimmed-ground", "dimmed-ground", State.JOINED),
        ("message", "dimmed-plus", State.INTERFACE),
        ("", "dimmed-plus", State.UNKNOWN),
        ("unknown", "dimmed-plus", State.UNKNOWN),
        ("on-off", "unknown", State.UNKNOWN),
        ("pulses", "on-off", "other-signal"),
    ],
)
def test_illumination_on_either_side(behaves: str, wants: str, expected: str) -> None:
    pin, lead = (f", behaves: {said}" if said else "" for said in (behaves, wants))
    item = only(car(f"6: {{function: illumination{pin}}}"), f"function: illumination{lead}")
    assert expected == item.state or (item.state is State.NEVER and reasons(item) == [expected])
    through = only(
        car(f"6: {{function: illumination{pin}}}"),
        f"function: illumination{lead}",
        harness("6: {function: illumination}"),
    )
    assert (through.state, reasons(through)) == (item.state, reasons(item))


def test_a_side_that_is_only_usual_is_said() -> None:
    item = only(car("6: {function: illumination, behaves: dimmed-ground}"), "function: illumination")
    assert "the lead does not say how it wants it, 'on-off' is usual" in say(item.reasons[0].words)


@pytest.mark.parametrize(
    ("function", "pin", "lead", "state"),
    [
        ("reverse", "on-off", "closes-to-plus", State.JOINED),
        ("reverse", "closes-to-ground", "on-off", State.NEVER),
        ("speed", "pulses", "", State.JOINED),
        ("speed", "", "pulses", State.UNKNOWN),
        ("mute", "closes-to-ground", "", State.UNKNOWN),
        ("mute", "closes-to-ground", "closes-to-ground", State.JOINED),
        ("wheel-buttons", "resistance", "message", State.INTERFACE),
        ("wheel-buttons", "message", "message", State.UNKNOWN),
        ("data-high", "message", "message", State.UNKNOWN),
        ("data-high", "", "", State.UNKNOWN),
        ("battery-feed", "", "", State.JOINED),
        ("battery-feed", "unknown", "", State.UNKNOWN),
        ("battery-feed", "", "unknown", State.UNKNOWN),
    ],
)
def test_signals_of_other_functions(function: str, pin: str, lead: str, state: State) -> None:
    one, other = (f", behaves: {said}" if said else "" for said in (pin, lead))
    assert only(car(f"6: {{function: {function}{one}}}"), f"function: {function}{other}").state is state


def test_an_interface_turns_buttons_into_messages() -> None:
    about, lead = car("6: {function: wheel-buttons, behaves: resistance}"), "function: wheel-buttons, behaves: message"
    through = only(about, lead, harness("6: {function: wheel-buttons}"), interface("provides: [wheel-buttons]"))
    assert (through.state, through.through) == (State.JOINED, "Pellworth Weir")


def test_a_recorded_ladder_says_how_buttons_behave() -> None:
    about = car("6: {function: wheel-buttons}")
    ladder = Ladder("wheel", "radio-main/6", parse("5 %", "share"), {"up": parse("330 ohm", "resistance")})
    assert only(about, "function: wheel-buttons").state is State.UNKNOWN
    assert only(replace(about, ladders={"wheel": ladder}), "function: wheel-buttons").state is State.JOINED
    elsewhere = replace(ladder, pin="radio-main/7")
    assert only(replace(about, ladders={"wheel": elsewhere}), "function: wheel-buttons").state is State.UNKNOWN


@pytest.mark.parametrize(
    ("pin", "lead", "expected"),
    [
        ("function: switched-feed, behaves: steady", "function: switched-feed", "switched-to-permanent"),
        (
            "function: switched-feed, behaves: steady",
            "function: switched-feed, behaves: on-off",
            "switched-to-permanent",
        ),
        ("function: battery-feed, behaves: on-off", "function: battery-feed", "permanent-to-switched"),
        ("function: battery-feed, behaves: on-off", "function: battery-feed, behaves: steady", "permanent-to-switched"),
        (
            "function: switched-feed, behaves: on-off",
            "function: switched-feed, behaves: steady",
            "permanent-to-switched",
        ),
        ("function: battery-feed, behaves: steady", "function: battery-feed, behaves: on-off", "switched-to-permanent"),
        ("function: battery-feed, behaves: steady", "function: battery-feed", State.JOINED),
        ("function: switched-feed, behaves: on-off", "function: switched-feed", State.JOINED),
        ("function: battery-feed, behaves: pulses", "function: battery-feed", State.UNKNOWN),
        ("function: ground, behaves: closes-to-plus", "function: ground", State.UNKNOWN),
    ],
)
def test_a_feed_is_what_it_behaves_like(pin: str, lead: str, expected: str) -> None:
    """A name does not make a switched feed of what is live at all times."""
    item = only(car(f"1: {{{pin}}}"), lead)
    assert expected == item.state or (item.state is State.NEVER and reasons(item) == [expected])


def test_data_at_both_ends_goes_through_the_interface() -> None:
    about, lead = car("6: {function: wheel-buttons, behaves: message}"), "function: wheel-buttons, behaves: message"
    through = only(about, lead, interface("provides: [wheel-buttons]"))
    assert (through.state, through.through) == (State.JOINED, "Pellworth Weir")
