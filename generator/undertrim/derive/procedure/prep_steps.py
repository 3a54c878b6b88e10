"""The steps of a preparation: set a state of the car, wait, and undo it."""

from collections.abc import Iterator

from undertrim.derive.procedure import states, waits
from undertrim.derive.procedure.fastener_lines import coming_out, returning
from undertrim.derive.procedure.naming import named, sided
from undertrim.derive.procedure.node import Node, minutes
from undertrim.derive.procedure.steps import Step, live, text
from undertrim.record.model import Assignment, Prep, Wait
from undertrim.words import message


def prepare(node: Node, car: Assignment, section: str, after: tuple[Wait, ...]) -> Iterator[Step]:
    """Set a state of the car, and wait where there is something to wait for."""
    prep = node.thing
    assert isinstance(prep, Prep)
    lines = coming_out(prep, car)
    yield Step(
        f"prepare:{node.id}", "prepare", section, named(node), text(states.way(prep)), node, lines,
        cautions=live(prep.cautions, car), minutes=minutes(prep.takes),
    )  # fmt: skip
    yield from wait_for(node, section, after)


def wait_for(node: Node, section: str, after: tuple[Wait, ...], short: str = "") -> Iterator[Step]:
    """Wait after a preparation; `short` marks the wait of a battery that is not the last to go off."""
    for number, wait in enumerate(after):
        name = f"wait:{node.id}{short}" if number == 0 else f"wait:{node.id}{short}:unknown"
        yield Step(name, "wait", section, message("steps/wait"), text(waits.why(wait)), node, wait=wait)


def restore(node: Node, car: Assignment, section: str) -> Iterator[Step]:
    """Undo a preparation; nothing where nothing needs undoing."""
    prep = node.thing
    assert isinstance(prep, Prep)
    lines = returning(prep.held_by, car)
    how = states.undoing(prep)
    if not (how or lines):
        return
    yield Step(
        f"restore:{node.id}", "restore", section, sided(states.way_back(prep), node.side), text(how), node, lines,
        minutes=minutes(prep.takes),
    )  # fmt: skip
