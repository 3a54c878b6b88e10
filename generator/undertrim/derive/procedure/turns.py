"""Whose turn it is when nodes need different values of one state: what must be done before a preparation changes it."""

from collections.abc import Iterator, Mapping

from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.walks import reach
from undertrim.record.model import Prep, States


class Turns:
    """The needs of all nodes of a layout, and the order of turns that follows.

    Of two values of a state, the one whose users others wait for has the first turn; where nobody waits, the value the car
    arrives in, then the one whose preparation stands first in the file.
    """

    def __init__(self, nodes: Mapping[str, Node], needs: Mapping[str, States], after: Mapping[str, set[str]]) -> None:
        self._nodes, self._needs = nodes, needs
        self._place = {name: i for i, name in enumerate(nodes)}
        self._setters = {
            pair: self._place[name]
            for name, node in nodes.items()
            if isinstance(node.thing, Prep)
            for pair in node.thing.sets.items()
        }
        self._sure = {name: after.get(name, set()) | self._lost_for_good(name) for name in nodes}

    def _lost_for_good(self, changer: str) -> set[str]:
        """The nodes that need what the car arrives in, and what nothing sets again once `changer` has changed it."""
        thing = self._nodes[changer].thing
        changed = thing.sets if isinstance(thing, Prep) else {}
        lost = {
            state: states.initial().get(state)
            for state, value in changed.items()
            if value != states.initial().get(state) and (state, states.initial().get(state)) not in self._setters
        }
        if not lost:
            return set()
        return {
            user
            for user, wanted in self._needs.items()
            if user != changer and any(wanted.get(state) == value for state, value in lost.items())
        }

    def held_back(self, changer: str) -> Iterator[str]:
        """The nodes that must be done before `changer` takes the state they need away."""
        thing = self._nodes[changer].thing
        if not isinstance(thing, Prep):
            return
        for state, value in thing.sets.items():
            for user, wanted in self._needs.items():
                need = wanted.get(state)
                if need is not None and need != value and user != changer and self._first(state, need, value, changer):
                    yield user

    def _first(self, state: str, need: str, value: str, changer: str) -> bool:
        """Whether the users of `need` have their turn before `changer` sets `value`."""
        arrives = need == states.initial().get(state)
        if (state, need) not in self._setters:
            return arrives
        early, late = self._users(state, need), self._users(state, value)
        if self._waits(late, early):
            return True
        if self._waits(early, late):
            return False
        return arrives or self._setters[state, need] < self._place[changer]

    def _users(self, state: str, value: str) -> set[str]:
        """What needs a value, and what sets it."""
        using = {name for name, wanted in self._needs.items() if wanted.get(state) == value}
        things = ((name, node.thing) for name, node in self._nodes.items())
        return using | {name for name, thing in things if isinstance(thing, Prep) and thing.sets.get(state) == value}

    def _waits(self, later: set[str], earlier: set[str]) -> bool:
        """Whether something in `later` has something in `earlier` among what must come before it."""
        return any(not earlier.isdisjoint(reach(self._sure, [name]) - {name}) for name in later)
