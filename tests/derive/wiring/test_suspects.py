"""What readings can be besides the functions of a radio. What is dangerous comes first, and nothing more is asked for then."""

import pytest

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.meter import Candidate, consider
from undertrim.derive.wiring.readings import read
from undertrim.derive.wiring.suspects import stops, suspects, suspicions
from undertrim.words import say


def named(*texts: str, function: str = "", behaves: str = "", supply: float | None = None) -> list[str]:
    readings = [read(text) for text in texts]
    recorded: Candidate | None = None
    if function:
        recorded = consider(functions().functions[function], readings, behaves, supply)
    return [one.suspect.id for one in suspicions(readings, recorded)]


@pytest.mark.parametrize("ohms", ["1.5", "1.8", "2", "2.0", "2.4", "3", "3.4", "0", "0.2", "5.9"])
def test_an_unknown_pair_of_about_2_ohm_is_an_igniter_before_all(ohms: str) -> None:
    """Igniters read about 2 ohm, and the bar that shorts their plug reads nothing: common practice, no source."""
    found = suspicions([read(f"{ohms} ohm across the pair")])
    assert found[0].suspect.id == "igniter"
    assert stops(found)
    assert say(found[0].suspect.do).startswith("Do not measure further, do not join.")


def test_a_speaker_that_is_recorded_is_none() -> None:
    assert named("2.0 ohm across the pair", function="front-left-plus") == []
    assert named("3.4 ohm across the pair", function="rear-right-minus") == []


@pytest.mark.parametrize("function", ["mute", "battery-feed", "microphone-plus", "spare"])
def test_a_recorded_wire_that_does_not_read_so_is_as_good_as_unknown(function: str) -> None:
    assert named("2.0 ohm across the pair", function=function)[0] == "igniter"


@pytest.mark.parametrize("ohms", ["8", "60", "330", "12 k"])
def test_what_is_above_an_igniter_does_not_stop(ohms: str) -> None:
    assert not stops(suspicions([read(f"{ohms.replace(' ', '')}{'' if 'k' in ohms else ' ohm'} across the pair")]))


@pytest.mark.parametrize("text", ["24.6 V key off", "48 V key on", "31 V AC radio on"])
def test_more_than_a_12_v_car_gives_stops(text: str) -> None:
    """Hazardous above 30 V AC or 60 V DC (secondary texts of ISO 6469-3); 24 V and 48 V nets are no radio's."""
    assert named(text)[0] == "high-voltage"
    assert stops(suspicions([read(text)]))


def test_a_recorded_supply_of_24_v_is_no_surprise() -> None:
    assert named("24.6 V key off", function="battery-feed", supply=24.0) == []


def test_charging_does_not_stop() -> None:
    assert "high-voltage" not in named("14.8 V running")


@pytest.mark.parametrize(("ohms", "found"), [("60", True), ("120", True), ("80", False)])
def test_a_pair_with_terminations_is_data(ohms: str, found: bool) -> None:
    """ISO 11898-2: 120 ohm at each end, 60 together (from memory)."""
    assert ("data" in named(f"{ohms} ohm across the pair")) == found


def test_a_dead_feed_may_have_its_fuse_out() -> None:
    assert "fuse" in named("0 V key off", "0 V key on", function="battery-feed")
    assert "fuse" in named("0 V key off", "0 V key on", function="switched-feed")
    assert "fuse" in named("0 V lamps on", function="illumination")
    assert "fuse" not in named("0 V key off", "12.4 V key on", function="battery-feed")  # a switched one
    assert "fuse" not in named("0 V key off", function="switched-feed")  # as it should be
    assert "fuse" not in named("0 V key on", function="ground")
    assert "dead-feed" in named("0 V key on")
    assert "dead-feed" not in named("0 V key off")
    assert "dead-feed" not in named("0 V key on", "12 V lamps on")


def test_a_feed_that_goes_off_late() -> None:
    assert "late" in named("12.6 V key off", "12.4 V key on", function="switched-feed")
    assert "late" not in named("0 V key off", "12.4 V key on", function="switched-feed")
    assert named("12.6 V key off", "0 V asleep", "12.4 V key on", function="switched-feed") == []
    assert "cut-asleep" in named("12.6 V key off", "0 V asleep", function="battery-feed")
    assert "fuse" not in named("12.6 V key off", "0 V asleep", function="battery-feed")


def test_a_feed_kept_on_passes_for_a_switched_one_only_once_it_was_seen_asleep() -> None:
    """Else feeds that changed places would pass."""
    switched = functions().functions["switched-feed"]

    def standing(*texts: str) -> str:
        return consider(switched, [read(text) for text in texts]).standing

    assert standing("12.6 V key off", "12.4 V key on") == "disagrees"
    assert standing("12.6 V key off", "12.4 V key on", "0 V asleep") == "agrees"
    assert standing("12.6 V key off", "12.4 V key on", "12.6 V asleep") == "disagrees"
    assert standing("0 V key off", "12.4 V key on", "0 V asleep") == "agrees"


@pytest.mark.parametrize("text", ["4 V running", "0.8 V key on", "-0.9 V key on", "38 ohm", "open"])
def test_a_bad_ground(text: str) -> None:
    assert "bad-ground" in named(text, function="ground")


def test_a_good_ground_is_not_called_bad() -> None:
    assert named("0 V key on", "0.2 ohm", function="ground") == []
    assert "bad-ground" not in named("6 V key on", function="front-left-plus")


def test_a_weak_feed_and_a_black_lead_that_is_not_on_ground() -> None:
    assert "weak-feed" in named("8 V key off", function="battery-feed")
    assert "swapped-leads" in named("-12.4 V key off")
    assert "bad-reference" in named("12.6 V key off", "0 V key on", "7 V running")
    assert "bad-reference" not in named("4.9 V key on", function="wheel-buttons")


@pytest.mark.parametrize("text", ["0.4 ohm", "8 ohm"])
def test_a_lamp_reads_like_a_ground(text: str) -> None:
    assert "cold-lamp" in named(text)
    assert "cold-lamp" not in named("0.4 ohm", function="ground")


def test_what_stops_stands_first_in_the_table() -> None:
    stopping = [one.stop for one in suspects()]
    assert stopping == sorted(stopping, reverse=True)


def test_nobody_is_told_to_use_a_lamp_or_to_defeat_anything() -> None:
    for one in suspects():
        assert "test lamp" not in say(one.do)
        assert say(one.do).endswith(".")
