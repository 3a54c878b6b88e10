"""Steps of a tweeter: its high-pass before its leads, its test with all that sounds joined, and the cautions of its area."""

import pytest

from making import ids, plan, record, step
from undertrim.words import say

CAR = """
areas: {pillar: {restraints: [Curtain airbag along the roof edge]}}
restraint: {wait: 3 min, source: e1}
preps:
  battery: {sets: {battery: off}}
parts:
  amplifier: {tethers: {out: {name: Speaker plug, kind: plug, serves: [sound]}}}
  trim: {area: pillar, after: [amplifier]}
  unit: {after: [trim], replaced: yes}
openings:
  sail: {kind: tweeter, area: pillar, behind: [unit], mount: %s, feed: %s}
"""


def steps(mount: str = "flush", feed: str = "parallel") -> list[str]:
    return ids(record(CAR % (mount, feed)), "sail")


@pytest.mark.parametrize("feed", ["parallel", "own-filter", "unknown"])
def test_a_high_pass_goes_in_before_the_leads_are_joined(feed: str) -> None:
    names = steps(feed=feed)
    assert names.index("install:sail:filter") < names.index("install:sail:join") < names.index("test:sail:sound")


def test_behind_a_crossover_of_the_car_none_is_put_in() -> None:
    assert "install:sail:filter" not in steps(feed="crossover")


def test_only_an_angled_one_is_aimed() -> None:
    assert "install:sail:angled" in steps("angled")
    assert "install:sail:angled" not in steps()


def test_the_amplifier_is_joined_and_on_when_it_is_tested() -> None:
    made = plan(record(CAR % ("flush", "parallel")), "sail")
    names = [one.id for one in made.steps]
    tested = step(made, "test:sail:sound")
    assert names.index("join:amplifier") < names.index(tested.id) < names.index("refit:amplifier")
    assert tested.needs == {"battery": "on", "ignition": "on"}
    assert list(tested.uses) == ["sound"]


def test_a_pillar_with_a_curtain_airbag_brings_its_caution() -> None:
    made = plan(record(CAR % ("flush", "parallel")), "sail")
    told = {str(say(one.hazard)) for one in step(made, "install:sail:offer").cautions}
    assert any("Curtain airbag along the roof edge" in hazard for hazard in told)
