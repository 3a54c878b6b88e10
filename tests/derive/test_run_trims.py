"""What lies over a cable's way comes off in a visit that lays a cable there, and in no other."""

import pytest

from making import ids, plan, record
from undertrim.derive.simulation import replay
from undertrim.record.model import VehicleRecord

CAR = """
    variants:
      seats: {ask: Which seats, choices: {bench: {label: Bench}, single: {label: Single seats}}}
    parts:
      cover:
      radio: {replaced: yes}
      sill-trim: {each: [left, right]}
      lining: {after: [sill-trim]}
      bench: {when: {seats: bench}}
    openings:
      bay: {kind: amplifier, behind: [cover], run: to-boot}
      dash: {behind: [radio]}
"""
RUN = "    runs:\n      to-boot: {name: Battery to boot, from: Battery, to: Boot, length: 5 m, TRIMS}\n"
LEFT = {"seats": "single", "drive-side": "left"}


def car(trims: str) -> VehicleRecord:
    return record(CAR + RUN.replace("TRIMS", trims))


@pytest.mark.parametrize(
    ("trims", "off"),
    [
        ("trims: [sill-trim]", ["sill-trim@left", "sill-trim@right", "cover"]),
        ("trims: [sill-trim], side: left", ["sill-trim@left", "cover"]),
        ("trims: [bench]", ["cover"]),
        ("trims: [sill-trim], when: {seats: bench}", ["cover"]),
        ("trims: [lining]", ["sill-trim@left", "sill-trim@right", "lining", "cover"]),
        ("side: left", ["cover"]),
    ],
)
def test_they_come_off_and_go_back(trims: str, off: list[str]) -> None:
    about = car(trims)
    made = plan(about, "bay", **LEFT)
    names = [step.id for step in made.steps]
    assert sorted(name.removeprefix("remove:") for name in names if name.startswith("remove:")) == sorted(off)
    assert sorted(name.removeprefix("refit:") for name in names if name.startswith("refit:")) == sorted(off)
    assert replay(about, LEFT, made.steps) == []
    assert not any("sill-trim" in name for name in ids(about, "dash", **LEFT))


def test_the_replay_misses_one_that_was_left_in() -> None:
    about = car("trims: [sill-trim], side: left")
    steps = [step for step in plan(about, "bay", **LEFT).steps if "sill-trim" not in step.id]
    assert [fault.said.code for fault in replay(about, LEFT, steps)] == ["replay/before-part-off"]
