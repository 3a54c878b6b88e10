"""Proves that a record says in its new format what it said: the whole, the order of what has an id, and every comment."""

from collections.abc import Iterator

from undertrim.record.build import KEYED
from undertrim.record.migrations.marked import comments
from undertrim.record.migrations.moved import CannotMove
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.spreading import SAYS_ALL, spread
from undertrim.words import message

_MAY_FOLLOW = {"model_years", "count"}
"""Fields that a record of format 1 may lack, and that follow from what it says in format 2."""


def checked(before: Source, after: Source) -> tuple[Pointer, ...]:
    """The places that the new text adds since they follow from what is said. Raises CannotMove where anything else differs."""
    old, new = spread(before), spread(after)
    if after.problems or (new.origin and new.origin.faults):
        raise CannotMove(message("upgrade/unreadable"))
    if comments(before.text) != comments(after.text):
        raise CannotMove(message("upgrade/comments"))
    found = list(_differences({**old.data, "format": SAYS_ALL}, new.data, ()))
    if lost := [place for place, added in found if not added]:
        raise CannotMove(message("upgrade/facts", place="/".join(map(str, lost[0]))))
    return tuple(place for place, _ in found)


def _differences(old: Data, new: Data, place: Pointer) -> Iterator[tuple[Pointer, bool]]:
    """Each place that differs, and whether it only holds what follows and was not said before."""
    if not (isinstance(old, dict) and isinstance(new, dict)):
        if isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
            for number, (one, other) in enumerate(zip(old, new, strict=True)):
                yield from _differences(one, other, (*place, number))
        elif old != new:
            yield place, False
        return
    if place and place[-1] in KEYED and list(old) != list(new):
        yield place, False
        return
    for key in (*old, *(key for key in new if key not in old)):
        if key not in new:
            yield (*place, key), False
        elif key not in old:
            yield (*place, key), key in _MAY_FOLLOW
        else:
            yield from _differences(old[key], new[key], (*place, key))
