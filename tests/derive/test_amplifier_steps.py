"""What the steps of fitting an amplifier say of its place."""

import pytest

from making import ids, plan, record, step
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner
from undertrim.record.model import VehicleRecord
from undertrim.words import say


def bay(text: str = "") -> VehicleRecord:
    return record(f"""
        parts:
          cover:
        openings:
          bay: {{kind: amplifier, behind: [cover]{text}}}
    """)


def told(about: VehicleRecord, entry: str) -> str:
    return "\n".join(say(one) for one in step(plan(about, "bay"), f"install:bay:{entry}").text)


@pytest.mark.parametrize(
    ("underneath", "said"),
    [
        (", underneath: [fuel-line]", "A fuel line is right underneath: no screw may reach it."),
        (", underneath: [nothing]", "Nothing lies right underneath, by the record."),
        (", underneath: [unknown]", "look from below first"),
        ("", "look from below first"),
    ],
)
def test_what_lies_underneath_is_said_where_the_amplifier_is_offered_up(underneath: str, said: str) -> None:
    assert said in told(bay(underneath), "offer")


def test_the_ground_point_its_nut_and_the_place_of_the_fuse_are_said() -> None:
    about = bay(", ground_point: {at: Stud, paint: yes, nut: hex 13 mm}, fuse_place: {at: Tray}")
    assert "Ground point: Stud." in told(about, "ground")
    assert "Place of the main fuse: Tray." in told(about, "fuse")
    assert "socket 13 mm" in [say(tool) for tool in step(plan(about, "bay"), "install:bay:ground").tools]


@pytest.mark.parametrize(("paint", "scraped"), [("yes", True), ("unknown", True), ("no", False)])
def test_paint_is_scraped_off_unless_there_is_none(paint: str, scraped: bool) -> None:
    about = bay(f", ground_point: {{at: Stud, paint: {paint}}}")
    assert ("install:bay:paint" in ids(about, "bay")) is scraped


def test_feed_and_ground_come_with_the_battery_off_the_fuse_last_and_the_trim_after_the_test() -> None:
    about = record("""
        preps:
          battery: {sets: {battery: off}, needs: {ignition: off}, restore: Join it.}
        parts:
          cover:
        openings:
          bay: {kind: amplifier, behind: [cover]}
    """)
    steps = ids(about, "bay")
    wanted = [
        "prepare:battery",
        "install:bay:ground",
        "install:bay:join",
        "install:bay:fuse",
        "restore:battery",
        "test:bay:on",
        "refit:cover",
    ]
    assert [name for name in steps if name in wanted] == wanted


def two(run: str = ", run: to-boot") -> VehicleRecord:
    return record(f"""
        parts:
          cover:
        openings:
          bay: {{kind: amplifier, behind: [cover], run: to-boot}}
          shelf: {{kind: amplifier, behind: [cover]{run}}}
        runs:
          to-boot: {{name: Battery to boot, from: Battery, to: Boot, length: 5 m}}
    """)


def of_run(about: VehicleRecord, *openings: str) -> list[str]:
    return [name for name in ids(about, *openings) if name.endswith((":cable", ":fuse"))]


def test_one_cable_and_one_fuse_serve_all_amplifiers_on_a_run() -> None:
    assert of_run(two(), "bay", "shelf") == ["install:bay:cable", "install:bay:fuse"]
    assert of_run(two(), "shelf") == ["install:shelf:cable", "install:shelf:fuse"]
    assert ids(two(), "bay", "shelf").index("install:shelf:join") < ids(two(), "bay", "shelf").index("install:bay:fuse")
    assert "One main fuse on the run 'Battery to boot' serves all amplifiers of this visit." in told(two(), "fuse")


def test_amplifiers_on_runs_of_their_own_have_each_a_cable() -> None:
    about = two(", run: other")
    both = of_run(about, "bay", "shelf")
    assert both == ["install:bay:cable", "install:shelf:cable", "install:bay:fuse", "install:shelf:fuse"]
    assert "all amplifiers" not in told(about, "fuse")


def test_a_page_knows_the_visit_in_which_a_cable_is_laid_once() -> None:
    """It adds up the steps of single openings, but for the visits that it is told of."""
    made = choices(Planner(two()))
    (of_car,) = made.cars
    assert "install:shelf:cable" in of_car.singles["shelf"]
    assert "install:shelf:cable" not in of_car.sets["bay", "shelf"]
    assert {"install:bay:cable", "install:shelf:cable"} <= {step.id for step in made.steps}
