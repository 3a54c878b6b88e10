"""Steps about no part: the ignition, and what is to do before the battery goes off or once it is back."""

from collections.abc import Iterator, Mapping

from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, Todo, VehicleRecord
from undertrim.words import message

LONGEST_TITLE = 90
"""A thing to do that is no longer than this is its own title."""


def power(way: str, section: str = "test") -> Iterator[Step]:
    """Switch the ignition `on` for the tests, or `off` after them; in the section `try` for the last time."""
    name = f"power:{way}" if section == "test" else f"power:{way}:{section}"
    yield Step(
        name,
        "power",
        section,
        message(f"steps/{section}-power-{way}"),
        (message(f"steps/{section}-power-{way}-how"),),
        detail=way,
    )


def todos(record: VehicleRecord, car: Assignment, which: str) -> Iterator[Step]:
    """What to do before the battery goes off (`before`) or once it is back (`after`); unknown is said, not left out."""
    known = record.after_battery
    entries: Mapping[str, Todo] = getattr(known, which) if known else {}
    for entry in entries.values():
        if entry.when.holds(car):
            short = len(entry.do) <= LONGEST_TITLE
            title, text = (entry.do, ()) if short else (message(f"steps/todo-{which}"), (entry.do,))
            yield Step(f"{which}:{entry.id}", "todo", which, title, text, detail=entry.id)
    if not entries and not (known and which in known.checked_none):
        how = (message(f"steps/unknown-{which}"),)
        yield Step(f"{which}:unknown", "todo", which, message("steps/unknown"), how, unknown=True, detail="unknown")
