"""Supplies and currents in the joint: what feeds a camera, what an output may carry, what a fuse protects."""

import pytest

from joining import car, harness, interface, joined, only, reasons, row
from undertrim.derive.wiring.row import State
from undertrim.words import say


@pytest.mark.parametrize(
    ("pin", "lead", "expected"),
    [
        (", supply: 6 V", "", "other-voltage"),
        ("", ", supply: 6 V", "other-voltage"),
        (", supply: 6 V", ", supply: 8 V", "other-voltage"),
        (", supply: 6 V", ", supply: 12 V", "other-voltage"),
        (", supply: 6 V", ", supply: 6.0 V", State.JOINED),
        (", supply: 6 V", ", supply: 6.3 V", State.JOINED),  # 5 % of 6.3 V is 0.315 V
        (", supply: 6.0 V", ", supply: 6.3 V", State.JOINED),
        (", supply: 6 V", ", supply: 6.4 V", "other-voltage"),  # within the digits of 6 V, beyond 5 %
        (", supply: 5 V", ", supply: 5.5 V", "other-voltage"),
        (", supply: 24 V", ", supply: 24.5 V", State.JOINED),
        (", supply: 12 V", ", supply: 13.8 V", State.JOINED),  # both the battery's
        (", supply: 10.8 V", ", supply: 11.2 V", State.JOINED),
        (", supply: 10.8 V", "", "other-voltage"),
        ("", ", supply: 12 V", State.JOINED),
        ("", "", State.JOINED),
        (", supply: unknown", "", State.UNKNOWN),
        ("", ", supply: unknown", State.UNKNOWN),
    ],
)
def test_the_supply_of_a_camera(pin: str, lead: str, expected: str) -> None:
    item = only(car(f"1: {{function: camera-feed, draws: 0.1 A{pin}}}"), f"function: camera-feed, limit: 1 A{lead}")
    assert expected == item.state or (item.state is State.NEVER and reasons(item) == [expected])


def test_an_interface_may_make_the_voltage() -> None:
    about = car("1: {function: camera-feed, supply: 6 V, draws: 0.1 A}")
    lead = "function: camera-feed, limit: 1 A"
    plugs = "provides: [camera-feed]\nplugs: {radio-main: {1: {function: camera-feed%s}}}"
    assert only(about, lead, interface(plugs % ", supply: 6 V")).state is State.JOINED
    assert reasons(only(about, lead, interface(plugs % ""))) == ["other-voltage"]


@pytest.mark.parametrize(
    ("draws", "limit", "expected"),
    [
        (("150 mA", "150 mA"), "300 mA", State.JOINED),
        (("100 mA", "200 mA"), "0.3 A", State.JOINED),
        (("150 mA", "151 mA"), "300 mA", State.NEVER),
        (("400 mA", "unknown"), "300 mA", State.NEVER),
        (("100 mA", "unknown"), "300 mA", State.UNKNOWN),
        (("100 mA", ""), "300 mA", State.UNKNOWN),
        (("100 mA", "10 mA"), "", State.UNKNOWN),
    ],
)
@pytest.mark.parametrize("function", ["antenna-feed", "amplifier-turn-on", "camera-feed"])
def test_what_hangs_on_an_output_is_added_up(
    function: str, draws: tuple[str, str], limit: str, expected: State
) -> None:
    pins = "\n".join(
        f"{pin}: {{function: {function}{f', draws: {amount}' if amount else ''}}}"
        for pin, amount in enumerate(draws, 1)
    )
    item = only(car(pins), f"function: {function}{f', limit: {limit}' if limit else ''}")
    assert item.state is expected
    assert reasons(item) == (["too-much-current"] if expected is State.NEVER else [])
    assert len(item.car) == 2


@pytest.mark.parametrize(
    ("limit", "state", "do"),
    [
        ("300 mA", State.JOINED, "join to its lead of Pellworth Knot, and to radio-main/2 by hand"),
        ("299 mA", State.NEVER, "do not join straight"),
    ],
)
@pytest.mark.parametrize("function", ["antenna-feed", "amplifier-turn-on", "camera-feed"])
def test_an_output_feeds_the_wire_that_the_harness_leaves_out(function: str, limit: str, state: State, do: str) -> None:
    pins = f"1: {{function: {function}, draws: 150 mA}}\n2: {{function: {function}, draws: 150 mA}}"
    joint = joined(car(pins), f"it: {{function: {function}, limit: {limit}}}", harness(f"1: {{function: {function}}}"))
    item = row(joint, "it")
    assert item.state is state
    assert say(item.do).startswith(do)
    assert [point.pin for point in item.car] == ["1", "2"]
    assert len(joint.rows) == 1


@pytest.mark.parametrize(
    ("pin", "contact", "lead", "words", "fuse"),
    [
        # 33 CFR 183.425, Table 5, 105 °C: 18 AWG (0.823 mm2) 20 A, 0.5 mm2 13.76 A and 0.35 mm2 10.53 A below it by the diameter to 1.5
        ("fuse: 15 A", "gauge: 0.5 mm2", "fuse: 10 A", "the fuse of the car at radio-main/1 is 15 A, and 0.5 mm² of Pellworth Knot carries 13.76 A", "10 A"),
        ("fuse: 15 A", "gauge: 1 mm2", "gauge: 0.35 mm2", "the fuse of the car at radio-main/1 is 15 A, and 0.35 mm² of the lead 'it' carries 10.53 A", "10 A"),
        ("gauge: 0.5 mm2", "colour: red", "fuse: 15 A", "the fuse of the lead 'it' is 15 A, and 0.5 mm² of the car at radio-main/1 carries 13.76 A", "10 A"),
        ("fuse: unknown, gauge: 0.5 mm2", "colour: red", "fuse: 15 A", "the fuse of the lead 'it' is 15 A, and 0.5 mm² of the car at radio-main/1 carries 13.76 A", "10 A"),
        ("fuse: 10 A, gauge: 0.5 mm2", "gauge: 0.5 mm2", "fuse: 15 A", "", ""),
        ("colour: red", "gauge: 0.5 mm2", "colour: red", "", ""),
    ],
)  # fmt: skip
def test_a_fuse_above_a_thin_wire_of_the_joint_is_said(
    pin: str, contact: str, lead: str, words: str, fuse: str
) -> None:
    about = car(f"1: {{function: battery-feed, {pin}}}")
    item = only(about, f"function: battery-feed, {lead}", harness(f"1: {{function: battery-feed, {contact}}}"))
    assert item.state is State.JOINED
    assert [said for said in map(say, item.words) if "fuse" in said] == ([words] if words else [])
    assert say(item.do).endswith(f", with a fuse of at most {fuse} at the joint") == bool(fuse)


def test_a_limit_counts_on_any_lead_that_has_one() -> None:
    about = car("1: {function: mute, behaves: closes-to-plus, draws: 60 mA}")
    lead = "function: mute, behaves: closes-to-plus, limit: %s"
    assert reasons(only(about, lead % "50 mA")) == ["too-much-current"]
    assert only(about, lead % "60 mA").state is State.JOINED
    assert only(about, lead % "unknown").state is State.UNKNOWN
