"""What a whole visit comes to: tools, fasteners, purchases, time."""

from collections import Counter
from collections.abc import Sequence
from typing import Any

from undertrim.derive.procedure import tally
from undertrim.derive.procedure.steps import Step
from undertrim.derive.visit import totals as derived
from undertrim.publish.facts import steps as facts
from undertrim.publish.facts import words
from undertrim.words import Value, message

Data = dict[str, Any]


def totals(steps: Sequence[Step]) -> Data:
    """Totals over the steps of one visit."""
    return shown(derived.of(steps))


def shown(made: derived.Totals) -> Data:
    """The totals of a visit."""
    spent = made.time
    return {
        "tools": [tool(item) for item in made.tools],
        "fasteners": [facts.count(item) for item in made.fasteners],
        "buy": [facts.purchase(item) for item in made.buy],
        "minutes": round(spent.minutes, 2),
        "untimed": spent.untimed,
        "waits": list(spent.waits),
        "time_text": time_text(spent),
    }


def tool(item: tally.Tool) -> Data:
    """A tool with what will do in its place."""
    return {"name": item.name, "instead": list(item.instead)}


def time_text(spent: tally.Time) -> Value:
    """The time, with what it leaves out."""
    work = message("times/work", time=words.minutes(spent.minutes))
    untimed = message("times/untimed", count=spent.untimed) if spent.untimed else ""
    waits = (_waits(wait, number) for wait, number in Counter(spent.waits).items())
    return message("times/whole", parts=words.listed(work, untimed, *waits, joined="comma-plus"))


def _waits(wait: float | None, number: int) -> Value:
    """Waits of one length, in s."""
    if wait is None:
        return message("times/wait-unknown", count=number)
    return message("times/wait", count=number, time=words.minutes(wait / 60))
