"""Which amplifier drives which channels: the loads of speakers and amplifiers go by the same answer."""

from amplified import CAR, amplifier, car, fitted
from making import record
from undertrim.derive.fit.channel_load import drivers
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import VehicleRecord
from undertrim.words import Items, say


def amplified(about: VehicleRecord, channel: str, **visit: Gear) -> list[str]:
    """What drives a channel, in words."""
    return [say(Items((driver.what,), "comma")) for driver in drivers(about, {}, visit, channel)]


def test_an_amplifier_drives_what_its_place_powers_and_no_more() -> None:
    about = car(
        "        switched_on_by: wire\n        supply",
        "        switched_on_by: wire\n        powers: [rear]\n        supply",
    )
    four = amplifier()
    assert amplified(about, "rear", bay=four) == [four.name]
    assert amplified(about, "front", bay=four) == ["the factory radio"]
    assert amplified(about, "front", shelf=four) == [four.name]
    assert {check.name for check in fitted(about, four).checks if check.name.startswith("load-")} == set()


def test_one_output_drives_the_channel_that_its_place_names() -> None:
    about = car(
        "        switched_on_by: wire\n        supply",
        "        switched_on_by: wire\n        powers: [front]\n        supply",
    )
    one = amplifier(channels="1")
    assert amplified(about, "front", bay=one) == [one.name]
    assert amplified(about, "bass", bay=one) == ["the factory radio"]
    assert "load-front" in {check.name for check in fitted(about, one).checks}


def test_where_a_place_names_its_channels_each_of_them_must_suit() -> None:
    rear = "      rear: {kind: speaker, behind: [door-speaker], channel: rear, each: [left, right], impedance: 1 ohm}\n    runs:"
    both = CAR.replace("    runs:", rear, 1)
    free = next(check for check in fitted(record(both), amplifier()).checks if check.name == "load-rear")
    named = both.replace(
        "        switched_on_by: wire\n        supply",
        "        switched_on_by: wire\n        powers: [front, rear]\n        supply",
    )
    held = next(check for check in fitted(record(named), amplifier()).checks if check.name == "load-rear")
    assert (free.verdict, held.verdict) == ("marginal", "fails")


def test_a_factory_amplifier_of_the_bass_leaves_the_rest_to_the_radio() -> None:
    about = car(
        "{output: speaker, least_load: 4 ohm}",
        "{output: line, amplifier: Under the seat, powers: [bass], least_load: 2 ohm}",
    )
    assert amplified(about, "bass") == ["the factory amplifier"]
    assert amplified(about, "front") == ["the factory radio"]
    assert [driver.least for driver in drivers(about, {}, {}, "front")] == [None]
