"""What the replay finds."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Opening, Part
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class Fault:
    """Something wrong at one instant: the step, the other step it clashes with (None for one that is missing), the fact it rests on."""

    kind: str
    message: str
    step: Step | None
    other: Step | None
    pointer: Pointer
    hint: str = ""


Faults = Iterator[Fault]


def at(node: Node, *rest: str | int) -> Pointer:
    """Where in the record the fact of a node stands."""
    if isinstance(node.thing, Opening):
        return ("openings", node.thing.id, *rest)
    return ("parts" if isinstance(node.thing, Part) else "preps", node.thing.id, *rest)
