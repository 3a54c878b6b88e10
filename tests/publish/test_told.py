"""Cautions that a run of steps has in common are told in full once: in the plan, and by the page's script in the same way."""

import json
import re
from pathlib import Path

from in_node import called
from making import record
from undertrim.derive.jobs import wanted
from undertrim.publish.facts import told
from undertrim.publish.facts.visit import visit
from undertrim.publish.terminal.plan import plan_text
from undertrim.record.store import Workspace

WORKSPACE = Workspace.holding(Path(__file__))
SCRIPT = WORKSPACE.root / "site_overrides" / "assets" / "undertrim" / "visit-steps.js"

HOT = {"signal": "WARNING", "hazard": "Hot.", "consequence": "Burns.", "avoid": "Wait.", "when": ""}
COLD = {**HOT, "hazard": "Cold."}
LIVE = {**HOT, "signal": "DANGER"}
STEPS = [{"cautions": list(each)} for each in ((HOT,), (HOT, COLD), (COLD, LIVE), (LIVE,), (), (COLD,), (HOT, COLD))]
AT = [(0,), (1, 0), (2, 0), (0,), (), (0,), (0, 6)]


def test_a_caution_is_in_full_at_the_first_step_of_a_run() -> None:
    assert list(told.told_at(STEPS)) == AT


def test_the_script_cuts_the_same_short(node: str) -> None:
    found = re.search(
        r"^export (function toldBefore\(.*?\n}\n)", SCRIPT.read_text("utf-8"), flags=re.DOTALL | re.MULTILINE
    )
    assert found
    boxes = [
        [{"words": json.dumps(item), "danger": item["signal"] == "DANGER"} for item in step["cautions"]]
        for step in STEPS
    ]  # fmt: skip
    program = f"""
        var cautions = {json.dumps(boxes)};
        {found[1]}
        console.log(JSON.stringify(toldBefore(cautions.map(function (_, number) {{ return number; }}))));
    """
    assert json.loads(called(node, program)) == [list(each) for each in AT]


def test_the_plan_tells_once_what_is_beside_every_step() -> None:
    about = record("""
        areas: {dash: {restraints: [Knee airbag]}}
        parts: {trim: {area: dash}, radio: {area: dash, replaced: yes}}
        openings: {dash: {behind: [trim, radio], area: dash}}
    """)
    text = " ".join(plan_text(visit(about, "a/b", wanted(about, ["dash"]), {})).split())
    assert text.count("Beside this work: Knee airbag.") > text.count("Keep levers, blades and heat clear of it") == 2
    first = re.search(r"(\d+)\. Take off", text)
    assert first
    assert f"Beside this work: Knee airbag. In full before step {first[1]}." in text


def test_plugs_that_are_tried_in_one_way_say_it_once() -> None:
    about = record("""
        parts:
          amp:
            tethers:
              front: {name: Front plug, kind: plug, serves: [sound]}
              rear: {name: Rear plug, kind: plug, serves: [sound]}
              lamp: {name: Lamp plug, kind: plug, serves: [lamps]}
          radio: {after: [amp], replaced: yes}
        openings: {dash: {behind: [radio]}}
    """)
    steps = visit(about, "a/b", wanted(about, ["dash"]), {})["steps"]
    said = [line["how"] for item in steps if item["id"] == "try:amp" for line in item["tethers"]]
    assert said == ["", "Play something. Listen to every speaker.", "See that the lamp or the lit switch lights and goes out."]  # fmt: skip
