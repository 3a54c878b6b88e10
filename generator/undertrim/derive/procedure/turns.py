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
        self._needs = needs
        self._place = {name: i for i, name in enumerate(nodes)}
        self._preps = {name: node.thing for name, node in nodes.items() if isinstance(node.thing, Prep)}
        self._setters = {pair: self._place[name] for name, prep in self._preps.items() for pair in prep.sets.items()}
        self._using: dict[tuple[str, str], set[str]] = {}
        for name, wanted in needs.items():
            for pair in wanted.items():
                self._using.setdefault(pair, set()).add(name)
        lost = {name: self._lost_for_good(name) for name in self._preps}
        self._sure = {name: after.get(name, set()) | lost.get(name, set()) for name in nodes}

    def _lost_for_good(self, changer: str) -> set[str]:
        """The nodes that need what the car arrives in, and what nothing sets again once the preparation `changer` has changed it."""
        arrived = {pair: (pair[0], states.initial().get(pair[0], "")) for pair in self._preps[changer].sets.items()}
        lost = [first for pair, first in arrived.items() if pair != first and first not in self._setters]
        return set[str]().union(*(self._using.get(pair, ()) for pair in lost)) - {changer}

    def held_back(self, changer: str) -> Iterator[str]:
        """The nodes that must be done before `changer` takes the state they need away."""
        if changer not in self._preps:
            return
        for state, value in self._preps[changer].sets.items():
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
        setting = {name for name, prep in self._preps.items() if prep.sets.get(state) == value}
        return setting.union(self._using.get((state, value), ()))

    def _waits(self, later: set[str], earlier: set[str]) -> bool:
        """Whether something in `later` has something in `earlier` among what must come before it."""
        return any(not earlier.isdisjoint(reach(self._sure, [name]) - {name}) for name in later)
