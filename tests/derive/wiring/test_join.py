"""The joint by kinds: what each row becomes, told on small cars; many are cases as they happen in the bay."""

from dataclasses import replace

import pytest

from joining import SPEAKERS, car, gear, harness, interface, joined, only, reasons, row
from undertrim.derive.wiring.row import State
from undertrim.record.model import Ladder, When
from undertrim.record.units import parse
from undertrim.words import say

DATA = interface("provides: [switched-feed, illumination, parking-brake]")


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


PAIR = """
5: {function: front-left-plus, colour: white}
12: {function: amplifier-turn-on, colour: blue/white, draws: 20 mA, when: {sound: amplified}}
"""
AMPLIFIED = """
variants:
  sound: {ask: "Amplifier?", choices: {plain: {label: None, tell: No badge}, amplified: {label: One, tell: A badge}}}
sound:
  plain: {output: speaker, when: {sound: plain}}
  amplified: {output: line, when: {sound: amplified}, amplifier: Behind the seat, turn_on: wire}
"""
SPEAKER_LEAD = "speaker: {function: front-left-plus, colour: white}\n"
LINE_LEAD = "line: {function: front-left-plus, colour: white, level: line}\n"
TURN_ON = "turn-on: {function: amplifier-turn-on, colour: blue/white, limit: 200 mA}\n"


def test_speaker_level_never_goes_into_a_factory_amplifier() -> None:
    """The upper trim sends line level to an amplifier: speaker level is refused, line level and turn-on are joined."""
    about = car(PAIR, AMPLIFIED)
    refused = joined(about, SPEAKER_LEAD, sound="amplified")
    assert row(refused, "speaker").state is State.NEVER
    assert reasons(row(refused, "speaker")) == ["speaker-to-line"]
    assert row(refused, "radio-main/12").state is State.PIN_ALONE
    both = joined(about, SPEAKER_LEAD + LINE_LEAD + TURN_ON, sound="amplified")
    assert [(item.lead.id, item.state) for item in both.rows if item.lead] == [
        ("speaker", State.LEAD_ALONE),
        ("turn-on", State.JOINED),
        ("line", State.JOINED),
    ]
    assert tuple(map(say, both.notes)) == ("factory amplifier (Behind the seat): it is switched on by its own wire",)


def test_line_level_never_drives_a_speaker() -> None:
    about = car(PAIR, AMPLIFIED)
    assert reasons(row(joined(about, LINE_LEAD, sound="plain"), "line")) == ["line-to-speaker"]
    both = joined(about, SPEAKER_LEAD + LINE_LEAD, sound="plain")
    assert row(both, "speaker").state is State.JOINED
    assert row(both, "line").state is State.LEAD_ALONE


def test_a_converter_makes_the_level_right() -> None:
    about = car(PAIR, AMPLIFIED)
    converter = gear("converter", "takes: speaker\ngives: line", "Sluice")
    through = row(joined(about, SPEAKER_LEAD, converter, sound="amplified"), "speaker")
    assert through.state is State.JOINED
    assert "Pellworth Sluice turns its level into line level" in map(say, through.words)
    other_way = gear("converter", "takes: line\ngives: speaker", "Sluice")
    assert row(joined(about, SPEAKER_LEAD, other_way, sound="amplified"), "speaker").state is State.NEVER


@pytest.mark.parametrize(
    "sound", ["", "sound: {a: {output: unknown}}\n", "sound: {a: {output: line}, b: {output: speaker}}\n"]
)
def test_a_sound_level_that_is_not_known_is_metered(sound: str) -> None:
    item = only(car("5: {function: front-left-plus}", sound), "function: front-left-plus")
    assert (item.state, say(item.do)) == (State.UNKNOWN, "unknown: meter it first")
    assert "look for a factory amplifier" in say(item.words[0])


def test_a_digital_ring_needs_an_interface() -> None:
    about = car("5: {function: front-left-plus}", "sound: {a: {output: digital-ring}}\n")
    assert only(about, "function: front-left-plus").state is State.INTERFACE
    ring = interface("provides: [chime]\ngives: digital-ring")
    assert only(about, "function: front-left-plus", ring).state is State.JOINED


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


def test_one_lead_of_each_level_is_asked_about_while_the_level_is_unknown() -> None:
    wanted = SPEAKER_LEAD + LINE_LEAD + "more: {function: front-left-plus, level: line}\n"
    joint = joined(car("5: {colour: white, function: front-left-plus}"), wanted)
    assert {name: row(joint, name).state for name in ("speaker", "line", "more")} == {
        "speaker": State.UNKNOWN,
        "line": State.UNKNOWN,
        "more": State.LEAD_ALONE,
    }


def test_a_converter_is_named_only_where_it_is_needed_and_can_be_fed() -> None:
    about = car(PAIR, AMPLIFIED)
    converter = gear("converter", "takes: speaker\ngives: line", "Sluice")
    to_any = interface("provides: [chime]\ngives: line")
    for between in (converter, to_any):
        assert row(joined(about, LINE_LEAD, between, sound="amplified"), "line").words == ()
    ring = gear("converter", "takes: digital-ring\ngives: line", "Sluice")
    assert row(joined(about, SPEAKER_LEAD, ring, sound="amplified"), "speaker").state is State.NEVER


def test_data_at_both_ends_goes_through_the_interface() -> None:
    about, lead = car("6: {function: wheel-buttons, behaves: message}"), "function: wheel-buttons, behaves: message"
    through = only(about, lead, interface("provides: [wheel-buttons]"))
    assert (through.state, through.through) == (State.JOINED, "Pellworth Weir")


def test_level_counts_behind_an_interface_too() -> None:
    about = car("", AMPLIFIED, "functions: {front-left-plus: {by: data}}\n")
    box = interface("provides: [front-left-plus]")
    assert reasons(row(joined(about, SPEAKER_LEAD, box, sound="amplified"), "speaker")) == ["speaker-to-line"]
    assert row(joined(about, LINE_LEAD, box, sound="amplified"), "line").state is State.JOINED


def test_colours_of_what_is_not_joined_are_not_compared() -> None:
    about = car("1: {function: ground}", "functions: {speed: {by: absent}}\n")
    item = only(about, "function: speed, colour: red", harness("2: {function: speed, colour: pink}"))
    assert (item.state, item.words) == (State.LEAD_ALONE, ())


def test_a_second_pin_that_the_adapter_leaves_out() -> None:
    joint = joined(
        car("1: {function: ground}\n2: {function: ground}"), "it: {function: ground}", harness("1: {function: ground}")
    )
    assert [point.pin for point in row(joint, "it").car] == ["1"]
    assert tuple(map(say, row(joint, "radio-main/2").words)) == ("the lead 'it' has this function but is not led here",)
