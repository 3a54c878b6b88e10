"""Whether a tweeter goes in and what keeps low tones away from it; every margin is worked by hand beside it."""

import pytest

from fitting import CAR, RECEIVER, SPEAKER, all_said, gear, named
from making import record
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.words import say

SOUND = "sound: {plain: {output: speaker, least_load: 4 ohm}}\n"
FLUSH = "mount: flush, cut_out: 44 mm, depth: {clear: 20 mm, datum: panel, over: no-glass, obstruction: metal}"
OPEN = {
    "place": FLUSH,
    "front": "room_in_front: 6 mm",
    "feed": "feed: parallel, channel: front",
    "area": "area: pillar",
}
TWEETER = {
    "kind": "tweeter",
    "maker": "Skerrowe",
    "model": "Spray",
    "mounts": [{"mount": "flush", "diameter": "43 mm", "depth": "15 mm", "over": "3 mm", "rim": "50 mm"}],
    "impedance": "4 ohm",
    "high_pass": {"frequency": "3000 Hz", "filter_order": "first", "power": "60 W"},
}
CROSSOVER = {
    "kind": "crossover",
    "maker": "Sandmartin",
    "model": "Parting",
    "box": {"width": "60 mm", "height": "100 mm", "depth": "28 mm"},
    "impedance": "4 ohm",
    "frequency": "3500 Hz",
    "filter_order": "second",
}
PLACE = "crossover_place: {at: Behind the panel, width: 110 mm, height: 70 mm, depth: 30 mm}"


def fit(tweeter: Gear, *others: Gear, more: str = "", visit: dict[str, Gear] | None = None, **changed: str) -> Fit:
    fields = ", ".join(text for text in (*{**OPEN, **changed}.values(), more) if text)
    made = record(f"{CAR.rstrip()}\n  sail: {{kind: tweeter, behind: [radio], {fields}}}\n", SOUND)
    vehicle = Vehicle(made, "brindleway/otter-2014-2018", Stock((tweeter, *others)), clearances(), visit or {})
    return answer(vehicle, made.openings["sail"], None, {})[0].fits[0]


def found(fit: Fit, name: str) -> Check:
    return next(check for check in fit.checks if check.name == name)


def plain(**changed: object) -> Gear:
    return gear(TWEETER, **changed)


def own(**changed: object) -> Gear:
    """A tweeter with its capacitor in the box."""
    return plain(comes_with=["capacitor"], **changed)


def mounted(**changed: str) -> Gear:
    return own(mounts=[{**TWEETER["mounts"][0], **changed}])  # type: ignore[index]


def test_margins_of_a_flush_mount() -> None:
    """44 - 43; 50 - (44 + 2 x 1); 20 - (15 + 2); 6 - (3 + 1)."""
    good = fit(own())
    margins = {check.name: check.margin for check in good.checks}
    assert (margins["hole"], margins["rim"], margins["depth"], margins["front"]) == (1, 4, 3, 2)
    assert good.kind == "fits"
    # two readings to the millimetre: sqrt(0.5^2 + 0.5^2)
    assert found(good, "hole").uncertainty == pytest.approx(0.7071, abs=1e-4)


@pytest.mark.parametrize(
    ("changed", "name"),
    [({"diameter": "46 mm"}, "hole"), ({"rim": "44 mm"}, "rim"), ({"depth": "21 mm"}, "depth"), ({"over": "9 mm"}, "front")],
)  # fmt: skip
def test_each_size_can_keep_it_out(changed: dict[str, str], name: str) -> None:
    wrong = fit(mounted(**changed))
    assert (found(wrong, name).verdict, wrong.kind) == ("fails", "does-not-fit")


def test_a_margin_below_its_uncertainty_is_marginal() -> None:
    assert fit(mounted(diameter="43.8 mm")).kind == "marginal"


def test_more_room_is_kept_to_what_nobody_recorded() -> None:
    """20 - (15 + 5) against 20 - (15 + 2)."""
    unseen = fit(
        own(), place=FLUSH.replace(", obstruction: metal", "").replace(", over: no-glass", ", over: whole-travel")
    )
    assert found(unseen, "depth").margin == 0


def test_a_depth_without_its_face_is_marginal_at_best() -> None:
    depth = found(fit(own(), place=FLUSH.replace("datum: panel, ", "")), "depth")
    assert (depth.margin, depth.verdict) == (3, "marginal")
    assert "from which face" in say(depth.words)


def test_a_depth_measured_with_the_glass_down_is_marginal_at_best() -> None:
    down = fit(mounted(depth="5 mm"), place=FLUSH.replace("no-glass", "glass-down"))
    assert found(down, "depth").verdict == "marginal"


def test_a_cup_takes_the_bare_body() -> None:
    """45 - 43 across, 16 - 15 deep; a body of 17 strikes the floor."""
    cup = "mount: angled, angle: 20 deg, cup: {diameter: 45.0 mm, depth: 16 mm}"
    held = fit(own(), place=cup)
    assert (found(held, "cup").margin, found(held, "cup-depth").margin) == (2, 1)
    assert fit(mounted(depth="17.5 mm"), place=cup).kind == "does-not-fit"


def test_a_foot_stands_on_the_flat_face() -> None:
    foot = {"diameter": "48 mm", "depth": "none", "over": "5 mm"}
    kinds = own(mounts=[{"mount": "surface", **foot}, {"mount": "angled", **foot, "diameter": "52 mm"}])
    assert found(fit(kinds, place="mount: surface, flat: 50 mm"), "flat").margin == 2
    assert found(fit(kinds, place="mount: angled, flat: 50 mm, angle: 20 deg"), "flat").verdict == "fails"


@pytest.mark.parametrize("mount", ["surface", "angled"])
def test_a_mount_that_is_not_in_the_box_keeps_it_out(mount: str) -> None:
    wrong = fit(own(), place=f"mount: {mount}, flat: 60 mm")
    assert (found(wrong, "mount").verdict, wrong.kind) == ("fails", "does-not-fit")


def test_an_unknown_mount_or_room_is_no_yes() -> None:
    assert fit(own(), place="mount: unknown").kind == "unknown"
    assert fit(own(), front="").kind == "unknown"
    assert fit(own(), front="room_in_front: none").kind == "fits"


@pytest.mark.parametrize("feed", ["parallel, channel: front", "own-filter, channel: front", "unknown, channel: front"])
def test_without_a_high_pass_it_never_fits_plainly_and_a_capacitor_is_asked_for(feed: str) -> None:
    """3 kHz into 4 ohm is 13.26 uF; the standard value below is 12 (E6: 10), and sqrt(2 x 60 x 4) = 21.9 V wants 25."""
    bare = fit(plain(), feed=f"feed: {feed}")
    assert bare.kind == "fits-with"
    [part] = all_said(bare.to_get)
    assert "series capacitor of 12 µF (E6: 10 µF)" in part
    assert "rated 25 V or more for a peak of 21.91 V" in part


def test_a_steeper_filter_is_asked_for_where_the_maker_wants_one() -> None:
    """Butterworth of 3 kHz into 4 ohm: 9.38 uF and 0.300 mH."""
    second = fit(plain(high_pass={**TWEETER["high_pass"], "filter_order": "second"}))  # type: ignore[dict-item]
    [part] = all_said(second.to_get)
    assert "9.378 µF" in part
    assert "0.3001 mH" in part
    [part] = all_said(fit(plain(high_pass={**TWEETER["high_pass"], "filter_order": "fourth"})).to_get)  # type: ignore[dict-item]
    assert part == "a crossover of fourth order (24 dB per octave) from 3000 Hz"


@pytest.mark.parametrize("field", ["frequency", "power"])
def test_what_is_not_known_of_the_filter_is_told(field: str) -> None:
    blank = fit(plain(high_pass={**TWEETER["high_pass"], field: "unknown"}))  # type: ignore[dict-item]
    assert blank.kind == ("unknown" if field == "frequency" else "fits-with")
    if field == "power":
        assert "voltage rating still to be found" in say(blank.to_get[0])


def test_what_comes_with_it_is_enough_and_is_said() -> None:
    assert any("capacitor from its box" in note for note in all_said(fit(own()).notes))
    without_place = fit(plain(comes_with=["crossover"]))
    assert without_place.kind == "unknown"
    assert "where a crossover can go (not recorded)" in say(without_place.headline)
    assert fit(plain(comes_with=["crossover"]), more=PLACE).kind == "fits"


def test_a_crossover_in_stock_is_named_where_it_goes_into_its_place() -> None:
    """100 into 110, 60 into 70, 28 into 30, whichever way it is written."""
    with_it = fit(plain(), gear(CROSSOVER), more=PLACE)
    assert (with_it.kind, named(with_it.parts), with_it.to_get) == ("fits-with", ("Sandmartin Parting",), ())
    assert with_it.way.between == "sandmartin-parting"
    assert [found(with_it, f"crossover-{side}").margin for side in ("long", "middle", "short")] == [10, 10, 2]


@pytest.mark.parametrize(
    ("crossover", "place"),
    [
        ({}, ""),
        ({"frequency": "2500 Hz"}, PLACE),
        ({"impedance": "8 ohm"}, PLACE),
        ({"box": {"width": "60 mm", "height": "100 mm", "depth": "33 mm"}}, PLACE),
    ],
    ids=["no place", "too low", "another load", "too thick"],
)
def test_one_that_does_not_suit_is_passed_over(crossover: dict[str, object], place: str) -> None:
    assert fit(plain(), gear(CROSSOVER, **crossover), more=place).parts == ()


def test_one_that_is_not_steep_enough_is_passed_over() -> None:
    third = plain(high_pass={**TWEETER["high_pass"], "filter_order": "third"})  # type: ignore[dict-item]
    assert fit(third, gear(CROSSOVER), more=PLACE).parts == ()


def test_a_crossover_of_the_car_stays_and_is_held_against_what_is_needed() -> None:
    feed = "feed: crossover, channel: front"
    assert fit(plain(), feed=f"{feed}, corner: 3 kHz").kind == "fits"
    assert fit(plain(), feed=f"{feed}, corner: 2500 Hz").kind == "does-not-fit"
    unseen = fit(plain(), feed=feed)
    assert (unseen.kind, found(unseen, "high-pass").verdict) == ("marginal", "marginal")
    assert not any(fit(plain(), gear(CROSSOVER), feed=feed, more=PLACE).parts)


def test_it_loads_its_channel_in_its_own_range_alone() -> None:
    """4 ohm of its own against 4 ohm at least; 2 ohm is too little. What plays beside it does not count."""
    assert found(fit(own()), "load").have == 4
    low = fit(own(impedance="2 ohm"))
    assert (found(low, "load").verdict, low.kind) == ("fails", "does-not-fit")


def load_of_door(sail: str, visit: dict[str, Gear] | None = None) -> tuple[float | None, list[str]]:
    """The load of the door speaker beside a place for a tweeter."""
    made = record(f"{CAR.rstrip()}\n  sail: {{kind: tweeter, behind: [radio], area: pillar, {FLUSH}, channel: front, {sail}}}\n", SOUND)  # fmt: skip
    vehicle = Vehicle(made, "brindleway/otter-2014-2018", Stock((gear(SPEAKER),)), clearances(), visit or {})
    fits = answer(vehicle, made.openings["front-door"], None, {})[0].fits[0]
    return found(fits, "load").have, all_said(fits.notes)


def test_a_speaker_beside_it_is_loaded_by_what_is_joined_straight() -> None:
    """4 in parallel with 4 is 2; behind its filter it is left out, and an empty place is nothing."""
    assert load_of_door("feed: parallel, factory: yes, impedance: 4 ohm")[0] == 2
    for feed in ("own-filter", "crossover"):
        load, notes = load_of_door(f"feed: {feed}, factory: yes, impedance: 4 ohm")
        assert load == 4
        assert any("Sail on the same channel" in note for note in notes)
    load, notes = load_of_door("feed: parallel, factory: no")
    assert load == 4
    assert not any("Sail" in note for note in notes)


def test_a_new_tweeter_in_an_empty_place_plays_through_its_high_pass() -> None:
    load, notes = load_of_door("feed: parallel, factory: no", {"sail": own()})
    assert load == 4
    assert any("Sail on the same channel are fed through a capacitor" in note for note in notes)


def test_a_new_receiver_of_the_visit_drives_it() -> None:
    driven = fit(own(), visit={"dash": gear(RECEIVER, least_load="8 ohm")})
    assert found(driven, "load").verdict == "fails"
