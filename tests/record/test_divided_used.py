"""What is made of facts that differ between cars: plans, jobs, gear and stamps have each its own."""

from pathlib import Path

import pytest

from differing import BODY, HEAD, PATH, changed, record, whole
from undertrim.check import runner
from undertrim.derive import jobs
from undertrim.derive.evidence.fingerprint import fingerprints
from undertrim.derive.fit.stock import read as read_stock
from undertrim.derive.procedure.planning import Planner
from undertrim.derive.wiring.contacts import contacts
from undertrim.record.store import Workspace

TWICE = """parts:
  bezel-map:
    name: Bezel
    area: dash
    release: pull
    held_by: {clip: push, count: 4}
    takes: 2 min
    source: e2
    when: {radio: map}
  bezel-plain:
    name: Bezel
    area: dash
    release: pull
    held_by: {clip: push, count: 6}
    takes: 1 min
    source: e2
    when: {radio: plain}
  radio:
    area: dash
    after: [bezel-map, bezel-plain]
    release: unscrew
    held_by: [{screw: T20, count: 4, under: bezel-map, when: {radio: map}}, {screw: T20, count: 4, under: bezel-plain, when: {radio: plain}}]
    tethers: {main: [Main plug, plug, sound]}
    replaced: yes
    takes: 3 min
    source: e2
openings:
  dash-map:
    name: Dash (Map radio)
    kind: receiver
    behind: radio
    face: {width: 182 mm, height: 146 mm}
    kit: needed
    depth: {clear: 170 mm, datum: face, obstruction: plastic, to: Duct}
    source: e1
    when: {radio: map}
    not_in: {radio: plain}
  dash-plain:
    name: Dash (Plain radio)
    kind: receiver
    behind: radio
    face: {width: 182 mm, height: 112 mm}
    kit: needed
    depth: {clear: 170 mm, datum: face, obstruction: plastic, to: Duct}
    source: e1
    when: {radio: plain}
    not_in: {radio: map}
"""


def test_it_is_what_two_blocks_say() -> None:
    once = whole(HEAD + BODY).data
    twice = whole(HEAD + TWICE).data
    assert once["parts"] == twice["parts"]
    assert once["openings"] == twice["openings"]


@pytest.mark.parametrize("typed", ["[Map radio, A MAP key]", "Map radio"])
def test_a_form_is_called_by_the_label_however_that_is_typed(typed: str) -> None:
    made = whole(changed("{label: Map radio, tell: A MAP key}", typed)).data["openings"]
    assert [made[name]["name"] for name in made] == ["Dash (Map radio)", "Dash (Plain radio)"]


def test_an_order_of_variants_gives_the_same_ids_whatever_the_order_of_the_values() -> None:
    turned = changed(
        "[{when: {radio: map}, is: 2 min}, {when: {radio: plain}, is: 1 min}]",
        "[{when: {radio: plain}, is: 1 min}, {when: {radio: map}, is: 2 min}]",
    )
    assert whole(turned).data == whole(HEAD + BODY).data


def test_a_plan_for_each_car_has_its_own_clips_and_time() -> None:
    made = record(HEAD + BODY)
    for radio, clips, minutes in (("map", 4, 2), ("plain", 6, 1)):
        (target,) = jobs.wanted(made, ["dash"], {"radio": radio})
        assert target.job == f"dash-{radio}"
        plan = Planner(made).plan([target], {"radio": radio})
        (step,) = [
            step for step in plan.steps if step.kind == "remove" and step.node and step.node.thing.name == "Bezel"
        ]
        assert ([line.count for line in step.fasteners], step.minutes) == ([clips], minutes)


def test_one_job_is_that_of_every_kind_of_car_that_is_left_open() -> None:
    made = record(HEAD + BODY)
    assert [target.job for target in jobs.wanted(made, ["dash"])] == ["dash-map", "dash-plain"]
    assert [one.id for one in jobs.openings(made, "dash")] == ["dash-map", "dash-plain"]
    assert {one.written for one in made.openings.values()} == {"dash"}


HARNESS = """format: 1
gear:
  kind: harness
  maker: Skerrowe
  model: H-B4
  suits: [{vehicle: brindleway/otter-2014-2018, opening: dash}]
  plugs: {main: {1: {function: battery-feed, colour: yellow}, 3: {function: ground, colour: black}}}
"""


def test_gear_names_an_opening_and_a_plug_by_the_id_they_are_written_under(tmp_path: Path) -> None:
    vehicle = tmp_path / PATH
    harness = tmp_path / "records/gear/harnesses/skerrowe-h-b4.yaml"
    for path, text in ((vehicle, HEAD + BODY), (harness, HARNESS)):
        path.parent.mkdir(parents=True)
        path.write_text(text)
    place = Workspace(tmp_path)
    assert [problem.said.code for problem in runner.check(place).problems] == []
    made = record(HEAD + BODY)
    (item,) = read_stock(place, lambda _: True).items
    for sound in ("amplified", "bare"):
        held = contacts(made, {"sound": sound}, [item])
        assert {contact.plug for contact in held} == {f"main-{sound}"}
    for opening in made.openings.values():
        assert item.place("brindleway/otter-2014-2018", opening.written, {}) is not None


def test_a_stamp_knows_each_form() -> None:
    prints = fingerprints(whole(HEAD + BODY).data)
    assert {"openings/dash-map", "openings/dash-plain", "parts/bezel-map", "connectors/main-bare"} <= prints.keys()
    higher = fingerprints(whole(changed("height: 112 mm}", "height: 113 mm}")).data)
    assert {name for name in prints if prints[name] != higher[name]} == {"openings/dash-plain"}
