"""Contacts of harnesses and adapters against those of the car: what meets what, what is missing, what is taken twice."""

import pytest

from joining import AMPLIFIED, SPEAKERS, car, gear, harness, interface, joined, only, reasons, row
from undertrim.derive.wiring.row import State
from undertrim.words import say

MAP = {1: "battery-feed", 4: "switched-feed", 8: "ground", 12: "speed"}


def test_an_adapter_for_another_map_of_the_plug() -> None:
    """Adapter contacts 1, 4, 7, 12 against a car with 1, 4, 8, 12: extra 7, missing 8."""
    behaves = {"speed": ", behaves: pulses"}
    about = car("\n".join(f"{pin}: {{function: {name}{behaves.get(name, '')}}}" for pin, name in MAP.items()))
    adapter = harness("\n".join(f"{7 if pin == 8 else pin}: {{function: {name}}}" for pin, name in MAP.items()))
    joint = joined(about, "\n".join(f"{name}: {{function: {name}}}" for name in MAP.values()), adapter)
    assert [extra.contact.address for extra in joint.contacts.extra] == ["radio-main/7"]
    assert [point.address for point in joint.contacts.missing] == ["radio-main/8"]
    assert joint.contacts.differing == ()
    ground = row(joint, "ground")
    assert ground.state is State.LEAD_ALONE
    assert "leads it to radio-main/7, where this car has nothing; the car has it on radio-main/8" in say(
        ground.words[0]
    )
    assert {item.state for item in joint.rows if item is not ground} == {State.JOINED}


@pytest.mark.parametrize(
    ("blanks", "pins", "words"),
    [
        ("", "1: {function: ground}", "nothing is recorded of this position: look before it is joined"),
        ('blanks: ["7"]', "1: {function: ground}", "the position was looked at and is empty"),
        ("", "7: {function: spare}", "a spare wire there"),
        ("", "7: {function: speed, when: {sound: amplified}}", "only other kinds of this car have a wire there"),
    ],
)
def test_what_an_extra_contact_meets(blanks: str, pins: str, words: str) -> None:
    plug = f"connectors:\n  radio-main:\n    name: Plug\n    view: wires\n    rows: 2\n    columns: 8\n    {blanks}\n    pins:\n      {pins}\n"
    joint = joined(car("", AMPLIFIED, plug), "it: {function: speed}", harness("7: {function: speed}"), sound="plain")
    assert words in say(joint.contacts.extra[0].words)


def test_an_adapter_for_a_plug_that_the_car_lacks() -> None:
    adapter = gear("harness", "suits:\n  - {vehicle: a/b, opening: dash}\nplugs:\n  other: {1: {function: ground}}")
    joint = joined(car("1: {function: ground}"), "it: {function: ground}", adapter)
    assert say(joint.contacts.extra[0].words) == "this car has no such plug"


TWO_MAPS = """
variants:
  built: {ask: "When?", choices: {early: {label: Early, tell: The plate}, late: {label: Late, tell: The plate}}}
connectors:
  early: {name: Plug, at: factory-radio/radio-main, when: {built: early}, view: wires, rows: 2, columns: 4, pins: {4: {function: battery-feed}, 7: {function: switched-feed}}}
  late: {name: Plug, at: factory-radio/radio-main, when: {built: late}, view: wires, rows: 2, columns: 4, pins: {7: {function: battery-feed}, 4: {function: switched-feed}}}
"""


def test_what_is_made_for_one_map_goes_into_the_other_as_well() -> None:
    """Plug and shape stayed and the map moved: the early harness in a late car exchanges permanent and switched feed."""
    early = "{4: {function: battery-feed}, 7: {function: switched-feed}}"
    body = f"suits:\n  - {{vehicle: a/b, opening: dash}}\nplugs:\n  early: {early}\n"
    about, wanted = car("", TWO_MAPS), "battery: {function: battery-feed}\nswitched: {function: switched-feed}"
    assert [item.state for item in joined(about, wanted, gear("harness", body), built="early").rows] == [
        State.JOINED
    ] * 2
    wrong = joined(about, wanted, gear("harness", body), built="late")
    assert reasons(row(wrong, "battery")) == ["permanent-to-switched"]
    assert reasons(row(wrong, "switched")) == ["switched-to-permanent"]
    assert "another map of the plug" in say(wrong.notes[0])
    both = f"{body}  late: {{7: {{function: battery-feed}}, 4: {{function: switched-feed}}}}\n"
    assert [item.state for item in joined(about, wanted, gear("harness", both), built="late").rows] == [
        State.JOINED
    ] * 2


def test_outputs_speakers_and_feeds_on_the_wrong_contact() -> None:
    """What an adapter would lead wrong, each with its own reason."""
    pairs = {
        ("antenna-feed", "ground"): "output-to-ground",
        ("amplifier-turn-on", "battery-feed"): "output-to-supply",
        ("antenna-feed", "switched-feed"): "output-to-supply",
        ("front-left-minus", "ground"): "speaker-minus-to-ground",
        ("ground", "rear-right-minus"): "speaker-minus-to-ground",
        ("switched-feed", "battery-feed"): "switched-to-permanent",
        ("battery-feed", "switched-feed"): "permanent-to-switched",
        ("front-left-plus", "rear-left-plus"): "other-function",
    }
    for (lead, pin), reason in pairs.items():
        item = only(car(f"3: {{function: {pin}}}", SPEAKERS), f"function: {lead}", harness(f"3: {{function: {lead}}}"))
        assert (item.state, reasons(item)) == (State.NEVER, [reason]), (lead, pin)


def test_two_pieces_of_gear_in_one_contact_are_said() -> None:
    plug = "provides: [ground]\nplugs: {radio-main: {1: {function: ground}}}"
    joint = joined(
        car("1: {function: ground}"), "it: {function: ground}", harness("1: {function: ground}"), interface(plug)
    )
    assert tuple(map(say, joint.notes)) == (
        "Pellworth Knot and Pellworth Weir take the same contacts (radio-main/1): only one of them can go in there",
    )


def test_a_spare_contact_of_an_adapter_is_none() -> None:
    joint = joined(
        car("1: {function: ground}"), "it: {function: ground}", harness("1: {function: spare}\n2: {function: spare}")
    )
    assert (joint.contacts.extra, joint.contacts.differing) == ((), ())
    assert row(joint, "it").state is State.JOINED


def test_by_hand_no_contact_is_missing() -> None:
    joint = joined(car("1: {function: ground}\n2: {function: chime}"), "it: {function: ground}")
    assert joint.contacts.missing == ()
    by_harness = joined(
        car("1: {function: ground}\n2: {function: chime}"), "it: {function: ground}", harness("1: {function: ground}")
    )
    assert [point.address for point in by_harness.contacts.missing] == ["radio-main/2"]


def test_a_second_pin_that_the_adapter_leaves_out() -> None:
    joint = joined(
        car("1: {function: ground}\n2: {function: ground}"), "it: {function: ground}", harness("1: {function: ground}")
    )
    assert [point.pin for point in row(joint, "it").car] == ["1"]
    assert tuple(map(say, row(joint, "radio-main/2").words)) == ("the lead 'it' has this function but is not led here",)
