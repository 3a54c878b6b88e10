"""The car from above: every body has every area inside it, left is left, marks meet nothing, and what is not known is not drawn."""

import json
from dataclasses import replace
from itertools import combinations, pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from svg_reading import SVG, assert_clear, parsed, texts
from undertrim.publish.encoding import said
from undertrim.publish.facts.from_above import from_above
from undertrim.publish.facts.targets import targets
from undertrim.publish.pictures import above
from undertrim.publish.pictures.drawings import columns
from undertrim.publish.pictures.drawings.above import CHIP, WIDTH, Job, Scene, Seat
from undertrim.publish.pictures.drawings.car import Shape, middle, part_of
from undertrim.publish.pictures.drawings.car_bodies import BODIES
from undertrim.publish.pictures.drawings.car_lines import lines, outline, wheel
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from wired import ROOT

DEFS = json.loads((ROOT / "schema" / "vehicle.schema.json").read_text(encoding="utf-8"))["$defs"]
AREAS = DEFS["area"]["enum"]
SHAPES = [Shape(body, four) for body in BODIES for four in (False, True)]


def record(name: str) -> VehicleRecord:
    found = Workspace(ROOT).load(ROOT / "records" / "vehicles" / f"{name}.yaml").record
    assert isinstance(found, VehicleRecord)
    return found


def test_every_body_of_the_schema_is_drawn_and_no_other() -> None:
    assert set(BODIES) == set(DEFS["vehicle"]["properties"]["bodies"]["items"]["enum"])
    drawn = {(outline(shape), lines(shape)) for shape in SHAPES}
    assert len(drawn) == len(SHAPES)


@pytest.mark.parametrize("shape", SHAPES, ids=str)
@pytest.mark.parametrize("area", AREAS)
def test_every_area_is_inside_the_car_and_mirrored(shape: Shape, area: str) -> None:
    at = shape.stations
    both = shape.boxes(area)
    assert both
    for left, top, right, bottom in (*both, *shape.boxes(area, "left"), *shape.boxes(area, "right")):
        assert -at.half <= left < right <= at.half
        assert 0 <= top < bottom <= at.length
    mirrored = sorted((-right, top, -left, bottom) for left, top, right, bottom in shape.boxes(area, "right"))
    assert sorted(shape.boxes(area, "left")) == mirrored
    assert middle(shape.boxes(area, "left"))[0] < 0 < middle(shape.boxes(area, "right"))[0]


@pytest.mark.parametrize("shape", SHAPES, ids=str)
def test_areas_stand_in_the_order_of_the_car(shape: Shape) -> None:
    order = ["engine-bay", "dash", "seat", "floor"]
    tops = [shape.boxes(area)[0][1] for area in order]
    assert tops == sorted(tops)
    assert shape.boxes("front-door")[0][3] <= shape.boxes("rear-door")[0][1]
    assert shape.boxes("boot")[0][1] > shape.boxes("seat")[0][1]


def test_the_wheel_is_on_its_side() -> None:
    shape = Shape("saloon", four_doors=True)
    for side, sign in (("left", -1), ("right", 1)):
        column = float(wheel(shape, side).split("M")[-1].split()[0])
        assert column * sign > 0


def test_what_shares_an_area_has_parts_of_it_in_order() -> None:
    boxes = ((0.0, 0.0, 10.0, 30.0),)
    assert [part_of(boxes, place, 3)[0] for place in range(3)] == [(0, 0, 10, 10), (0, 10, 10, 20), (0, 20, 10, 30)]
    assert part_of(boxes, 0, 1) == boxes


@given(st.lists(st.floats(0, 300), max_size=9))
def test_marks_of_a_column_keep_apart_and_in_order(wanted: list[float]) -> None:
    placed = columns.spread(wanted, 46, 23, 280)
    order = sorted(range(len(wanted)), key=lambda place: (wanted[place], place))
    heights = [placed[place] for place in order]
    assert all(after - before >= 46 - 1e-9 for before, after in pairwise(heights))
    assert all(at >= 23 - 1e-9 for at in heights)
    if len(wanted) * 46 <= 280 - 23:
        assert all(at <= 280 + 1e-9 for at in heights)


def test_a_mark_that_has_room_is_where_it_was_wanted() -> None:
    assert columns.spread([200, 50, 120], 46, 23, 280) == [200, 50, 120]


SEATS = st.builds(Seat, st.sampled_from(AREAS), st.sampled_from(["", "left", "right"]), st.just({}))


@given(st.sampled_from(SHAPES), st.lists(SEATS, max_size=10))
def test_marks_meet_nothing_and_lead_into_their_area(shape: Shape, seats: list[Seat]) -> None:
    jobs = [Job(f"job-{place}", f"J{place}", seat) for place, seat in enumerate(seats)]
    scene = Scene(shape, jobs, [], [], [], [])
    assert [chip.job for chip in scene.chips] == jobs
    for one, other in combinations(scene.chips, 2):
        assert one.at[0] != other.at[0] or abs(one.at[1] - other.at[1]) >= CHIP[1]
    for chip in scene.chips:
        assert CHIP[0] / 2 <= chip.at[0] <= WIDTH - CHIP[0] / 2
        assert chip.at[1] + CHIP[1] / 2 <= scene.end
        if chip.job.seat.side:
            assert (chip.at[0] < WIDTH / 2) == (chip.job.seat.side == "left") == (chip.spot[0] < WIDTH / 2)


def shown(name: str) -> Any:
    found = record(name)
    steps = [{"area": part.area, "side": "", "place": [], "targets": ["dash"]} for part in found.parts.values()]
    return {**said({"targets": targets(found), "from_above": from_above(found)}), "steps": steps}


NAMES = [f"{path.parent.name}/{path.stem}" for path in sorted((ROOT / "records" / "vehicles").rglob("*.yaml"))]


@pytest.mark.parametrize("name", NAMES)
def test_the_picture_of_a_record_can_be_read_on_paper(name: str) -> None:
    drawn = above.on_paper("A car", shown(name), {})
    root = parsed(drawn)
    assert root.find(f"{SVG}title") is not None
    assert not [key for one in root.iter() for key in one.attrib if key in ("class", "id", "href")]
    words = [line for line in texts(drawn) if len(line.words) > 5]
    assert_clear(words)
    assert any("not to scale" in line.words for line in words)
    for line in words:
        assert line.box.right <= WIDTH


@pytest.mark.parametrize("name", NAMES)
def test_each_job_of_the_page_has_one_mark_for_each_place(name: str) -> None:
    facts = shown(name)
    drawn = parsed(above.chooser(facts))
    marks = [one.get("data-pick") for one in drawn.iter("a")]
    assert marks == [one["target"] for one in facts["from_above"]["jobs"] for _ in one["seats"]]
    assert drawn.get("aria-hidden") == "true"
    assert len(list(drawn.iter())) < 90


def test_what_moves_with_the_wheel_is_in_both_places_until_that_is_known() -> None:
    facts = shown("ashgrove/drover-2015-2020")
    bass = next(one for one in facts["from_above"]["jobs"] if one["target"] == "bass")
    assert [(seat["side"], seat["clauses"]["drive-side"]) for seat in bass["seats"]] == [
        ("left", ["left"]),
        ("right", ["right"]),
    ]
    both, one = above.on_paper("A car", facts, {}), above.on_paper("A car", facts, {"drive-side": "right"})
    assert (both.count(">B<"), one.count(">B<")) == (2, 1)


def test_what_nobody_recorded_is_said() -> None:
    gant = from_above(record("tolverne/gant-1998-2003"))
    assert gant.fires == []
    assert set(gant.unlooked) >= {"dash", "front-door"}
    plover = from_above(record("wexcombe/plover-2017-2022"))
    assert set(plover.fires) == {"dash", "console", "front-door"}
    assert plover.unlooked == ["boot"]  # nobody looked there; in the rear doors somebody did, and there is none
    assert set(plover.high_voltage) == {"console", "boot"}
    finch = record("kelbrook/finch-2014-2018")
    nowhere = replace(finch, preps={**finch.preps, "battery": replace(finch.preps["battery"], area="")})
    assert from_above(finch).battery_known
    facts = {**shown("kelbrook/finch-2014-2018"), "from_above": said(from_above(nowhere))}
    assert "Where the battery is, is not recorded." in [line.words for line in texts(above.on_paper("A", facts, {}))]
