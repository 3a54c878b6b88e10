"""The time that the page's script writes for the steps it shows is said as the program says it."""

import json
import re

import pytest

from in_node import called, speaking
from undertrim.derive.procedure import tally
from undertrim.publish.facts.totals import time_text
from undertrim.publish.web import scripts
from undertrim.words import say

SCRIPT = (scripts.folder() / "visit-totals.js").read_text("utf-8")


def shown(node: str, spent: tally.Time) -> str:
    """What `timeText` writes for steps that come to these times, run in Node."""
    functions = [re.search(rf"^(?:export )?function {name}\(.*?\n}}\n", SCRIPT, re.DOTALL | re.MULTILINE) for name in ("minutes", "spent", "timeText")]  # fmt: skip
    steps = [{"section": "remove", "minutes": spent.minutes, "untimed": spent.untimed, "wait": None}]
    steps += [{"section": "before", "minutes": None, "untimed": 0, "wait": {"seconds": wait}} for wait in spent.waits]
    found = "".join(function[0].removeprefix("export ") for function in functions if function)
    return str(
        json.loads(
            called(
                node,
                f"{speaking()}{found}const time = spent({json.dumps(steps)});console.log(JSON.stringify(timeText(time, time.minutes)));",
            )
        )
    )


@pytest.mark.parametrize(
    "spent",
    [
        tally.Time(0, 0, ()),
        tally.Time(0.75, 1, (120.0,)),
        tally.Time(80, 2, (120.0, 120.0, 3600.0)),
        tally.Time(61.5, 0, (None,)),
        tally.Time(125.25, 3, (None, 90.0, None)),
    ],
    ids=lambda spent: f"{spent.minutes} min",
)
def test_the_script_says_the_time_as_the_program_does(node: str, spent: tally.Time) -> None:
    assert shown(node, spent) == say(time_text(spent))
