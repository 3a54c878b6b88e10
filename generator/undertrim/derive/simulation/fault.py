"""What the replay says of a wrong instant."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive.procedure.steps import Step
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
