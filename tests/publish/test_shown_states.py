"""The state that the page's script writes beside a step is the planner's, for every visit of one car."""

import json
import re
from itertools import combinations
from pathlib import Path

import pytest

from in_node import called, speaking
from undertrim.derive import cars
from undertrim.derive.procedure import running
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.publish.facts.steps import state_words
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

WORKSPACE = Workspace.holding(Path(__file__))
SCRIPT = WORKSPACE.root / "site_overrides" / "assets" / "undertrim" / "visit-steps.js"


def shown(node: str, turns: list[list[running.Turn]], visits: list[list[int]]) -> list[list[str]]:
    """What `showStates` writes, run in Node."""
    script = SCRIPT.read_text("utf-8")
    found = re.search(r"^export (function showStates\(.*?\n}\n)", script, flags=re.DOTALL | re.MULTILINE)
    put = re.search(r"^function put\(.*}\n", script, flags=re.MULTILINE)
    assert found
    assert put
    program = f"""
        {speaking()}
        var data = {{ steps: {json.dumps([{"turns": item} for item in turns])} }};
        var stated = data.steps.map(function () {{ return {{ line: {{}}, words: "as printed" }}; }});
        {put[0]}
        {found[1]}
        console.log(JSON.stringify({json.dumps(visits)}.map(function (numbers) {{
          showStates(numbers, true);
          return numbers.map(function (number) {{ return stated[number].line.textContent; }});
        }})));
    """
    words: list[list[str]] = json.loads(called(node, program))
    return words


@pytest.mark.parametrize("name", ["harrowby/sedge-2016-2021", "kelbrook/finch-2014-2018", "orlock/bramble-2019-2023"])
def test_the_script_writes_what_the_planner_says(node: str, name: str) -> None:
    about = WORKSPACE.load(WORKSPACE.records / "vehicles" / f"{name}.yaml").record
    assert isinstance(about, VehicleRecord)
    planner, every = Planner(about), targets(about)
    made = choices(planner)
    place = {step.id: number for number, step in enumerate(made.steps)}
    car = cars.assignments(about)[0]
    plans = [planner.plan(chosen, car).steps for chosen in (*combinations(every, 1), *combinations(every, 2), every)]
    turns = [list(running.turns(step)) for step in made.steps]
    expected = [[say(state_words(step.state)) for step in steps] for steps in plans]
    assert shown(node, turns, [[place[step.id] for step in steps] for steps in plans]) == expected
    assert any("partly off" in words for each in expected for words in each) == name.startswith("harrowby")
