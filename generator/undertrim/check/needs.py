"""The states of the car that a step needs, and where the record says so."""

from dataclasses import replace

from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import Node, home
from undertrim.derive.procedure.nodes import Layout
from undertrim.record.model import Opening, Part, Prep
from undertrim.record.source import Pointer


def said_at(thing: Part | Prep | Opening, state: str) -> Pointer:
    """Where the record says that `thing` needs `state`: the need itself, a tether, or the kind of opening."""
    if isinstance(thing, Opening):
        return (*home(thing), "kind")
    if isinstance(thing, Part) and state not in thing.needs:
        return (*home(thing), "tethers", _wired(thing, state))
    return (*home(thing), "needs", state)


def said_at_node(layout: Layout, user: Node, state: str) -> Pointer:
    """The same of a node; for a usual preparation, which no record says, the need of the first step that it is for."""
    if not user.id.startswith(states.USUAL):
        return said_at(user.worked, state)
    asker = next(node for node in layout.nodes.values() if user.id in layout.graph.before[node.id])
    assert isinstance(user.thing, Prep)
    return said_at_node(layout, asker, next(iter(user.thing.sets)))


def _wired(part: Part, state: str) -> str:
    """The first tether by which a part needs a state."""
    alone = (replace(part, tethers={name: tether}, needs={}) for name, tether in part.tethers.items())
    return next(name for name, one in zip(part.tethers, alone, strict=True) if state in states.needs_of(one))
