"""What the replay finds."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive.procedure.node import Node, home
from undertrim.derive.procedure.steps import Step
from undertrim.record.source import Pointer
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Fault:
    """Something wrong at one instant: the step, the other step it clashes with (None for one that is missing), the fact it rests on.

    `kind` is the sort of mistake; `said` tells this one, and its way out.
    """

    kind: str
    said: Message
    step: Step | None
    other: Step | None
    pointer: Pointer


Faults = Iterator[Fault]


def fault(kind: str, code: str, step: Step | None, other: Step | None, pointer: Pointer, /, **values: Value) -> Fault:
    """A fault whose sentence is `replay/<code>`; `step` and `other` are in it by their titles."""
    titles = {name: one.title for name, one in (("step", step), ("other", other)) if one}
    return Fault(kind, message(f"replay/{code}", **titles, **values), step, other, pointer)


def stands(state: str, value: str) -> Message:
    """A state of the car with its value, in words: `battery off`."""
    return message(f"states/{state}-{value}".replace(" ", "-"))


def at(node: Node, *rest: str | int) -> Pointer:
    """Where in the record the fact of a node stands."""
    if rest[:1] == ("held_by",) and isinstance(rest[1], int):
        rest = ("held_by", node.slot(rest[1]), *rest[2:])
    return (*home(node.thing), *rest)
