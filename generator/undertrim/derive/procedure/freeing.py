"""Freeing nodes one after another: which can be reached when every step needs its prerequisites done."""

from collections.abc import Collection, Mapping, Sequence, Set

Choices = Sequence[Sequence[frozenset[str]]]


def ready(done: Set[str], before: frozenset[str], choices: Choices) -> bool:
    """Whether all of `before`, and one whole route of each choice, are done."""
    return before <= done and all(any(route <= done for route in choice) for choice in choices)


def free(nodes: Collection[str], before: Mapping[str, frozenset[str]], any_of: Mapping[str, Choices]) -> list[str]:
    """As many of the nodes as can be freed, starting from nothing, in an order that frees them.

    Freeing a node never blocks another, so which nodes come out does not depend on the order tried; nodes
    handed over roughly in a workable order come out in one sweep.
    """
    done: dict[str, None] = {}
    left = list(nodes)
    while left:
        waiting = []
        for node in left:
            if ready(done.keys(), before[node], any_of.get(node, ())):
                done[node] = None
            else:
                waiting.append(node)
        if len(waiting) == len(left):
            break
        left = waiting
    return list(done)
