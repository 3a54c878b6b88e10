"""What needs the battery on or off, and what the steps say of it."""

import pytest

from making import at_work, record, step
from making import plan as planned
from undertrim.derive.procedure import states
from undertrim.record.model import Part, Tether

DOOR = """
    openings:
      door: {behind: [panel]}
"""


def test_whatever_needs_the_battery_on_comes_before_it_goes_off() -> None:
    about = record(
        """
        preps:
          battery: {sets: {battery: off}, needs: {ignition: off}}
        parts:
          panel: {needs: {glass: up}}
          lid: {needs: {battery: on}}
          seat-base: {needs: {seat: forward}, after: [lid]}
        openings:
          door: {behind: [panel]}
          floor: {behind: [seat-base]}
        """
    )
    names = at_work(about, "floor", "door")
    off = names.index("prepare:battery")
    for early in ("prepare:usual:glass-up", "prepare:usual:seat-forward", "remove:lid"):
        assert names.index(early) < off
    assert off < names.index("remove:panel")


@pytest.mark.parametrize(
    ("tether", "needs"),
    [
        (Tether("t", "Plug", "plug"), {"battery": "off"}),
        (Tether("t", "Antenna", "coax"), {"battery": "off"}),
        (Tether("t", "Lamp", "plug", then="leave"), {}),
        (Tether("t", "Lamp", "plug", circuit="restraint", then="leave"), {"battery": "off"}),
        (Tether("t", "Main", "plug", circuit="high-voltage", then="leave"), {"battery": "off"}),
        (Tether("t", "Cable", "cable"), {}),
        (Tether("t", "Strap", "strap"), {}),
    ],
)
def test_undoing_wiring_or_moving_restraint_wiring_needs_the_battery_off(tether: Tether, needs: dict[str, str]) -> None:
    assert states.needs_of(Part("panel", "Panel", "lift", tethers={"t": tether})) == needs


def test_what_a_part_says_itself_goes_before_what_follows_from_its_tethers() -> None:
    plug = {"t": Tether("t", "Plug", "plug")}
    assert states.needs_of(Part("panel", "Panel", "lift", tethers=plug, needs={"battery": "on"})) == {"battery": "on"}


def test_the_steps_carry_the_state_of_battery_and_ignition() -> None:
    about = record("parts: {panel: {needs: {glass: up}, replaced: yes}}", DOOR)
    made = planned(about, "door")
    assert [step(made, name).state for name in ("prepare:usual:glass-up", "prepare:usual:battery-off")] == [
        {"battery": "on", "ignition": "off"},
        {"battery": "off", "ignition": "off"},
    ]
    assert step(made, "remove:panel").state["battery"] == "off"
    assert step(made, "restore:usual:battery-off").state["battery"] == "on"
    assert step(made, "test:door:sound").state == {"battery": "on", "ignition": "on"}
    assert step(made, "power:off").state["ignition"] == "off"
