"""An amplifier in its place: turned as it fits, fed, loaded, heard and woken."""

# Long because one amplifier is asked everything: how it is turned, cooled, fed, loaded, heard and woken.

from itertools import permutations

import pytest

from amplified import amplifier, car, fitted, noted, place
from fitting import RECEIVER, SPEAKER, gear
from undertrim.derive.electrical.ampacity import Surroundings, ampacity
from undertrim.derive.electrical.conductors import size
from undertrim.derive.electrical.rest import rest
from undertrim.derive.fit.channel_load import load
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds.amplifier import budget, feed, loads, turning, waking
from undertrim.derive.fit.stock import only
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.words import say

BOX = (300, 90, 220)


def opening(sizes: tuple[float, ...]) -> AmplifierOpening:
    text = "{{width: {} mm, height: {} mm, depth: {} mm}}"
    found = car("{width: 300 mm, height: 90 mm, depth: 220 mm}", text.format(*sizes)).openings["bay"]
    assert isinstance(found, AmplifierOpening)
    return found


def sized(*sides: float) -> dict[str, str]:
    return {name: f"{side} mm" for name, side in zip(("width", "height", "depth"), sides, strict=True)}


@pytest.mark.parametrize("sides", list(permutations((290, 60, 210))))
def test_every_turned_position_is_tried(sides: tuple[int, int, int]) -> None:
    """A box goes into a box along its axes exactly where the sorted sides do: the other five positions are no better."""
    found = fitted(car(), amplifier(size=sized(*sides)))
    assert found.kind != "does-not-fit"
    turned = turning.pose(found)
    assert [sides[at] for at in turned.order] == [290, 60, 210]


@pytest.mark.parametrize("sides", list(permutations((305, 60, 210))))
def test_a_side_too_long_fits_in_no_position(sides: tuple[int, int, int]) -> None:
    assert fitted(car(), amplifier(size=sized(*sides))).kind == "does-not-fit"


def test_all_positions_agree_with_sorted_sides() -> None:
    """Against the rule for boxes with parallel sides: it goes in exactly where each sorted side does."""
    for sides in ((300, 90, 220), (299, 219, 89), (91, 91, 91), (219, 90, 300), (221, 221, 80), (90, 301, 20)):
        one = only(amplifier(size=sized(*sides)), AmplifierGear)
        goes = all(a <= b for a, b in zip(sorted(sides), sorted(BOX), strict=True))
        assert (turning.fit(one, opening(BOX), clearances()).kind != "does-not-fit") is goes


def test_lying_flat_comes_before_standing_and_standing_is_said() -> None:
    flat = fitted(
        car("height: 90 mm", "height: 300 mm"), amplifier(size=sized(280, 60, 210), cooling="5 mm")
    )  # standing it would have more room
    assert turning.pose(flat).flat
    standing = fitted(car("{width: 300 mm, height: 90 mm", "{width: 90 mm, height: 300 mm"), amplifier())
    assert not turning.pose(standing).flat
    assert "stands on its side" in noted(standing)


def test_the_way_in_takes_the_two_smaller_sides_ahead() -> None:
    narrow = car("way_in: {width: 400 mm, height: 200 mm}", "way_in: {width: 60 mm, height: 170 mm}")
    assert fitted(narrow, amplifier()).kind != "does-not-fit"
    tight = car("way_in: {width: 400 mm, height: 200 mm}", "way_in: {width: 40 mm, height: 170 mm}")
    found = fitted(tight, amplifier())
    assert (found.kind, found.checks[0].name) == ("does-not-fit", "way-in-narrow")


def test_a_way_in_that_is_not_recorded_is_never_a_yes() -> None:
    assert fitted(car("way_in: {width: 400 mm, height: 200 mm}", "mirrors: no"), amplifier()).kind == "unknown"
    assert fitted(car("way_in: {width: 400 mm, height: 200 mm}", "way_in: {width: unknown, height: 9 mm}"), amplifier()).kind == "unknown"  # fmt: skip


@pytest.mark.parametrize(("air", "kind"), [("open", "fits"), ("closed", "marginal"), ("unknown", "marginal")])
def test_air_is_a_caution_and_never_a_no(air: str, kind: str) -> None:
    assert fitted(car("air: open", f"air: {air}"), amplifier()).kind == kind


def test_room_that_the_maker_asks_for_comes_before_the_usual_and_is_a_caution() -> None:
    assert fitted(car(), amplifier(cooling="41 mm")).kind == "fits"
    hot = fitted(car(), amplifier(cooling="44 mm"))
    assert hot.kind == "marginal"
    assert "grow hot" in say(hot.headline)


def test_the_current_of_power_and_efficiency() -> None:
    """I = P / (efficiency x U): 400 W at 60 % and 13.8 V are 48.3 A, 400 W at 85 % are 34.1 A (worked from the definition of efficiency)."""
    assert feed.current(only(amplifier(), AmplifierGear).facts) == pytest.approx(48.3, abs=0.05)
    better = amplifier(rated={"power": "400 W", "efficiency": "85 %"})
    assert feed.current(only(better, AmplifierGear).facts) == pytest.approx(34.1, abs=0.05)
    said = amplifier(rated={"power": "400 W", "efficiency": "85 %", "current": "36 A"})
    assert feed.current(only(said, AmplifierGear).facts) == 36


def test_several_amplifiers_on_one_feed() -> None:
    """The main cable and fuse are for the sum, each branch has a fuse of its own: 48.3 A + 48.3 A.

    What each size carries is 33 CFR 183.425, Table 5 (80 °C column): 2 AWG 175 A, 8 AWG 70 A; a fuse is loaded to 80 % for long, so
    96.6 A want 125 A and 48.3 A want 70 A (data/electrical-fuses.toml has no rating between).
    """
    alone, both = fitted(car(), amplifier()), fitted(car(), amplifier(), shelf=amplifier(model="Sluice"))
    assert "48.31 A at full power" in noted(alone)
    assert "branch" not in noted(alone)
    assert "96.62 A at full power" in noted(both)
    assert [say(thing) for thing in both.bring][1] == "main fuse of 125 A with holder for 'Battery to boot'"
    branches = [say(thing) for thing in both.bring][2:]
    assert branches == [
        f"distribution branch of 8 AWG with a fuse of 70 A for Skerrowe {name}" for name in ("Sluice", "Weir")
    ]
    assert (
        ampacity(size("awg", "8"), Surroundings(80, "cabin")),
        ampacity(size("awg", "2"), Surroundings(80, "cabin")),
    ) == (70, 175)


def test_a_run_of_unknown_length_leaves_the_feed_open() -> None:
    found = fitted(car("length: 5 m", "length: unknown"), amplifier())
    assert found.kind == "unknown"
    assert any(check.name == "feed" for check in found.checks)


def test_what_cannot_be_reckoned_is_said_and_breaks_nothing() -> None:
    found = fitted(car(), amplifier(rated={"power": "400 W", "efficiency": "1 %"}))
    assert "cannot be right" in say(found.headline)


def test_a_fuse_far_from_the_battery_is_a_note() -> None:
    assert "common practice is within" in noted(fitted(car("from_battery: 0.3 m", "from_battery: 2 m"), amplifier()))
    assert "common practice is within" not in noted(fitted(car(), amplifier()))


def test_the_budget_says_what_it_assumes() -> None:
    """100 A x 50 % - 35 A = 15 A; 48.31 A x 33 % = 15.94 A is more; 60 Ah x 50 % / 15.94 A = 1.9 h (derived; the shares are practice)."""
    assert budget.spare(100) == 15
    said = noted(fitted(car(), amplifier()))
    assert "too little at idle" in said
    assert "33 % of full power" in said
    assert "the car to need 35 A" in said
    assert "about 1.9 h until 50 % of 60 Ah is gone" in said
    assert rest(60, 48.31 * 0.33).days * 24 == pytest.approx(1.9, abs=0.05)
    assert "enough" in noted(fitted(car("100 A", "110 A"), amplifier()))


@pytest.mark.parametrize(
    ("impedance", "alone", "bridged"),
    [("4 ohm", "fits", "may be"), ("2 ohm", "fits", "must not"), ("1.5 ohm", "fails", "must not")],
)
def test_loads_alone_and_bridged(impedance: str, alone: str, bridged: str) -> None:
    """An output bears 2 ohm, a bridged pair 4 ohm: each of the pair sees half."""
    about = car("impedance: 4 ohm", f"impedance: {impedance}")
    found = loads.loads(place(about), only(amplifier(), AmplifierGear).facts)
    assert [check.verdict for check in found.checks] == [alone]
    assert bridged in say(found.notes[0])


def test_speakers_of_one_channel_and_side_are_in_parallel() -> None:
    """4 ohm beside 4 ohm are 2 ohm; a second pair on the same outputs."""
    more = "rear-door: {kind: speaker, behind: [door-speaker], channel: front, each: [left, right], impedance: 4 ohm}\n    runs:"
    (check,) = loads.loads(place(car("runs:", f"  {more}")), only(amplifier(), AmplifierGear).facts).checks
    assert check.have == pytest.approx(2)


def with_tweeter(feed: str, impedance: str = "4 ohm") -> VehicleRecord:
    """The car with a factory tweeter on the channel of the door speakers."""
    tweeter = f"{{kind: tweeter, behind: [cover], channel: front, each: [left, right], factory: yes, feed: {feed}, impedance: {impedance}}}"
    return car("runs:", f"  sail: {tweeter}\n    runs:")


@pytest.mark.parametrize(
    ("feed", "impedance", "least", "verdict", "have"),
    [
        ("parallel", "4 ohm", "3 ohm", "fails", 2),
        ("crossover", "4 ohm", "3 ohm", "fits", 4),
        ("own-filter", "2 ohm", "3 ohm", "fails", 2),  # in its own range it is all there is
        ("unknown", "4 ohm", "3 ohm", "unknown", None),
        ("unknown", "4 ohm", "2 ohm", "fits", 2),  # however it is fed
        ("unknown", "2 ohm", "3 ohm", "fails", 4 / 3),  # however it is fed
    ],
)
def test_a_tweeter_loads_its_channel_as_it_is_fed(
    feed: str, impedance: str, least: str, verdict: str, have: float | None
) -> None:
    """What is fed direct is in parallel, 1/Z = 1/4 + 1/4; a capacitor or crossover keeps it to a range in which it is alone."""
    facts = only(amplifier(least_load=least), AmplifierGear).facts
    (check,) = loads.loads(place(with_tweeter(feed, impedance)), facts).checks
    assert check.verdict == verdict
    assert check.have is None if have is None else check.have == pytest.approx(have)


def test_a_speaker_whose_channel_nobody_knows_may_be_on_this_one() -> None:
    more = "rear-door: {kind: speaker, behind: [door-speaker], each: [left, right], impedance: 4 ohm}\n    runs:"
    (check,) = loads.loads(place(car("runs:", f"  {more}")), only(amplifier(), AmplifierGear).facts).checks
    assert check.verdict == "marginal"
    assert "find out the channel of" in say(check.words)


def test_an_unknown_impedance_is_never_a_yes() -> None:
    assert fitted(car("impedance: 4 ohm", "impedance: unknown"), amplifier()).kind == "unknown"


def test_an_amplifier_of_one_output_is_held_against_the_bass_alone() -> None:
    found = fitted(car(), amplifier(channels="1"))
    assert not [check for check in found.checks if check.name.startswith("load")]
    assert "no speaker for its output" in noted(found)


def test_the_input_is_held_against_what_is_there() -> None:
    assert fitted(car(), amplifier()).kind == "fits"
    line = fitted(car(), amplifier(inputs=["line"]))
    assert "a converter from speaker level" in say(line.headline)
    assert fitted(car("switched_on_by: wire\n        supply", "finds: line\n        switched_on_by: wire\n        supply"), amplifier(inputs=["line"])).kind == "fits"  # fmt: skip
    assert fitted(car("output: speaker", "output: unknown"), amplifier()).kind == "unknown"


LEADS = {
    "kind": "leads",
    "maker": "Skerrowe",
    "model": "Cord",
    "leads": {"wake": {"function": "amplifier-turn-on", "limit": "100 mA"}},
}


def test_the_turn_on_leads_of_all_amplifiers_are_summed() -> None:
    """60 mA hang on the 100 mA of the receiver; two of them are 120 mA, which want a relay."""
    receiver, cord = gear(RECEIVER, lead_set="skerrowe-cord"), gear(LEADS)
    one = fitted(car(), amplifier(), (cord,), dash=receiver)
    assert "60 mA together; the receiver's gives 100 mA" in noted(one)
    two = fitted(car(), amplifier(), (cord,), dash=receiver, shelf=amplifier(model="Sluice"))
    assert [say(item) for item in two.to_get] == ["a relay for the turn-on"]


def test_what_is_only_usual_asks_and_decides_nothing() -> None:
    two = fitted(car(), amplifier(turn_on_draws="100 mA"), shelf=amplifier(model="Sluice"))
    assert two.kind == "fits"
    assert "look up what the receiver's gives" in noted(two)
    assert waking.total([only(amplifier(turn_on_draws="unknown"), AmplifierGear).facts]) is None


def test_a_signal_wakes_only_what_senses_it() -> None:
    none = car("switched_on_by: wire\n        supply", "switched_on_by: none\n        supply")
    assert "wakes" not in say(fitted(none, amplifier(wakes_by=["signal"])).headline)
    assert fitted(none, amplifier(wakes_by=["signal"])).kind == "fits"
    assert "a turn-on lead, from the receiver or a switched feed" in say(fitted(none, amplifier()).headline)
    unknown = car("switched_on_by: wire\n        supply", "switched_on_by: unknown\n        supply")
    assert fitted(unknown, amplifier()).kind == "unknown"


def test_an_added_amplifier_is_what_the_speakers_load() -> None:
    """The radio allows 4 ohm, the amplifier 2 ohm: a speaker of 2 ohm is for the amplifier alone."""
    about, speaker = car(), only(gear(SPEAKER, impedance="2 ohm"), SpeakerGear).facts
    door = about.openings["front-door"]
    assert isinstance(door, SpeakerOpening)
    assert [check.verdict for check in load(about, door, {}, speaker.impedance, {}).checks] == ["fails"]
    assert [check.verdict for check in load(about, door, {}, speaker.impedance, {"bay": amplifier()}).checks] == [
        "fits"
    ]
    assert [
        check.verdict for check in load(about, door, {}, speaker.impedance, {"bay": amplifier(channels="1")}).checks
    ] == ["fails"]


def test_an_impedance_of_nothing_is_a_short_and_breaks_nothing() -> None:
    found = fitted(car("impedance: 4 ohm", "impedance: 0 ohm"), amplifier())
    assert found.kind == "does-not-fit"


CONVERTER = {"kind": "converter", "maker": "Skerrowe", "model": "Mill", "takes": "speaker", "gives": "line"}


@pytest.mark.parametrize(("makes", "lead"), [("yes", False), ("no", True), ("unknown", True)])
def test_a_converter_that_makes_a_turn_on_saves_the_lead(makes: str, lead: bool) -> None:
    dead = car("switched_on_by: wire\n        supply", "switched_on_by: none\n        supply")
    found = fitted(dead, amplifier(inputs=["line"]), (gear(CONVERTER, makes_turn_on=makes),))
    assert [part.name for part in found.parts] == ["Skerrowe Mill"]
    assert ("a turn-on lead" in say(found.headline)) is lead
    assert ("Skerrowe Mill makes the turn-on of the signal" in noted(found)) is not lead


def test_a_wire_that_is_there_comes_before_the_converters() -> None:
    found = fitted(car(), amplifier(inputs=["line"]), (gear(CONVERTER, makes_turn_on="yes"),))
    assert "makes the turn-on" not in noted(found)


def test_of_two_converters_the_one_that_makes_a_turn_on_comes_first() -> None:
    shelf = (gear(CONVERTER, makes_turn_on="no"), gear(CONVERTER, model="Weir", makes_turn_on="yes"))
    assert [part.name for part in fitted(car(), amplifier(inputs=["line"]), shelf).parts] == ["Skerrowe Weir"]
