"""Different values of one state are had in turn, in the order in which the parts wait for each other, whatever the file's order."""

import pytest

from making import plan, record
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.simulation import replay

SEATS = """
    parts:
      front: {{needs: {{seat: {first}}}}}
      rear: {{needs: {{seat: {second}}}, after: [front]}}
    openings:
      dash: {{behind: [rear]}}
"""


def opened(text: str) -> list[str]:
    """What is set and taken off, in order; the whole procedure is safe by replay."""
    made = record(text)
    visit = plan(made, "dash")
    assert replay(made, {}, visit.steps) == []
    return [step.id for step in visit.steps if step.kind in ("prepare", "remove")]


@pytest.mark.parametrize(("first", "second"), [("forward", "rearward"), ("rearward", "forward")])
def test_the_part_that_is_waited_for_has_its_turn_first(first: str, second: str) -> None:
    steps = opened(SEATS.format(first=first, second=second))
    turns = [f"prepare:usual:seat-{first}", "remove:front", f"prepare:usual:seat-{second}", "remove:rear"]
    assert [step for step in steps if step in turns] == turns


LOCK = """
    parts:
      lock-trim: {needs: {ignition: on}}
      radio: {after: [lock-trim], tethers: {main: {name: Plug, kind: plug}}, replaced: yes}
    openings:
      dash: {behind: [radio]}
"""


def test_the_ignition_is_switched_off_again_before_the_battery() -> None:
    steps = opened(LOCK)
    turns = ["prepare:usual:ignition-on", "remove:lock-trim", "prepare:usual:ignition-off", "prepare:usual:battery-off"]
    assert [step for step in steps if step in turns] == turns


def test_what_is_set_back_on_the_way_is_not_undone_again() -> None:
    assert "restore:usual:ignition-on" not in [step.id for step in plan(record(LOCK), "dash").steps]


def test_a_state_that_must_go_there_and_back_is_refused() -> None:
    there_and_back = """
        parts:
          one: {needs: {seat: forward}}
          two: {needs: {seat: rearward}, after: [one]}
          three: {needs: {seat: forward}, after: [two]}
        openings:
          dash: {behind: [three]}
    """
    with pytest.raises(Unreachable):
        plan(record(there_and_back), "dash")
