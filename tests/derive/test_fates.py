"""What becomes of tethers: at which step they end, in which visits and cars."""

import pytest

from making import ids, plan, record, step
from undertrim.derive import cars
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner, Target
from undertrim.derive.procedure.states import needs
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import replay
from undertrim.record.model import VehicleRecord

SHARED = record("""
    parts:
      amp: {replaced: yes, tethers: {main: {name: Main plug, kind: plug}}}
      cover: {each: [left, right]}
    openings:
      door: {each: [left, right], behind: [amp, cover], crash_sensor: no}
""")
"""One part that makes room for gear at either side: whichever is fitted first takes its plug."""


@pytest.mark.parametrize(
    ("jobs", "ends"),
    [(["door@left"], "door@left"), (["door@right"], "door@right"), (["door@left", "door@right"], "door@left")],
)
def test_a_plug_that_several_openings_may_take_ends_at_the_first_of_the_visit(jobs: list[str], ends: str) -> None:
    made = plan(SHARED, *jobs)
    assert [item.id for item in made.steps if item.tethers][1:] == [f"install:{ends}:plugs:amp"]
    assert replay(SHARED, {"drive-side": "left"}, made.steps) == []


def test_a_page_knows_which_visits_have_which_of_these_steps() -> None:
    made = choices(Planner(SHARED))
    both = made.cars[0].sets["door@left", "door@right"]
    assert {"install:door@left:plugs:amp", "install:door@right:plugs:amp"} <= {item.id for item in made.steps}
    assert "install:door@left:plugs:amp" in both
    assert "install:door@right:plugs:amp" not in both


def test_a_part_that_no_opening_names_has_a_step_of_its_own() -> None:
    about = record("""
        parts:
          bezel: {replaced: yes, tethers: {clock: {name: Clock plug, kind: plug, then: park}}}
          radio: {after: [bezel], replaced: yes, tethers: {main: {name: Main plug, kind: plug}}}
        openings: {dash: {behind: [radio]}}
    """)
    made = plan(about, "dash")
    names = [item.id for item in made.steps]
    assert names.index("install:dash:plugs:bezel") == names.index("install:dash:seat") - 1
    assert [line.act for line in step(made, "install:dash:plugs:bezel").tethers] == ["park"]


WIRED = record("""
    variants: {radio: {ask: Which, choices: {plain: {label: Plain}, map: {label: Map}}}}
    parts:
      map-radio: {when: {radio: map}, replaced: yes, tethers: {usb: {name: USB plug, kind: plug, then: park, when: {drive-side: left}}}}
      plain-radio: {when: {radio: plain}, replaced: yes, tethers: {main: {name: Main plug, kind: plug}}}
      old: {each: [left, right], replaced: yes, tethers: {lead: {name: Lead, kind: plug}}}
    openings:
      dash: {behind: [map-radio, plain-radio]}
      door: {each: [left, right], behind: [old], crash_sensor: no}
""")


def test_a_line_is_for_the_cars_of_its_part_and_of_its_own() -> None:
    lines = step(plan(WIRED, "dash"), "install:dash:seat").tethers
    assert [dict(line.when.clauses) for line in lines] == [
        {"radio": ("map",), "drive-side": ("left",)},
        {"radio": ("plain",)},
    ]
    assert [line.tether.id for line in step(plan(WIRED, "dash", radio="plain"), "install:dash:seat").tethers] == [
        "main"
    ]


def test_each_side_takes_its_own() -> None:
    made = plan(WIRED, "door")
    for side in ("left", "right"):
        assert [line.node and line.node.side for line in step(made, f"install:door@{side}:join").tethers] == [side]


CAR = {"drive-side": "left"}


def test_a_captive_plug_needs_no_battery_off_and_opens_no_restraint() -> None:
    about = record("""
        parts: {bezel: {laid: There, tethers: {lead: {name: Lead, kind: plug, then: goes-with}}}}
        openings: {door: {behind: [bezel], crash_sensor: no}, dash: {behind: [bezel]}}
    """)
    part = step(plan(about, "door"), "remove:bezel").node
    assert part
    assert needs(part.thing) == {}
    lamp = record("""
        restraint: {wait: 3 min}
        parts: {bezel: {laid: There, tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: goes-with, serves: [airbag-lamp]}}}}
        openings: {dash: {behind: [bezel]}}
    """)
    names = ids(lamp, "dash")
    assert names.index("power:on") < names.index("refit:bezel")


def everything(about: VehicleRecord) -> list[Step]:
    wanted = [Target(name, side) for name, item in about.openings.items() for side in item.each or ("",)]
    return list(Planner(about).plan(wanted, cars.assignments(about)[0]).steps)


def test_nothing_is_said_of_what_a_car_has_not() -> None:
    made = everything(WIRED)
    named = {line.tether.id for item in made for line in item.tethers if item.kind == "install"}
    assert named in ({"usb", "lead"}, {"main", "lead"})


def test_a_part_that_makes_room_in_some_cars_goes_back_in_the_others() -> None:
    """A page plans all cars at once: where its opening is missing, the part has no home, and none is made up for it."""
    about = record("""
        variants: {radio: {ask: Which, choices: {plain: {label: Plain}, map: {label: Map}}}}
        parts:
          tray: {replaced: yes, tethers: {lead: {name: Lead, kind: plug}}}
          box: {replaced: yes, after: [tray]}
        openings:
          dash: {behind: [box]}
          shelf: {kind: speaker, behind: [tray], crash_sensor: no, when: {radio: map}}
    """)
    planner = Planner(about)
    steps = planner.plan([Target("dash")], {"radio": "plain", **CAR}).steps
    assert "refit:tray" in [item.id for item in steps]
    assert replay(about, {"radio": "plain", **CAR}, steps) == []
    assert {item.id for item in steps} <= {item.id for item in choices(planner).steps}
