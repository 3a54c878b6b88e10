"""Plugs beyond the radio: they are no contacts of the joint, but say where its wires show again, and which opening they feed."""

from dataclasses import replace
from pathlib import Path

from joining import joined, row
from making import record
from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import visit
from undertrim.derive.visit.visit import Visit
from undertrim.derive.wiring import ends
from undertrim.derive.wiring.differences import comparisons
from undertrim.derive.wiring.needs import points
from undertrim.record.lookup import vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

DOOR = """
parts:
  factory-radio: {replaced: yes, tethers: {radio-main: {name: Plug, kind: plug}}}
  door-speaker: {area: front-door, each: [left, right], replaced: yes, tethers: {speaker: {name: Plug, kind: plug}}}
openings:
  dash: {behind: [factory-radio], clear_front: {width: 300 mm, height: 200 mm}, depth: {clear: 170 mm, datum: face}}
  door: {kind: speaker, channel: front, behind: [door-speaker], each: [left, right], hole: {shape: round, diameter: 146 mm}, depth: {clear: 60 mm, datum: skin}}
connectors:
  radio-main:
    name: Main radio plug
    view: wires
    rows: 1
    columns: 4
    pins: {1: {function: front-left-plus, colour: white}, 2: {function: front-left-minus, colour: white/black}}
  left:
    name: Speaker plug
    at: door-speaker/speaker
    end: speaker
    side: left
    view: wires
    rows: 1
    columns: 2
    pins: {1: {function: front-left-plus, colour: brown/white}, 2: {function: front-left-minus}}
  right:
    name: Speaker plug
    at: door-speaker/speaker
    end: speaker
    side: right
    view: wires
    rows: 1
    columns: 2
    pins: {1: {function: front-right-plus, colour: brown/grey}, 2: {function: front-right-minus}}
"""


def visited(jobs: str) -> Visit:
    place = Workspace(Path(__file__).parents[3])
    asked = text.parse(f"drover-2015-2020?jobs={jobs}")
    entry = place.load(vehicle_file(place, asked.vehicle))
    assert isinstance(entry.record, VehicleRecord)
    return visit(Vehicle(entry.record, entry.address, stock(place), clearances()), asked)


def about() -> VehicleRecord:
    return record(DOOR)


def test_what_is_beyond_the_radio_is_no_contact_of_the_joint() -> None:
    assert [point.address for point in points(about(), {})] == ["radio-main/1", "radio-main/2"]


def test_a_joined_wire_says_where_it_shows_again_and_of_which_colour() -> None:
    made = joined(about(), "plus: {function: front-left-plus}\nminus: {function: front-left-minus}")
    assert "shows again at speaker plug, left, pin 1: brown with white tracer" in map(say, row(made, "plus").words)
    assert "shows again at speaker plug, left, pin 2: colour not recorded" in map(say, row(made, "minus").words)


def test_an_opening_has_the_plugs_that_feed_it() -> None:
    found = about()
    plugs = ends.of_opening(found, found.openings["door"])
    assert [plug.id for plug in plugs] == ["left", "right"]
    assert say(ends.pins_at(found, plugs[1])) == (
        "Speaker plug, right: pin 1 front right +, brown with grey tracer; pin 2 front right −, colour not recorded"
    )
    assert ends.of_opening(found, found.openings["dash"]) == ()


def test_a_plug_says_for_which_jobs_it_is_met() -> None:
    """One at a speaker for its side, one where both sides are joined for both, that of the radio for a new receiver."""
    found = about()
    told = {plug.id: ends.serves(found, plug) for plug in found.connectors.values()}
    assert (told["left"], told["right"]) == (("door@left",), ("door@right",))
    assert {name for plug, names in told.items() if plug not in ("left", "right") for name in names} == {"dash"}
    both = replace(found.connectors["left"], pins={**found.connectors["left"].pins, **{f"{name}b": pin for name, pin in found.connectors["right"].pins.items()}}, side=None)  # fmt: skip
    made = replace(found, connectors={**found.connectors, "left": both})
    assert ends.serves(made, both) == ("door",)


def test_one_side_of_a_door_has_no_wire_of_the_other() -> None:
    found = about()
    left = replace(found.openings["door"], each=("left",))
    assert [plug.id for plug in ends.of_opening(found, left)] == ["left"]


def test_the_two_sides_are_no_two_maps_of_one_plug() -> None:
    assert comparisons(about()) == ()


def test_a_visit_to_the_door_meters_its_plugs_and_one_to_the_dash_those_of_the_radio() -> None:
    assert {plug.written for plug in visited("front-door").plugs} == {"front-door-speaker"}
    assert {plug.written for plug in visited("dash").plugs} == {"radio-main", "radio-second"}
    assert {plug.written for plug in visited("dash,front-door").plugs} >= {"radio-main", "front-door-speaker"}
