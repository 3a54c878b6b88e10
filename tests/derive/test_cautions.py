"""Each usual caution comes with what triggers it, and stands on the step it guards."""

# Long because each usual caution has a small record that brings it in, and one test needs them all.

import textwrap

import pytest

from making import plan, record, step
from undertrim.derive.procedure import cautions
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import VehicleRecord
from undertrim.resources import table
from undertrim.words import say


def triggers(item: Step) -> list[str]:
    """Which usual cautions a step carries, by what they say to do: a hazard may name what is there."""
    usual = {cautions.usual(entry["on"]).avoid: entry["on"] for entry in table("cautions")["caution"].values()}
    return [usual[found.avoid] for found in item.cautions if found.avoid in usual]


def on(about: VehicleRecord, *jobs: str, **car: str) -> dict[str, list[str]]:
    """The usual cautions by step, for the steps that have any."""
    return {item.id: found for item in plan(about, *jobs, **car).steps if (found := triggers(item))}


LAMP = """
    parts:
      vent-trim:
        tethers: {lamp: {name: Passenger airbag lamp, kind: plug, circuit: restraint, then: THEN}}
      radio: {replaced: yes, after: [vent-trim]}
    openings:
      dash: {behind: [radio]}
"""


@pytest.mark.parametrize("then", ["leave", "rejoin"])
def test_restraint_wiring_is_warned_of_before_the_part_is_touched_and_before_power(then: str) -> None:
    found = on(record(LAMP.replace("THEN", then)), "dash")
    assert found["remove:vent-trim"] == ["restraint"]
    assert found["refit:vent-trim"] == ["restraint"]
    assert found["power:on"] == ["power-on"]
    assert "remove:radio" not in found


def test_a_visit_without_restraint_wiring_powers_up_without_that_warning() -> None:
    about = record("""
        parts:
          radio: {replaced: yes, tethers: {main: {name: Main, kind: plug}}}
        openings:
          dash: {behind: [radio]}
    """)
    assert "power:on" not in on(about, "dash")


def test_restraint_wiring_of_other_cars_is_not_warned_of() -> None:
    about = record("""
        variants:
          seats: {ask: Which one, choices: {plain: {label: Plain}, bags: {label: Bags}}}
        parts:
          trim: {tethers: {bag: {name: Bag, kind: plug, circuit: restraint, then: leave, when: {seats: bags}}}}
        openings:
          dash: {behind: [trim]}
    """)
    assert "remove:trim" in on(about, "dash", seats="bags")
    assert "remove:trim" not in on(about, "dash", seats="plain")


def test_battery_and_wait() -> None:
    text = """
        restraint: {wait: WAIT}
        preps:
          battery: {sets: {battery: off}, restore: Join it.}
          cool: {sets: {bonnet: open}, wait: {time: unknown, why: Hot engine}}
        parts:
          radio: {replaced: yes, needs: {bonnet: open}}
        openings:
          dash: {behind: [radio]}
    """
    known, unknown = (on(record(text.replace("WAIT", wait)), "dash") for wait in ("3 min", "unknown"))
    assert known == {"prepare:battery": ["battery"], "wait:battery": ["wait-known"], "restore:battery": ["battery"]}
    assert unknown["wait:battery"] == ["wait-unknown"]
    assert "wait:cool" not in unknown  # its wait is for something else


SENSOR = """
    parts:
      panel:
    openings:
      door: {behind: [panel], area: AREA, crash_sensor: SENSOR}
"""


@pytest.mark.parametrize(
    ("sensor", "area", "expected"),
    [
        ("yes", "front-door", "door-sensor"),
        ("unknown", "rear-door", "door-sensor-unknown"),
        ("no", "front-door", None),
    ],
)
def test_a_door_that_fires_airbags(sensor: str, area: str, expected: str | None) -> None:
    found = on(record(SENSOR.replace("SENSOR", sensor).replace("AREA", area)), "door")
    steps = [f"install:door:{name}" for name in ("offer", "join", "fasten")]
    assert [found.get(name, [None]) for name in steps] == [[expected]] * 3
    assert not [name for name in found if name.startswith("test:")]


def test_a_door_nobody_looked_at_counts_as_unknown_and_the_dash_does_not() -> None:
    about = record("""
        parts:
          panel:
          grille:
        openings:
          door: {behind: [panel], area: rear-door}
          top: {behind: [grille], area: dash}
    """)
    assert on(about, "door")["install:door:offer"] == ["door-sensor-unknown"]
    assert "install:top:offer" not in on(about, "top")


VOLTAGE = """
    vehicle: {high_voltage: VEHICLE}
    areas:
      console: {high_voltage: near}
      dash: {high_voltage: clear}
    preps:
      battery: {sets: {battery: off}, area: console, held_by: [{nut: hex 10 mm, count: 1}], restore: Join it.}
    parts:
      tunnel: {area: console}
      knob: {area: console, high_voltage: clear}
      beam: {area: dash, high_voltage: near}
      trim: {area: dash}
      liner: {}
    openings:
      dash: {behind: [tunnel, knob, beam, trim, liner], area: console}
"""


def test_high_voltage_is_warned_of_by_area_and_by_the_parts_own_word() -> None:
    found = on(record(VOLTAGE.replace("VEHICLE", "yes")), "dash")
    assert {name.removeprefix("remove:"): kinds for name, kinds in found.items() if name.startswith("remove")} == {
        "tunnel": ["high-voltage-near"],
        "beam": ["high-voltage-near"],
        "liner": ["high-voltage-unknown"],
    }
    assert found["refit:tunnel"] == found["install:dash:compare"] == ["high-voltage-near"]
    assert found["prepare:battery"] == ["battery", "high-voltage-near"]


def test_a_vehicle_without_high_voltage_is_clear_everywhere() -> None:
    assert "remove:tunnel" not in on(record(VOLTAGE.replace("VEHICLE", "no")), "dash")


def test_whether_there_is_high_voltage_at_all_may_be_unknown() -> None:
    found = on(record(VOLTAGE.replace("VEHICLE", "unknown")), "dash")
    assert found["remove:liner"] == ["high-voltage-unknown"]
    assert found["remove:tunnel"] == ["high-voltage-near"]


CURTAIN = """
    areas:
      pillar: {restraints: [Curtain airbag, Belt reel]}
      boot: {high_voltage: clear}
    preps:
      reel: {sets: {seat: forward}, area: pillar, held_by: [{bolt: hex 10 mm, count: 1}], restore: Put it back.}
      look: {sets: {bonnet: open}, area: pillar, restore: Shut it.}
    parts:
      trim: {area: pillar, needs: {seat: forward, bonnet: open}}
      cap: {goes_to: pod, area: boot}
      lid: {area: boot}
      bare: {}
    openings:
      pod: {behind: [trim, cap, lid, bare], area: pillar}
      shelf: {behind: [lid]}
"""


def test_airbags_of_an_area_are_warned_of_in_every_step_of_the_hands_there() -> None:
    """Taking off, moving over to it, fitting, putting back; what has no area is where the opening behind it is."""
    found = on(record(CURTAIN), "pod")
    warned = {name for name, kinds in found.items() if "near-restraint" in kinds}
    assert warned == {
        "prepare:reel", "restore:reel", "remove:trim", "refit:trim", "remove:bare", "refit:bare", "remove:cap", "move:cap",
        *(f"install:pod:{name}" for name in ("offer", "join", "fasten")),
    }  # fmt: skip
    hazards = {say(item.hazard) for item in step(plan(record(CURTAIN), "pod"), "remove:trim").cautions}
    assert hazards == {"Beside this work: Curtain airbag; Belt reel."}
    assert not any("near-restraint" in kinds for kinds in on(record(CURTAIN), "shelf").values())


@pytest.mark.parametrize("word", ["none", "unknown"])
def test_a_word_in_the_place_of_names_is_no_airbag(word: str) -> None:
    found = record(CURTAIN.replace("[Curtain airbag, Belt reel]", f"[{word}]"))
    assert found.areas["pillar"].restraints_blank == word
    assert not any("near-restraint" in kinds for kinds in on(found, "pod").values())


MILD = """
    vehicle: {{forty_eight_volt: {}}}
    areas: {{console: {{forty_eight_volt: yes}}, boot: {{forty_eight_volt: unknown}}, dash: {{forty_eight_volt: no}}}}
    preps:
      battery: {{sets: {{battery: off}}, area: boot, restore: Join it.}}
    parts:
      tunnel: {{area: console}}
      mat: {{area: boot}}
      trim: {{area: dash}}
      pipe: {{area: dash, tethers: {{cable: {{name: Cable, kind: cable, circuit: 48-volt, then: leave}}}}}}
      radio: {{area: dash, after: [battery]}}
    openings:
      dash: {{behind: [tunnel, trim, mat, pipe, radio], area: dash}}
"""


@pytest.mark.parametrize(
    ("vehicle", "warned"),
    [
        # Where nobody says that there is none, what may have parts of it counts; nothing switches it off with the 12 V battery
        ("yes", {"tunnel", "mat", "pipe", "battery"}),
        ("unknown", {"tunnel", "pipe"}),
    ],
)
def test_a_48_volt_net_is_warned_of_where_its_parts_are_and_at_the_battery(vehicle: str, warned: set[str]) -> None:
    found = on(record(MILD.format(vehicle)), "dash")
    assert {name.partition(":")[2] for name, kinds in found.items() if "forty-eight-volt" in kinds} == warned


def test_a_48_volt_net_that_may_be_anywhere_is_warned_of_everywhere() -> None:
    text = (
        MILD.format("yes")
        .replace("console: {forty_eight_volt: yes}, ", "")
        .replace("boot: {forty_eight_volt: unknown}, ", "")
    )
    found = on(record(text), "dash")
    assert {"remove:trim", "install:dash:compare", "refit:tunnel"} <= {name for name, kinds in found.items() if "forty-eight-volt" in kinds}  # fmt: skip


def test_own_cautions_follow_the_usual_ones_in_the_cars_they_are_for() -> None:
    about = record("""
        variants:
          wheel: {ask: Which one, choices: {one: {label: One}, two: {label: Two}}}
        parts:
          trim:
            tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: leave}}
            cautions: [{signal: NOTICE, when: {wheel: two}, hazard: Edge., consequence: It breaks., avoid: Go slowly.}]
        openings:
          dash:
            behind: [trim]
            cautions: [{signal: CAUTION, hazard: Sharp beam., consequence: Cut hands., avoid: Wear gloves.}]
    """)
    one, two = (step(plan(about, "dash", wheel=which), "remove:trim") for which in ("one", "two"))
    assert [found.signal for found in one.cautions] == ["WARNING"]
    assert [found.signal for found in two.cautions] == ["WARNING", "NOTICE"]
    assert [found.hazard for found in step(plan(about, "dash", wheel="one"), "install:dash:compare").cautions] == [
        "Sharp beam."
    ]


RIVETS = """
parts: {panel: {held_by: [{rivet: blind, count: 3}]}}
openings: {door: {behind: [panel]}}
"""


def test_drilling_rivets_out_has_its_caution_and_putting_new_ones_in_has_none() -> None:
    found = on(record(RIVETS), "door")
    assert found["remove:panel"] == ["drilling"]
    assert "refit:panel" not in found


BAY = """
parts: {{cover: }}
openings: {{bay: {{kind: amplifier, behind: [cover], restraint_near: {}}}}}
"""


def test_every_usual_caution_can_be_brought_in() -> None:
    """No entry of the table is dead, none is missing: the words used in the code are those of the table."""
    seen: set[str] = set()
    sensor = "preps: {battery: {sets: {battery: off}, sensor: yes}}\nparts: {radio: {replaced: yes}}\nopenings: {dash: {behind: [radio]}}"
    seat = "parts: {seat: {held_by: [{bolt: T50, count: 4, role: seat}]}}\nopenings: {floor: {behind: [seat]}}"
    for text, job in (
        (sensor, "dash"),
        (seat, "floor"),
        (LAMP.replace("THEN", "leave"), "dash"),
        (SENSOR.replace("SENSOR", "yes").replace("AREA", "front-door"), "door"),
        (SENSOR.replace("SENSOR", "unknown").replace("AREA", "front-door"), "door"),
        (VOLTAGE.replace("VEHICLE", "yes"), "dash"),
        (CURTAIN, "pod"),
        (MILD.format("yes"), "dash"),
        ("restraint: {wait: 3 min}\n" + textwrap.dedent(VOLTAGE).replace("VEHICLE", "yes"), "dash"),
        (RIVETS, "door"),
        (BAY.format("yes"), "bay"),
        (BAY.format("unknown"), "bay"),
    ):
        seen.update(kind for kinds in on(record(text), job).values() for kind in kinds)
    assert seen == {entry["on"] for entry in table("cautions")["caution"].values()}


@pytest.mark.parametrize(
    ("near", "wanted"), [("yes", ["restraint-module"]), ("unknown", ["restraint-module-unknown"]), ("no", [])]
)
def test_a_unit_of_the_restraints_at_an_amplifier_place_is_warned_of_and_unknown_is_no_no(
    near: str, wanted: list[str]
) -> None:
    found = on(record(BAY.format(near)), "bay")
    assert [found.get(f"install:bay:{entry}", []) for entry in ("offer", "ground", "fuse")] == [wanted] * 3


def test_what_nobody_said_of_restraint_units_is_unknown() -> None:
    found = on(record("parts: {cover: }\nopenings: {bay: {kind: amplifier, behind: [cover]}}\n"), "bay")
    assert found["install:bay:offer"] == ["restraint-module-unknown"]


RUN = """
    areas:
      pillar: {restraints: [Belt reel at the foot of the pillar]}
      side: {restraints: [Side airbag]}
    parts:
      cover: {area: boot}
      sill: {area: side}
    openings:
      bay: {kind: amplifier, behind: [cover], run: to-boot, restraint_near: no, space: {width: 300 mm, height: 70 mm, depth: 200 mm}}
    runs:
      to-boot: {name: To the boot, from: Battery, to: Boot, length: 5 m, trims: [sill], passes: [{where: Sill, through: channel, area: pillar}]}
"""


def test_laying_cable_past_restraint_parts_is_warned_of_in_its_own_step() -> None:
    steps = {step.id: step for step in plan(record(RUN), "bay").steps}
    said = [say(one.hazard) for one in steps["install:bay:cable"].cautions]
    assert said == ["Beside this work: Belt reel at the foot of the pillar; Side airbag."]
    assert not steps["install:bay:offer"].cautions


def test_a_cable_that_passes_none_is_not_warned_of() -> None:
    free = RUN.replace("area: pillar", "area: boot").replace("{area: side}", "{area: boot}")
    assert "install:bay:cable" not in on(record(free), "bay")
