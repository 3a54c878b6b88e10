"""Lays what a record takes from another one, part by part, under what it says itself.

What is taken is the whole of a thing as it stands over there, without its evidence, which is of another car. What this record
says under the same id lies over it, field by field; `none` takes a field back. A safety fact that reassures is not taken: it is
unknown until somebody looked at this car. One level is shared: a record that takes from others gives nothing.

All that is taken stands where `shares` asks for it, so that a problem in it leads to the line that can be mended.
"""

# Long because it is one walk: which things, what of each, and what is told on the way.

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Protocol

from undertrim.record.fields import Node, root
from undertrim.record.nearness import suggestion
from undertrim.record.numerals import quoted
from undertrim.record.places import Places
from undertrim.record.problem import Position
from undertrim.record.safety import UNKNOWN, reassuring
from undertrim.record.source import Data, Pointer, Sister, Source, Twice
from undertrim.record.taken import Taken
from undertrim.words import Message, message

FIELD, ALL, WITHOUT, BACK, SOURCE = "shares", "all", "without", "none", "source"
EVIDENCE = frozenset({SOURCE, "photos"})
SECTIONS = ("variants", "preps", "parts", "openings", "connectors", "runs")
"""What one car can have in common with another."""

OF_IDS = frozenset({"tethers", "pins"})
"""Fields of a thing that hold things by their ids, which are overlaid one by one."""

LINKS = frozenset({"after", "refit_after", "behind", "under", "at", "goes_to"})
"""Fields that name a part, from which the name of what this car lacks is left out."""


class Sisters(Protocol):
    """Where the other records are."""

    def find(self, name: str) -> Sister | Message:
        """The record that goes by a name, or why nothing can be taken from it."""


@dataclass(slots=True)
class Sharing:
    """One record that takes: its whole so far, and what showed.

    `followed` are the places of its own that only follow from something, and so say nothing against what is taken; `forms`
    the ids of what is taken in several forms, by the place that it was typed as there.
    """

    whole: dict[str, Data]
    typed: Source
    places: Places
    followed: frozenset[Pointer]
    taken: dict[Pointer, Taken] = field(default_factory=dict)
    faults: list[tuple[Pointer, Message]] = field(default_factory=list)
    twice: list[Twice] = field(default_factory=list)
    used: list[Sister] = field(default_factory=list)
    forms: dict[Pointer, tuple[str, ...]] = field(default_factory=dict)
    named_for: dict[Pointer, tuple[str, ...]] = field(default_factory=dict)
    """Of those forms that have a name of their own the variants that it tells."""

    def take(self, sisters: Sisters) -> None:
        """Take from each record that is named."""
        asked = self.typed.data.get(FIELD)
        for name, wanted in asked.items() if isinstance(asked, dict) else ():
            found = sisters.find(name)
            if isinstance(found, Message):
                self.faults.append(((FIELD, name), found))
            elif isinstance(wanted, dict):
                self.used.append(found)
                self._from(found, wanted, (FIELD, name))

    def _from(self, sister: Sister, wanted: dict[str, Data], place: Pointer) -> None:
        car = _car(sister)
        lacking = _listed(wanted.get(WITHOUT))
        asked = [
            (section, name, at) for section in SECTIONS for name, at in self._asked(sister, section, wanted, place)
        ]
        for step, name in enumerate(lacking):
            if name not in {one for _, one, _ in asked}:
                self.twice.append(Twice((*place, WITHOUT, step), "without"))
        for section, name, at in asked:
            if name not in lacking:
                self._thing(sister, (section, name), at, car, frozenset(lacking))

    def _asked(
        self, sister: Sister, section: str, wanted: dict[str, Data], place: Pointer
    ) -> Iterator[tuple[str, Pointer]]:
        """The ids that are asked for in a section, each once, with the place that asks."""
        known: dict[str, Data] = sister.source.data.get(section, {})
        grouped, seen = groups(sister.source.as_typed, section), set[str]()
        for step, name in enumerate(_listed(wanted.get(section))):
            at = (*place, section, step) if isinstance(wanted[section], list) else (*place, section)
            found = list(known) if name == ALL else self._formed(sister, section, grouped.get(name) or [name], known)
            if not found:
                self._absent(sister, section, name, [*grouped, *known], at)
            elif set(found) <= seen:
                self.twice.append(Twice(at, "asked"))
            yield from ((one, at) for one in found if one not in seen)
            seen.update(found)

    def _formed(self, sister: Sister, section: str, names: list[str], known: dict[str, Data]) -> list[str]:
        """The ids under which things stand there: those of their forms where they differ between kinds of car."""
        origin = sister.source.origin
        found: list[str] = []
        for name in names:
            made = origin.forms.get((section, name), ()) if origin else ()
            found += made or ([name] if name in known else [])
        return found

    def _absent(self, sister: Sister, section: str, name: str, known: list[str], at: Pointer) -> None:
        if name == ALL or not known:
            said = message("sharing/no-section", record=quoted(sister.address), section=section)
        else:
            near = suggestion(name, known, message("sharing/there", section=section))
            said = message(
                "sharing/absent", record=quoted(sister.address), section=section, name=quoted(name), near=near
            )
        self.faults.append((at, said))

    def _thing(self, sister: Sister, place: Pointer, at: Pointer, car: Taken, lacking: frozenset[str]) -> None:
        """One thing: what of it is taken, and where that then stands."""
        section, name = map(str, place)
        thing = _for_another_car(sister.source.data[section][name], place, lacking)
        own = self.whole.setdefault(section, {})
        if not isinstance(own, dict) or place in self.taken or not isinstance(thing, dict):
            return
        if name not in own:
            own[name] = thing
            self._stand(place, thing, at, car)
        elif isinstance(own[name], dict):
            before = len(self.taken)
            self._under(own[name], thing, place, at, car)
            self._nothing_new(own[name], place, at, took=len(self.taken) > before)
            self._note_own(own[name], place)
        self._note_form(sister, place)
        self._disputed(sister, place, own[name], at)

    def _under(
        self,
        own: dict[str, Data],
        thing: dict[str, Data],
        place: Pointer,
        at: Pointer,
        car: Taken,
        *,
        sourced: bool = False,
    ) -> None:
        """Lay a thing under what this record says of it; `sourced` tells that what is around it names a source."""
        sourced = sourced or SOURCE in own
        for key, value in thing.items():
            spot = (*place, key)
            says = own.get(key)
            if key not in own or spot in self.followed:
                own[key] = value
                self._stand(spot, value, at, car)
            elif says in (BACK, [BACK]) and not _says_none(_node(spot)):
                del own[key]
            elif not OF_IDS.isdisjoint(spot[-2:]) and isinstance(says, dict) and isinstance(value, dict):
                self._under(says, value, spot, at, car, sourced=sourced)
            elif says == value and not sourced and spot not in self.places.inherited:
                self.twice.append(Twice(spot, FIELD))

    def _nothing_new(self, own: dict[str, Data], place: Pointer, at: Pointer, *, took: bool) -> None:
        """Tell of a thing that is asked for and stated here in full, and of a source that stands beside nothing that it could back."""
        if not took:
            self.twice.append(Twice(at, "unused"))
        if list(self._stated(own, place)) == [SOURCE]:
            self.twice.append(Twice((*place, SOURCE), "source"))

    def _stated(self, own: dict[str, Data], place: Pointer) -> Iterator[str]:
        """The fields of a thing that this record states at the thing itself."""
        elsewhere = self.taken.keys() | self.followed | self.places.inherited.keys()
        return (key for key in own if (*place, key) not in elsewhere)

    def _note_own(self, own: dict[str, Data], place: Pointer) -> None:
        """Note beside what is taken of a thing which of its fields this record states with a source."""
        sourced, section = SOURCE in own, str(place[0])
        backed = (
            key for key in self._stated(own, place) if sourced or (isinstance(own[key], dict) and SOURCE in own[key])
        )
        stated = tuple((section, key) for key in backed if key != SOURCE)
        for spot in [spot for spot in self.taken if spot[: len(place)] == place]:
            self.taken[spot] = replace(self.taken[spot], own=stated)

    def _disputed(self, sister: Sister, place: Pointer, own: Data, at: Pointer) -> None:
        """What the evidence of the other car disagrees on is no fact that could be taken."""
        for name, conflict in sister.source.data.get("conflicts", {}).items():
            about: Pointer = tuple(conflict["about"].split("/"))
            steps = {about[:depth] for depth in range(2, len(about) + 1)}
            if "settled_by" not in conflict and about[:2] == place and steps & self.taken.keys():
                known = {"conflict": quoted(name), "record": quoted(sister.address), "about": conflict["about"]}
                self.faults.append((at, message("sharing/disputed", **known)))

    def _note_form(self, sister: Sister, place: Pointer) -> None:
        """What is one of several forms there is so here; those of its forms that are not taken are not."""
        origin = sister.source.origin
        for typed, names in origin.forms.items() if origin else ():
            if typed[:-1] == place[:-1] and place[-1] in names:
                self.forms[typed] = (*self.forms.get(typed, ()), str(place[-1]))
        named = place in self.taken or (*place, "name") in self.taken
        if origin and place in origin.named_for and named:
            self.named_for[place] = origin.named_for[place]

    def _stand(self, place: Pointer, value: Data, at: Pointer, car: Taken) -> None:
        """Note that a thing, or a field of one, is taken: all of it stands where it is asked for."""
        self.taken[place] = car
        position = self.typed.values[at]
        for spot in _spots(place, value):
            self._at(spot, position)

    def _at(self, spot: Pointer, position: Position) -> None:
        if isinstance(spot[-1], str):
            self.places.stand(spot, position)
        else:
            self.places.values[spot] = position


def _spots(place: Pointer, value: Data) -> Iterator[Pointer]:
    yield place
    for key, inner in value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ():
        yield from _spots((*place, key), inner)


def _for_another_car(thing: Data, place: Pointer, lacking: frozenset[str]) -> Data:
    """A thing without its evidence, without what this car lacks, and with what must be looked at as unknown."""
    made = _without(thing, lacking)
    for fact in reassuring(made, place):
        *above, last = fact.pointer[len(place) :]
        block = made
        for step in above:
            block = block[step]
        block[last] = UNKNOWN
    return made


def _without(value: Data, lacking: frozenset[str]) -> Data:
    """A copy without sources and photographs, which are of the other car, and without links to what is not there."""
    if isinstance(value, list):
        return [_without(inner, lacking) for inner in value]
    if not isinstance(value, dict):
        return value
    made = {}
    for key, inner in value.items():
        left = _linked(inner, lacking) if key in LINKS else inner
        if key not in EVIDENCE and left not in (None, []):
            made[key] = _without(left, lacking)
    return made


def _linked(value: Data, lacking: frozenset[str]) -> Data:
    if isinstance(value, list):
        return [one for one in value if _name(one) not in lacking]
    return None if isinstance(value, str) and value.partition("/")[0] in lacking else value


def _name(link: Data) -> str:
    """The part that an entry of a list names: as a text, or with a condition."""
    return str(link.get("part", "") if isinstance(link, dict) else link)


def _listed(value: Data) -> list[str]:
    """A list of names; the brackets around one may be left out."""
    return [one for one in (value if isinstance(value, list) else [value]) if isinstance(one, str)]


def groups(typed: Source, section: str) -> Mapping[str, list[str]]:
    """The ids of each group, by what the group is called where it was typed."""
    things = typed.data.get(section)
    found = things.items() if isinstance(things, dict) else ()
    return {
        name: list(thing[section])
        for name, thing in found
        if isinstance(thing, dict) and isinstance(thing.get(section), dict)
    }


def _car(sister: Sister) -> Taken:
    vehicle = sister.source.data["vehicle"]
    return Taken(sister.address, vehicle["make"], vehicle["model"], vehicle["built"]["from"], vehicle["built"]["to"])


def _node(place: Pointer) -> Node | None:
    node: Node | None = root("vehicle")
    for step in place:
        node = node.child(step) if node else None
    return node


def _says_none(node: Node | None) -> bool:
    """Whether `none` is a value of the field, so that it cannot take one back."""
    says = node.schema if node else {}
    return BACK in says.get("enum", ()) or bool(says.get("quantity", {}).get(BACK))
