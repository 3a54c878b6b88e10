"""What the steps of fitting an amplifier say of its place."""

import pytest

from making import ids, plan, record, step
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
