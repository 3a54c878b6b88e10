"""Which functions readings agree with, and that they say no more than they know."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from readings_taken import one, readings, taken
from undertrim.derive.wiring.asking import next_reading
from undertrim.derive.wiring.functions import expected, functions
from undertrim.derive.wiring.meter import Candidate, judge, weigh
from undertrim.derive.wiring.readings import Reading, read


def agreeing(*texts: str) -> list[str]:
    return [one.function.id for one in weigh(taken(*texts)) if one.standing == "agrees"]


def verdicts(found: Candidate) -> list[str]:
    return [finding.verdict for finding in found.findings]


def test_a_constant_feed() -> None:
    found = agreeing("12.6 V key off", "12.4 V key on", "14.3 V running", "12.5 V accessory")
    assert found[0] == "battery-feed"
    assert "switched-feed" not in found
    assert "illumination" not in found


@pytest.mark.parametrize(
    ("accessory", "pattern"), [("12.4 V accessory", "accessory-feed"), ("0 V accessory", "ignition-feed")]
)
def test_a_switched_feed_and_which_sort(accessory: str, pattern: str) -> None:
    """DIN 72552: terminal 75 is live in accessory, terminal 15 with the ignition alone (75 from memory)."""
    found = one("switched-feed", "0 V key off", "12.4 V key on", accessory)
    assert found.standing == "agrees"
    assert found.pattern is not None
    assert found.pattern.id == pattern


def test_feeds_that_changed_places_are_seen() -> None:
    """ISO 10487 positions A4 (permanent) and A7 (switched) are exchanged in a number of vehicles (secondary texts)."""
    assert one("switched-feed", "12.6 V key off", "12.4 V key on").standing == "disagrees"
    assert one("battery-feed", "12.6 V key off", "12.4 V key on").standing == "agrees"
    assert one("battery-feed", "0 V key off", "12.4 V key on").standing == "disagrees"


def test_no_switched_wire_behind_the_radio() -> None:
    """A pin that stays live with the key off is no switched feed, however it behaves with the key on."""
    assert "switched-feed" not in agreeing("12.6 V key off", "12.6 V accessory", "12.6 V key on")


def test_lines_to_a_factory_amplifier_are_no_speaker_wires() -> None:
    """A 4 ohm speaker reads 3.2 to 3.6 ohm (common practice); an amplifier's input reads kilo-ohms."""
    speaker = one("front-left-plus", "0 V key off", "3.4 ohm across the pair")
    line = one("front-left-plus", "0 V key off", "12 kohm across the pair")
    assert (speaker.pattern and speaker.pattern.id, line.pattern and line.pattern.id) == ("speaker", "line")
    assert speaker.standing == line.standing == "agrees"
    assert one("front-left-plus", "0 V key off", "40 ohm across the pair").standing == "disagrees"


def test_a_parking_brake_switch_closes_to_ground() -> None:
    assert one("parking-brake", "0 V key off", "0 V brake on", "12.2 V brake off").standing == "agrees"
    assert one("parking-brake", "0 V key off", "0.4 ohm brake on", "open brake off").standing == "agrees"
    assert one("parking-brake", "12.2 V brake on").standing == "disagrees"


@pytest.mark.parametrize(
    ("function", "texts"),
    [
        ("ground", ("0 V key off", "0.2 ohm")),
        ("illumination", ("0 V key off", "0 V key on", "12.3 V lamps on", "5.1 V lamps dimmed")),
        ("illumination-return", ("0 V key off", "0 V lamps on", "6.2 V lamps dimmed")),
        ("reverse", ("0 V key on", "12.3 V reverse")),
        ("antenna-feed", ("0 V key on", "11.9 V radio on")),
        ("wheel-buttons", ("0 V key off", "4.9 V key on")),
        ("data-high", ("2.7 V key on", "60 ohm across the pair")),
        ("data-low", ("2.3 V key on", "60 ohm across the pair")),
        ("spare", ("0 V key off", "0 V key on", "open")),
        ("rear-right-minus", ("0 V key off", "6.9 V radio on", "2.1 V AC radio on")),
        ("microphone-plus", ("0 V key off", "5.0 V radio on")),
        ("camera-feed", ("0 V key on", "0 V key off")),
    ],
)
def test_usual_readings_agree(function: str, texts: tuple[str, ...]) -> None:
    assert function in agreeing(*texts)


def test_what_a_record_says_of_the_behaviour_narrows_it() -> None:
    texts = ("12.3 V lamps on", "5.1 V lamps dimmed")
    assert one("illumination", *texts).standing == "agrees"
    assert one("illumination", *texts, behaves="on-off").standing == "disagrees"
    assert one("illumination", *texts, behaves="dimmed-plus").standing == "agrees"
    message = one("illumination", *texts, behaves="message")
    assert (message.standing, message.pattern, verdicts(message)) == ("open", None, ["nothing", "nothing"])


def test_a_supply_of_its_own() -> None:
    assert one("antenna-feed", "8.1 V radio on").standing == "disagrees"
    assert one("antenna-feed", "8.1 V radio on", supply=8.0).standing == "agrees"
    assert one("antenna-feed", "12.4 V radio on", supply=8.0).standing == "disagrees"


def test_ohms_count_on_a_dead_wire_alone() -> None:
    powered = one("ground", "0.3 ohm key on")
    assert [(found.verdict, found.why) for found in powered.findings] == [("nothing", "power")]
    live = one("spare", "4 V key off", "0.3 ohm")
    assert [(found.verdict, found.why) for found in live.findings] == [("disagrees", ""), ("nothing", "live")]
    assert verdicts(one("spare", "0 V key off", "0.3 ohm")) == ["agrees", "disagrees"]


def test_ohms_say_nothing_of_a_wire_that_is_live_asleep() -> None:
    live = one("spare", "12.6 V asleep", "0.3 ohm")
    assert [found.why for found in live.findings] == ["", "live"]
    asked = next_reading(taken("0 V key off", "12.6 V asleep"), functions().functions["spare"])
    assert asked is None or not functions().kinds[asked.kind].dead


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("11.3 V key off", "disagrees"),  # up to 11.35
        ("11.4 V key off", "agrees"),
        ("11 V key off", "agrees"),  # 10.5 to 11.5 reaches in
        ("13.24 V key off", "disagrees"),  # from 13.235
        ("13.2 V key off", "agrees"),
        ("13 V key off", "agrees"),
        ("14 V key off", "disagrees"),  # from 13.5
    ],
)
def test_a_reading_is_as_coarse_as_it_was_typed(text: str, verdict: str) -> None:
    """Half of the last digit, by hand, against 11.4 to 13.2 V."""
    assert judge(functions().patterns["constant-feed"], read(text)).verdict == verdict


def test_the_upper_end_reaches_in_as_well() -> None:
    """5.5 to 6.5 V reaches into what buttons are fed with, up to 5.6 V; 6.5 to 7.5 V does not."""
    assert one("wheel-buttons", "6 V key on").standing == "agrees"
    assert one("wheel-buttons", "7 V key on").standing == "disagrees"


@given(readings(), st.randoms())
def test_the_order_of_readings_changes_no_standing(found: list[Reading], chance: object) -> None:
    shuffled = list(found)
    chance.shuffle(shuffled)  # type: ignore[attr-defined]
    before = {one.function.id: one.standing for one in weigh(found)}
    assert before == {one.function.id: one.standing for one in weigh(shuffled)}


@settings(max_examples=50)
@given(st.sampled_from(list(functions().patterns)), st.randoms())
def test_readings_made_from_a_pattern_agree_with_its_functions(pattern: str, chance: object) -> None:
    """Whatever is read in the middle of its bands: no function that has the pattern is ruled out."""
    made = []
    for kind, state in product(functions().kinds, functions().states):
        band = expected(functions().patterns[pattern], kind, state)
        if band and chance.random() < 0.5:  # type: ignore[attr-defined]
            middle = band.low * 2 if band.high == float("inf") else (band.low + band.high) / 2
            made.append(Reading("r", kind, state, middle, 0.0))
    needed = functions().patterns[pattern].needs
    if needed and all(reading.state != needed for reading in made):
        return  # unproved: it speaks for no function
    for found in weigh(made):
        if pattern in found.function.patterns:
            assert found.standing != "disagrees"


def test_the_best_come_first() -> None:
    order = ("agrees", "open", "disagrees")
    found = weigh(taken("0 V key off", "12.4 V key on"))
    ranks = [(order.index(one.standing), one.disagreeing, -one.agreeing) for one in found]
    assert ranks == sorted(ranks)
    assert found[0].function.id == "switched-feed"
    assert {one.function.id for one in found} == functions().functions.keys()
