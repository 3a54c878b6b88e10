"""What a step calls what it is about."""

from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import Node
from undertrim.words import Value, message


def named(node: Node) -> Value:
    """A node by the name of its thing, with its side: `Door panel, left`."""
    return sided(states.called(node.thing), node.side)


def sided(name: Value, side: str | None) -> Value:
    """A name with the side of the car that it is at, if there are two."""
    return message("steps/at-side", name=name, side=message(f"sides/{side}")) if side else name


def about(what: Value, node: Node) -> Value:
    """What is done, and with what: `Join for the test: Door panel, left`."""
    return message("steps/about", what=what, thing=named(node))
