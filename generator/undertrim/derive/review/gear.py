"""What changed about a piece of gear, and which vehicles that can reach."""

from dataclasses import replace

from undertrim.derive.fit.stock import Stock, stocked
from undertrim.derive.review import facts
from undertrim.derive.review.change import GearSide, Sort
from undertrim.derive.review.outcome import GearChange
from undertrim.derive.review.problems import apart
from undertrim.record.gear import AnyGear


def gear(before: GearSide | None, after: GearSide | None) -> GearChange:
    """What changed; one side may be None, not both."""
    side = after or before
    assert side
    made = side.record.gear
    name, sort = f"{made.maker} {made.model}", Sort.CHANGED
    if before is None or after is None:
        sort = Sort.ADDED if after else Sort.GONE
        return GearChange(side.id, name, made.kind, sort, found=side.problems if after else ())
    found, mended = apart(before.problems, after.problems)
    was = before.id if before.id != after.id else ""
    return GearChange(side.id, name, made.kind, sort, was, tuple(facts.of_gear(before, after)), found, mended)


def reaches(before: GearSide | None, after: GearSide | None) -> frozenset[str] | None:
    """The addresses of the vehicles for which a changed piece of gear may turn something; None for any of them."""
    sides = [side.record.gear for side in (before, after) if side]
    if before and after and before.id == after.id and _bare(sides[0]) == _bare(sides[1]):
        return frozenset()
    if all(one.suits for one in sides):
        return frozenset(place.vehicle for one in sides for place in one.suits)
    return None


def _bare(one: AnyGear) -> AnyGear:
    """Without what nothing is reckoned with."""
    return replace(one, note="")


def shelf(now: Stock, replaced: dict[str, GearSide | None]) -> Stock:
    """The stock of before: that of now, in which each piece that differs is what it was; `replaced` is that by the id of now, None for one that was not there.

    A piece that is gone stands at the end, under the id that it had.
    """
    items = [
        stocked(item.id, side.record) if (side := replaced.get(item.id)) else item
        for item in now.items
        if item.id not in replaced or replaced[item.id]
    ]
    there = {item.id for item in items}
    items += [stocked(name, side.record) for name, side in replaced.items() if side and name not in there]
    return Stock(tuple(items), now.left_out)
