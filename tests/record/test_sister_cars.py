"""A record that takes from another one: what it has then."""

from pathlib import Path
from typing import Any

import pytest

from sisters import ALL, OTTER, Place, faults
from undertrim.record.model import Blank
from undertrim.record.model.kinds.amplifier import AmplifierOpening


@pytest.fixture
def place(tmp_path: Path) -> Place:
    return Place(tmp_path)


def test_all_is_taken_by_all_and_some_by_groups_and_ids(place: Place) -> None:
    assert list(place.record(ALL).parts) == ["vent", "brace", "radio", "panel", "seat"]
    some = place.record("shares:\n  brindleway/otter-2014-2018: {parts: [front-door, seat], openings: front-door}\n")
    assert (list(some.parts), list(some.openings), some.variants) == (["panel", "seat"], ["front-door"], {})


def test_what_a_group_shares_and_what_follows_comes_along(place: Place) -> None:
    found = place.record(ALL)
    assert (found.parts["panel"].each, found.parts["panel"].area) == (("left", "right"), "front-door")
    assert (found.openings["front-door"].area, found.parts["seat"].name) == ("front-door", "Seat")


def test_evidence_is_not_inherited_at_any_depth(place: Place) -> None:
    data = place.vole(ALL).source.data

    def sources(value: Any) -> int:
        inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
        return sum(map(sources, inner)) + (isinstance(value, dict) and "source" in value)

    assert sources(data) == 0
    assert list(data["evidence"]) == ["e1"]


def test_a_safety_fact_that_reassures_is_unknown_and_one_that_warns_is_kept(place: Place) -> None:
    found = place.record(ALL)
    assert found.openings["front-door"].crash_sensor == "unknown"
    assert found.parts["seat"].held_by[0].torque is Blank.UNKNOWN
    place.write("brindleway/otter-2014-2018", OTTER.replace("crash_sensor: no", "crash_sensor: yes"))
    assert place.record(ALL).openings["front-door"].crash_sensor == "yes"


def test_whether_a_unit_is_near_is_unknown_until_somebody_looked_at_this_car(place: Place) -> None:
    bay = "  boot: {kind: amplifier, behind: seat, run: way, space: {width: 300 mm, height: 90 mm, depth: 200 mm}, restraint_near: no, source: e1}\n"
    place.write("brindleway/otter-2014-2018", OTTER.replace("connectors:\n", f"{bay}connectors:\n"))
    opening = place.record("shares:\n  otter-2014-2018: {parts: all, openings: boot, variants: all}\n").openings["boot"]
    assert isinstance(opening, AmplifierOpening)
    assert opening.restraint_near == "unknown"


def test_photographs_stay_with_the_car_that_they_show(place: Place) -> None:
    photo = "photos: {file: seat.png, shows: The seat.}, "
    place.write("brindleway/otter-2014-2018", OTTER.replace("seat: {area: seat, ", f"seat: {{area: seat, {photo}"))
    assert place.record(ALL).parts["seat"].photos == ()


@pytest.mark.parametrize("wanted", ["dash", "all", "[dash, front-door]", "dash-map, without: front-door"])
def test_what_differs_between_cars_over_there_goes_by_the_id_it_is_written_under(place: Place, wanted: str) -> None:
    faces = (
        "[{when: {radio: map}, width: 182 mm, height: 146 mm}, {when: {radio: plain}, width: 182 mm, height: 112 mm}]"
    )
    text = OTTER.replace("face: {width: 182 mm, height: 112 mm}", f"face: {faces}")
    assert text != OTTER
    place.write("brindleway/otter-2014-2018", text)
    found = place.record(
        "shares:\n  otter-2014-2018: {variants: all, parts: all, openings: WANTED, connectors: all}\n".replace(
            "WANTED", wanted
        )
    )
    assert {one.written for name, one in found.openings.items() if name in ("dash-map", "dash-plain")} == {"dash"}
    assert {one.named_for for name, one in found.openings.items() if name in ("dash-map", "dash-plain")} == {("radio",)}


def test_areas_and_the_restraint_system_are_never_shared(place: Place) -> None:
    more = "restraint: {wait: 3 min, memory_keeper: allowed, read_faults_first: no, source: e1}\nareas:\n  dash: {restraints: [Bag], source: e1}\n"
    place.write("brindleway/otter-2014-2018", OTTER + more)
    found = place.record(ALL)
    assert (found.restraint, found.areas) == (None, {})
    assert "area" in faults(place.vole("shares:\n  otter-2014-2018: {areas: all}\n"))[0][1]


def test_all_of_it_stands_where_it_is_asked_for(place: Place) -> None:
    found = place.vole(ALL).source
    origin = found.origin
    assert origin
    assert {origin.taken[spot].address for spot in origin.taken} == {"brindleway/otter-2014-2018"}
    column = ALL.splitlines()[1].index("parts: ") + len("parts: ") + 1
    for pointer in (("parts", "radio"), ("parts", "radio", "held_by", 0, "screw"), ("parts", "radio", "after", 1)):
        assert (found.position(pointer).line, found.position(pointer).column) == (7, column)
        assert origin.is_taken(pointer)
    assert not origin.is_taken(("vehicle", "make"))
