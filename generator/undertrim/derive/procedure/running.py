"""What battery and ignition are while steps are done, one after another."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from undertrim.derive.procedure import states
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Prep

SHOWN = ("battery", "ignition")
PARTLY = "partly off"
"""Of several batteries one is off and another is on: neither dead nor fed as it should be."""

Turn = tuple[str, str, str]
"""A state, what turns it (one of several batteries), and the value."""


def states_of(steps: Sequence[Step]) -> Iterator[Mapping[str, str]]:
    """The shown states beside each step: those it is done in, or leaves where it changes one."""
    made = [turns(step) for step in steps]
    batteries = {who for each in made for state, who, _ in each if state == "battery"}
    now, off = {name: states.initial()[name] for name in SHOWN}, set[str]()
    for each in made:
        for state, who, value in each:
            if state == "battery":
                off = off | {who} if value == "off" else off - {who}
                value = "on" if not off else "off" if off == batteries else PARTLY
            now = {**now, state: value}
        yield now


def agreed(several: Iterable[Mapping[str, str]]) -> dict[str, str]:
    """The states of one step in several visits: where they differ, all their values."""
    found: dict[str, dict[str, None]] = {}
    for states_now in several:
        for state, value in states_now.items():
            found.setdefault(state, {})[value] = None
    return {state: " or ".join(sorted(values)) for state, values in found.items()}


def turns(step: Step) -> tuple[Turn, ...]:
    """What a step turns of the shown states."""
    thing = step.node.thing if step.node else None
    if step.kind == "power":
        return (("ignition", "", step.detail),)
    if step.node is None or not isinstance(thing, Prep) or step.kind not in ("prepare", "restore"):
        return ()
    undone = step.kind == "restore"
    return tuple((s, step.node.id, states.initial()[s] if undone else v) for s, v in thing.sets.items() if s in SHOWN)
