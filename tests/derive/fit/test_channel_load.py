"""Loads of a channel and levels at equal voltage. Parallel loads by 1/Z = 1/a + 1/b, levels by 10 log10(Z old / Z new), worked by hand."""

import pytest

from fitting import CAR, PLAIN, RECEIVER, SPEAKER, gear
from making import record
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.words import say

AMPLIFIED = "sound: {amplified: {output: line, amplifier: Under the seat, turn_on: wire, least_load: 4 ohm}}\n"
RADIO = "sound: {only: {output: speaker, least_load: 4 ohm}}\n"
UNKNOWN = "sound: {only: {output: speaker, least_load: unknown}}\n"
SIZES = "hole: {shape: round, diameter: 78 mm}, depth: {clear: 44 mm, datum: skin, over: no-glass}"


def beside(name: str = "dash-top", channel: str = "front", impedance: str = "4 ohm", more: str = "") -> str:
    """One more speaker opening."""
    placed = f"channel: {channel}, " if channel else ""
    return f"  {name}: {{kind: speaker, behind: [radio], {placed}impedance: {impedance}, {SIZES}{more}}}\n"


def fit(others: str, sound: str, impedance: str = "4 ohm", visit: dict[str, Gear] | None = None, car: str = CAR) -> Fit:
    made = record(car.rstrip() + "\n" + others, sound)
    shelf = Stock((gear(SPEAKER, impedance=impedance),))
    vehicle = Vehicle(made, "brindleway/otter-2014-2018", shelf, clearances(), visit or {})
    return answer(vehicle, made.openings["front-door"], None, {})[0].fits[0]


def load(found: Fit) -> Check:
    return next(check for check in found.checks if check.name == "load")


@pytest.mark.parametrize("sound", [AMPLIFIED, RADIO])
def test_openings_of_one_channel_are_held_against_the_limit_with_or_without_an_amplifier(sound: str) -> None:
    """4 in parallel with 4 is 2 ohm, of which 4 are allowed at least."""
    found = fit(beside(), sound)
    assert (load(found).verdict, load(found).need, load(found).have, load(found).unit) == ("fails", 4, 2, "ohm")
    assert found.kind == "does-not-fit"
    assert "2 Ω, 4 Ω at least" in say(found.headline)
    assert fit("", sound).kind == "fits"
    assert fit("", sound, "2 ohm").kind == "does-not-fit"


def test_front_and_rear_and_left_and_right_are_channels_of_their_own() -> None:
    assert fit(beside(channel="rear"), RADIO).kind == "fits"
    assert fit(beside(more=", each: [left]"), RADIO, car=CAR.replace("channel: front", "channel: front\n    each: [right]")).kind == "fits"  # fmt: skip
    assert fit(beside(more=", each: [left]"), RADIO).kind == "does-not-fit"


def test_a_capacitor_keeps_a_tweeter_out_of_the_load() -> None:
    found = fit(beside(more=", fed_through: capacitor"), RADIO)
    assert load(found).have == 4
    assert any("fed through a capacitor" in note for note in map(say, found.notes))


def test_an_unknown_feed_is_reckoned_both_ways() -> None:
    """4 alone and 2 together: of 4 allowed only one, of 2 allowed both."""
    unfed = beside(more=", fed_through: unknown")
    found = fit(unfed, RADIO)
    assert found.kind == "unknown"
    assert "how Dash top is fed (unknown)" in say(found.headline)
    assert fit(unfed, PLAIN).kind == "fits"
    assert say(fit(beside(impedance="unknown"), RADIO).headline).endswith("impedance of Dash top (unknown)")


def test_an_unknown_limit_is_marginal_where_the_factory_made_as_much_and_else_cannot_be_told() -> None:
    for sound in (UNKNOWN, "sound: {only: {output: speaker}}\n", ""):
        same, lower = fit("", sound), fit("", sound, "2 ohm")
        assert (same.kind, lower.kind) == ("marginal", "unknown")
        assert "look the least load up" in say(same.headline)
        assert "least load of" in say(lower.headline)
    assert fit(beside(impedance="2 ohm"), UNKNOWN).kind == "marginal"  # 1.33 ohm before and after


def test_a_channel_that_nobody_recorded_is_marginal() -> None:
    found = fit("", RADIO, car=CAR.replace("    channel: front\n", ""))
    assert found.kind == "marginal"
    assert "find out the channel of Front door" in say(found.headline)
    assert fit(beside(channel=""), RADIO).kind == "marginal"


def test_a_new_receiver_drives_what_no_factory_amplifier_does() -> None:
    """The receiver allows 2 ohm where the factory radio allows 4, and the other way round; a factory amplifier stays."""
    strong, weak = (gear(RECEIVER, model=least, least_load=least) for least in ("2 ohm", "4 ohm"))
    assert fit("", RADIO, "2 ohm", {"dash": strong}).kind == "fits"
    assert load(fit("", PLAIN, "2 ohm", {"dash": weak})).verdict == "fails"
    assert fit("", AMPLIFIED, "2 ohm", {"dash": strong}).kind == "does-not-fit"
    assert fit("", RADIO, "2 ohm", {"dash": gear(RECEIVER, model="Silent")}).kind == "unknown"


def test_what_is_fitted_beside_counts_in_place_of_the_factory_speaker() -> None:
    """4 with 8 is 2.67 ohm: below 4, above 2; with the factory's 4 it is 2."""
    eight = {"dash-top": gear(SPEAKER, model="Eight", impedance="8 ohm")}
    assert load(fit(beside(), PLAIN, visit=eight)).have == pytest.approx(8 / 3)


# 10 log10(4/2) = 3.01 and 10 log10(4/3) = 1.25 dB; 2 dB are plainly heard (common practice)
@pytest.mark.parametrize(
    ("new", "said", "heard"), [("2 ohm", "+3.0 dB", True), ("3 ohm", "+1.2 dB", False), ("8 ohm", "−3.0 dB", True)]
)
def test_levels_are_said_and_marked_beyond_two_decibels(new: str, said: str, heard: bool) -> None:
    notes = [*map(say, fit(beside("rear-door", "rear"), PLAIN, new).notes)]
    alone = next(note for note in notes if "in place of 4 Ω" in note)
    against = next(note for note in notes if note.startswith(f"{said} dB"[: len(said)]))
    assert said in alone
    assert "against Rear door (4 Ω)" in against
    assert ["plainly heard" in note for note in (alone, against)] == [heard, heard]


def test_the_level_against_new_speakers_of_the_other_channel() -> None:
    new = {"rear-door": gear(SPEAKER, model="Rear", impedance="2 ohm")}
    notes = [*map(say, fit(beside("rear-door", "rear"), PLAIN, visit=new).notes)]
    assert any(note.startswith("−3.0 dB against Skerrowe Rear (2 Ω)") for note in notes)
