"""Which steps a changed fact explains: what a step says less carefully is then told once, with the fact and with who says so."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.procedure.steps import Step
from undertrim.derive.review.change import FactChange
from undertrim.record.model import Opening, Part, Prep

_AROUND = ("restraint", "preps", "after_battery", "closures")
"""Sections whose facts reach into what is done to the whole car: battery, waits, power."""


@dataclass(frozen=True, slots=True)
class Explained:
    """What facts that became lighter reach: `things` by id, all that is in some `areas`, the `whole` car, and whether what is done `around` parts (battery, waits, power, what comes after)."""

    things: frozenset[str] = frozenset()
    areas: frozenset[str] = frozenset()
    around: bool = False
    whole: bool = False

    def explains(self, step: Step) -> bool:
        """Whether one of them may be why a step is another one."""
        thing = step.node.thing if step.node else None
        if self.whole or (self.around and (thing is None or isinstance(thing, Prep))):
            return True
        return step.part in self.things or (isinstance(thing, Part | Opening) and thing.area in self.areas)


def explained(changed: Sequence[FactChange]) -> Explained:
    """What the facts among some changes that became lighter reach."""
    lighter = [one.pointer for one in changed if one.lighter and len(one.pointer) > 1]
    plugs = any(place[0] == "parts" and (len(place) == 2 or "tethers" in place) for place in lighter)
    return Explained(
        frozenset(str(place[1]) for place in lighter),
        frozenset(str(place[1]) for place in lighter if place[0] == "areas"),
        plugs or any(place[0] in _AROUND for place in lighter),
        any(place[0] == "vehicle" for place in lighter),
    )


def names(changed: Sequence[FactChange]) -> Iterator[str]:
    """The ids of the things that are called otherwise now: what their steps are titled says nothing more."""
    for one in changed:
        if len(one.pointer) == 3 and one.pointer[2] == "name":
            yield str(one.pointer[1])
