"""What a whole visit comes to: tools, fasteners, purchases, time."""

from collections import Counter
from collections.abc import Sequence
from typing import Any

from undertrim.derive.procedure import tally
from undertrim.derive.procedure.steps import Step
from undertrim.publish.facts import steps as facts
from undertrim.publish.facts import words

Data = dict[str, Any]


def totals(steps: Sequence[Step]) -> Data:
    """Totals over the steps of one visit."""
    spent = tally.time(steps)
    return {
        "tools": [tool(item) for item in tally.tools(steps)],
        "fasteners": [facts.count(item) for item in tally.fasteners(steps)],
        "buy": [facts.purchase(item) for item in tally.purchases(steps)],
        "minutes": round(spent.minutes, 2),
        "untimed": spent.untimed,
        "waits": list(spent.waits),
        "time_text": time_text(spent),
    }


def tool(item: tally.Tool) -> Data:
    """A tool with what will do in its place."""
    return {"name": item.name, "instead": list(item.instead)}


def time_text(spent: tally.Time) -> str:
    """The time in words, with what it leaves out."""
    parts = [f"{words.minutes(spent.minutes)} of taking apart and refitting"]
    if spent.untimed:
        parts.append(f"{spent.untimed} step{'' if spent.untimed == 1 else 's'} without a recorded time")
    waits = Counter(
        f"of {words.minutes(wait / 60)}" if wait is not None else "nobody has recorded" for wait in spent.waits
    )
    parts += [f"{'a wait' if number == 1 else f'{number} waits'} {said}" for said, number in waits.items()]
    return ", plus ".join(parts) + "; fitting and testing not counted"
