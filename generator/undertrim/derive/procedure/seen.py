"""What a step about the car's state names as its proof: what is seen once that state is reached."""

from collections.abc import Iterator

from undertrim.derive.procedure import running, states
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Prep
from undertrim.words import Message, message


def seen(step: Step) -> tuple[Message, ...]:
    """What is seen after a step that sets states of the car; nothing for any other step.

    Battery and ignition are as they stand beside the step: with one of two batteries off, the car is not dead. Where they differ from
    visit to visit, nothing is told of them.
    """
    return tuple(message(f"seen/{state}-{value}".replace(" ", "-")) for state, value in _set(step))


def _set(step: Step) -> Iterator[tuple[str, str]]:
    """The states that a step sets, each with the value it then has."""
    thing = step.node.thing if step.node else None
    if step.kind == "power":
        yield "ignition", step.detail
    elif isinstance(thing, Prep) and step.kind in ("prepare", "restore"):
        for state, value in thing.sets.items():
            reached = value if step.kind == "prepare" else states.initial()[state]
            beside = step.state.get(state, reached) if state in running.SHOWN else reached
            if beside in (reached, running.PARTLY):
                yield state, beside
