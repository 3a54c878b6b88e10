"""Leaves out of a record what the schema refuses, so that the rest can still be looked at in the same run."""

import copy
from collections.abc import Iterable

from undertrim.record.complaints import Complaint
from undertrim.record.source import Data, Pointer


def without(data: Data, complaints: Iterable[Complaint]) -> tuple[Data, frozenset[Pointer]]:
    """A copy of `data` without the places complained about, and those places.

    List entries keep their index (an entry goes as a whole only from a mapping), so that positions stay true.
    """
    places = frozenset(complaint.pointer for complaint in complaints)
    if not places:
        return data, places
    kept = copy.deepcopy(data)
    for place in sorted(places, key=len, reverse=True):
        _drop(kept, place)
    return kept, places


def _drop(data: Data, place: Pointer) -> None:
    if not place:
        return
    for step in place[:-1]:
        try:
            data = data[step]
        except (KeyError, IndexError, TypeError):
            return
    if isinstance(data, dict):
        data.pop(place[-1], None)
