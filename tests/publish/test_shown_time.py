"""The time that the page's script writes for the steps it shows is said as the program says it."""

import pytest

from in_node import Run
from undertrim.derive.procedure import tally
from undertrim.publish.facts.totals import time_text
from undertrim.words import say


def shown(run: Run, spent: tally.Time) -> str:
    """What the script says of steps that come to these times."""
    nothing: dict[str, list[str]] = {"tools": [], "materials": [], "lines": []}
    steps: list[dict[str, object]] = [{"section": "remove", "minutes": spent.minutes, "untimed": spent.untimed, "wait": None, **nothing}]  # fmt: skip
    steps += [{"section": "before", "minutes": None, "untimed": 0, "wait": {"seconds": wait}, **nothing} for wait in spent.waits]  # fmt: skip
    return str(run("(steps) => visit_totals.totals(steps, {}).time", steps, "visit-totals"))


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
def test_the_script_says_the_time_as_the_program_does(run: Run, spent: tally.Time) -> None:
    assert shown(run, spent) == say(time_text(spent))
