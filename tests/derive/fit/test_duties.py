"""What becomes of everything the factory unit also does, and what a loss weighs."""

from typing import Any

import pytest

from fitting import named
from joining import ADDRESS, car, gear, interface
from making import from_data
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.duties import Fate, Outcome, outcomes
from undertrim.derive.fit.duty_groups import becomes
from undertrim.derive.fit.duty_kinds import kinds
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.wiring.groups import joints
from undertrim.derive.wiring.row import State
from undertrim.publish.encoding import said as said_data
from undertrim.publish.facts.blockers import blockers
from undertrim.record import schema
from undertrim.record.model import VehicleRecord
from undertrim.words import say

PINS = "4: {function: battery-feed, colour: yellow}"
FITTING = "body: {width: 178 mm, height: 100 mm}\ntrim: {width: 190 mm, height: 110 mm}\nchassis_depth: 76 mm\noutputs: [speaker]\nneeds: [battery-feed]\n"


def receiver(more: str = "", model: str = "Cleft") -> Gear:
    return gear("receiver", FITTING + more, model)


def duty(words: str, *more: str) -> VehicleRecord:
    return car(PINS, f"duties:\n  {words}\n", "sound:\n  factory: {output: speaker}\n", *more)


def one(record: VehicleRecord, *shelf: Gear, **choices: str) -> Outcome:
    stock = Stock(shelf).suiting(ADDRESS, "dash", choices)
    (found,) = outcomes(record, record.openings["dash"], choices, stock)
    return found


def fit(record: VehicleRecord, *shelf: Gear) -> Fit:
    vehicle = Vehicle(record, ADDRESS, Stock(shelf), clearances())
    named = next(item for item in shelf if item.facts.kind == "receiver")
    return answer(vehicle, record.openings["dash"], [named], {})[0].fits[0]


KEEPER = interface("provides: [mute]\nkeeps: [chime]")
KIT = gear("kit", f"opening: {{width: 182 mm, height: 104 mm}}\nsuits: [{{vehicle: {ADDRESS}, opening: dash}}]", "Sill")


@pytest.mark.parametrize(
    ("words", "shelf", "fate", "stops"),
    [
        ("chime: {kept_by: interface}", [KEEPER], Fate.KEPT, False),
        ("chime: {kept_by: interface}", [], Fate.LOST, True),
        ("chime: {kept_by: interface}", [interface("provides: [mute]")], Fate.LOST, True),
        ("belt-tone: {what: chime, kept_by: interface}", [KEEPER], Fate.KEPT, False),
        ("belt-tone: {what: chime, kept_by: none}", [], Fate.LOST, True),
        ("hazard-switch: {kept_by: none}", [], Fate.LOST, True),
        ("tell-tales: {kept_by: none}", [], Fate.LOST, True),
        ("rear-camera: {kept_by: unknown}", [], Fate.UNKNOWN, True),
        ("emergency-call: {kept_by: unknown}", [], Fate.UNKNOWN, True),
        ("position-antenna: {kept_by: none}", [], Fate.LOST, False),
        ("position-antenna: {kept_by: interface}", [], Fate.LOST, False),
        ("clock: {kept_by: unknown}", [], Fate.UNKNOWN, False),
        ("whatever: {kept_by: none}", [], Fate.LOST, False),
        ("hazard-switch: {kept_by: stays}", [], Fate.STAYS, False),
        ("hazard-switch: {kept_by: stays, part: factory-radio}", [], Fate.LOST, True),
        ("climate: {kept_by: moved}", [], Fate.UNKNOWN, True),
    ],
)
def test_what_becomes_of_a_duty_and_whether_it_stops_the_job(
    words: str, shelf: list[Gear], fate: Fate, stops: bool
) -> None:
    found = one(duty(words), *shelf)
    assert (found.fate, found.stops) == (fate, stops)


def test_an_interface_for_another_car_keeps_nothing() -> None:
    elsewhere = gear(
        "interface",
        "suits: [{vehicle: brindleway/stoat-2014-2018, opening: dash}]\nprovides: [mute]\nkeeps: [chime]",
        "Far",
    )
    assert one(duty("chime: {kept_by: interface}"), elsewhere).fate is Fate.LOST


def test_a_harness_and_a_receiver_may_keep_a_duty_too() -> None:
    lost = duty("chime: {kept_by: interface}")
    knot = gear(
        "harness",
        f"suits: [{{vehicle: {ADDRESS}, opening: dash}}]\nplugs: {{radio-main: {{4: {{function: battery-feed}}}}}}\nkeeps: [chime]",
    )
    assert named(one(lost, knot).by) == ("Pellworth Knot",)
    itself = receiver("keeps: [chime]\n")
    assert fit(lost, itself, KIT).kind == "fits-with"
    other = receiver(model="Other")
    assert "chime: LOST" in say(fit(lost, other, itself, KIT).headline)


def test_a_camera_wants_a_receiver_that_can_show_it() -> None:
    camera = duty("rear-camera: {kept_by: interface}")
    box = interface("provides: [camera-video]\nkeeps: [rear-camera]")
    cord = gear("leads", "leads: {battery: {function: battery-feed}}", "Cord")
    blind = receiver("lead_set: pellworth-cord\n")
    assert fit(camera, blind, cord, box, KIT).kind == "stop"
    assert fit(camera, receiver(), box, KIT).kind == "stop"  # nobody knows its leads
    seeing = gear("receiver", FITTING.replace("battery-feed]", "battery-feed, camera-video]"), "Seer")
    assert fit(camera, seeing, box, KIT).kind == "fits-with"


@pytest.mark.parametrize(
    "words", ["hazard-switch: {kept_by: none}", "chime: {kept_by: interface}", "emergency-call: {kept_by: unknown}"]
)
def test_a_grave_loss_is_no_fit(words: str) -> None:
    found = fit(duty(words), receiver(), KIT)
    assert found.kind == "stop"
    assert say(found.headline).startswith("STOP: not a plain replacement: ")


def test_a_lost_map_leaves_the_fit_as_it_is() -> None:
    assert fit(duty("position-antenna: {kept_by: none}"), receiver(), KIT).kind == "fits-with"


def test_an_interface_for_comfort_is_to_get() -> None:
    found = fit(duty("car-settings: {kept_by: interface}"), receiver(), KIT)
    assert [*map(say, found.to_get)] == ["an interface that keeps the car settings"]
    assert sum("car settings" in words for words in map(say, (found.headline, *found.notes))) == 1


def test_a_part_that_moves_elsewhere_carries_nothing() -> None:
    for place, fate in (("dash", Fate.MOVED), ("nowhere", Fate.UNKNOWN)):
        made = from_data({
            "parts": {"radio": {"replaced": "yes"}, "panel": {"goes_to": place}},
            "openings": {"dash": {"behind": ["radio"]}, "nowhere": {"kind": "receiver", "behind": ["radio"]}},
            "duties": {"climate": {"kept_by": "moved", "part": "panel"}},
        })  # fmt: skip
        (found,) = outcomes(made, made.openings["dash"], {}, ())
        assert found.fate is fate


def blocking(record: VehicleRecord, *of: Any) -> Any:
    """What blocks, in words."""
    return said_data(blockers(record, *of))


def test_blockers_say_each_loss_once_and_the_grave_ones_stop() -> None:
    record = duty(
        "hazard-switch: {kept_by: none}\n  map: {kept_by: none}\n  chime: {kept_by: interface}\n  clock: {kept_by: unknown}"
    )
    found = blocking(record, ADDRESS, Stock((KEEPER,)))
    said = {item["weight"]: item for item in found if item["openings"] == ["dash"] and "Dash kit" not in item["title"]}
    assert said["stop"]["title"] == "Hazard switch: lost, not a plain replacement"
    assert "law of the country and the maker's information decide" in said["stop"]["text"]
    assert said["lost"]["title"] == "Map"
    assert said["unknown"]["title"] == "Clock: may be lost"
    assert "chime" in said["need"]["text"]
    assert [item["title"] for item in blocking(record, ADDRESS)].count("Chime: lost, not a plain replacement") == 1


def test_a_record_without_a_receiver_opening_loses_nothing() -> None:
    made = from_data({
        "parts": {"panel": {}},
        "openings": {"front-door": {"behind": ["panel"]}},
        "duties": {"hazard-switch": {"kept_by": "none"}},
    })  # fmt: skip
    assert becomes(made, ADDRESS, Stock(())) == ()
    assert not [item for item in blocking(made) if "Hazard" in item["title"]]


AMPLIFIER = "sound:\n  factory: {output: speaker, amplifier: Boot, turn_on: data}\n"


def test_an_amplifier_woken_by_data_orders_what_wakes_it() -> None:
    record = car(PINS, AMPLIFIER)
    waker = interface("provides: [amplifier-turn-on]", "Waker")
    assert "Pellworth Waker" in named(fit(record, receiver(), waker, KIT).parts)
    assert [*map(say, fit(record, receiver(), KIT).to_get)] == ["an interface for amplifier turn on"]
    assert "Pellworth Waker" in _woken(record, waker)
    assert _woken(record).startswith("No interface in stock")


def _woken(record: VehicleRecord, *shelf: Gear) -> str:
    found = blocking(record, ADDRESS, Stock(shelf))
    return str(next(item["text"] for item in found if "switched on by data" in item["title"]))


def test_the_joint_leads_the_turn_on_through_what_wakes_the_amplifier() -> None:
    record = car(PINS, AMPLIFIER)
    cord = gear("leads", "leads: {turn-on: {function: amplifier-turn-on, behaves: on-off}}", "Cord")
    waker = interface("provides: [amplifier-turn-on]", "Waker")
    (without,) = joints(record, ADDRESS, record.openings["dash"], cord, Stock((cord,)))
    assert next(row for row in without.joint.rows if row.lead).state is State.INTERFACE
    (made,) = joints(record, ADDRESS, record.openings["dash"], cord, Stock((cord, waker)))
    assert next(row for row in made.joint.rows if row.lead).through == "Pellworth Waker"


def test_what_wakes_the_amplifier_is_in_the_joint_though_no_lead_asks_for_it() -> None:
    cord = gear("leads", "leads: {battery: {function: battery-feed}}", "Cord")
    waker = interface("provides: [amplifier-turn-on]", "Waker")
    for sound, expected in ((AMPLIFIER, ("Pellworth Waker",)), (AMPLIFIER.replace("data", "wire"), ())):
        record = car(PINS, sound)
        (made,) = joints(record, ADDRESS, record.openings["dash"], cord, Stock((cord, waker)))
        assert tuple(item.name for item in made.joint.interfaces) == expected


TWO = from_data({
    "evidence": {"e1": {"how": "measured", "on": "2026-03-02", "by": "rk"}},
    "parts": {"radio": {"replaced": "yes"}, "tray": {}},
    "openings": {"dash": {"kind": "receiver", "behind": ["radio"]}, "tray": {"kind": "receiver", "behind": ["tray"]}},
    "duties": {"chime": {"kept_by": "interface"}, "map": {"kept_by": "none"}},
    "sound": {"factory": {"output": "speaker", "amplifier": "Boot", "turn_on": "data"}},
})  # fmt: skip


def test_of_two_openings_for_a_receiver_each_has_its_own_answer() -> None:
    """The interface is made for one of them: there it keeps the chime and wakes the amplifier, at the other nothing does."""
    stock = Stock((interface("provides: [amplifier-turn-on]\nkeeps: [chime]", "Waker"),))
    found = {(item.duty.id, item.outcome.fate): item.openings for item in becomes(TWO, ADDRESS, stock)}
    assert found == {
        ("chime", Fate.KEPT): ("dash",),
        ("chime", Fate.LOST): ("tray",),
        ("map", Fate.LOST): ("dash", "tray"),
    }
    said = {(item["title"], *item["openings"]): item["text"] for item in blocking(TWO, ADDRESS, stock)}
    assert "Chime: lost, not a plain replacement" in {title for title, *places in said if places == ["tray"]}
    assert not [title for title, *places in said if places == ["dash"] and "Chime: lost" in title]
    assert "Pellworth Waker" in said["Factory amplifier: switched on by data", "dash"]
    assert "No interface in stock" in said["Factory amplifier: switched on by data", "tray"]
    assert [title for title, *places in said if places == ["dash", "tray"]] == ["Map"]


def test_the_schema_knows_the_kinds_of_the_table() -> None:
    known = schema.load("vehicle")["$defs"]["duty"]["properties"]["what"]["enum"]
    assert set(known) == {kind.id for kind in kinds().values()}
    assert all(kind.source for kind in kinds().values())
