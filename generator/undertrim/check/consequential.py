"""Tells which findings only follow from what the schema refused: those are not worth reading until that is mended."""

from collections.abc import Collection, Iterator

from undertrim.check.findings import Finding
from undertrim.record.build import KEYED
from undertrim.record.identity import slug
from undertrim.record.source import Data, Pointer
from undertrim.record.store import Entry


class Consequential:
    """Knows the places of one record that are not as they were meant, and the ids that went with them."""

    def __init__(self, entry: Entry) -> None:
        data, again = entry.source.data, entry.source.as_typed.again
        dropped = entry.dropped | again
        self._dropped = dropped
        self._names = frozenset((*_names(data, dropped), *(str(place[0]) for place in again)))
        self._section = any(place and place[0] == place[-1] and _lost(data, place, dropped) for place in dropped)

    def hold(self, finding: Finding) -> bool:
        """Whether a finding stands at, below or directly above such a place, or rests on such an id.

        Where a whole section is lost, or all of a group in it, nobody knows its ids, and every finding may be an echo. Where an id stands
        twice, that of the second is lost: what is not found in its section may be just that.
        """
        if self._section or any(_related(finding.pointer, place) for place in self._dropped):
            return True
        return finding.rests_on(self._names)


def _related(one: Pointer, other: Pointer) -> bool:
    shorter = min(len(one), len(other))
    return one[:shorter] == other[:shorter]


def _names(data: Data, dropped: Collection[Pointer]) -> Iterator[str]:
    """The ids that the dropped places are, hold or name; for ids that are lost, the id of what had them."""
    for place in dropped:
        if len(place) > 1 and place[-2] in KEYED:
            yield str(place[-1])
            yield slug(str(place[-1]))
        elif _lost(data, place, dropped):
            yield from map(str, place[-2:-1])
        elif place and _meant(place, dropped) in KEYED:
            yield from map(str, _at(data, place) or ())
        yield from _words(_at(data, place))


def _words(value: Data) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, list):
        yield from (item for item in value if isinstance(item, str))


def _lost(data: Data, place: Pointer, dropped: Collection[Pointer]) -> bool:
    """Whether ids should stand at a place, and none can be read."""
    return bool(place) and _meant(place, dropped) in KEYED and not isinstance(_at(data, place), dict)


def _meant(place: Pointer, dropped: Collection[Pointer]) -> str | int:
    """The last step of a place; for a key that the schema does not know, the keyed one it may have been meant as."""
    siblings = (other[-1] for other in dropped if other[:-1] == place[:-1] and other and other[-1] in KEYED)
    return place[-1] if place[-1] in KEYED else next(siblings, place[-1])


def _at(data: Data, place: Pointer) -> Data:
    for step in place:
        try:
            data = data[step]
        except (KeyError, IndexError, TypeError):
            return None
    return data
