"""The gear on the shelf, by kind, and what of it is made for one opening."""

from collections.abc import Callable, Collection, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path
from typing import Generic, TypeVar, cast

from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.tried import SeenFit, doubts, seen_fits
from undertrim.record.gear import AnyGear, GearFacts, GearRecord, Place
from undertrim.record.model import Opening, When
from undertrim.record.store import Entry, Workspace
from undertrim.record.whose import NOBODYS, Whose
from undertrim.words import Message

F = TypeVar("F", bound=AnyGear)
F_co = TypeVar("F_co", bound=AnyGear, covariant=True)


@dataclass(frozen=True)  # without slots: a call through `Gear` fails with them in Python 3.11, and the name is kept
class Stocked(Generic[F_co]):
    """One piece of gear of a kind with the id of its record, whether it is invented, and the tag of the language its texts are in; empty where it does not say.

    `facts` have the cautious value of each size that is in dispute; `record` is what the whole record says, None where only sizes are asked for.
    """

    id: str
    facts: F_co
    demo: bool = False
    lang: str = ""
    record: GearRecord | None = None
    whose: Whose = NOBODYS

    @cached_property
    def name(self) -> str:
        """Maker and model."""
        return f"{self.facts.maker} {self.facts.model}"

    @cached_property
    def piece(self) -> Piece:
        """How answers name it."""
        return Piece(self.id, self.name)

    def place(self, vehicle: str, opening: str, car: Mapping[str, str]) -> Place | None:
        """The entry of `suits` that names this opening of this car, if there is one."""
        named = (place for place in self.facts.suits if (place.vehicle, place.opening) == (vehicle, opening))
        return next((place for place in named if place.when.holds(car)), None)

    @cached_property
    def tried(self) -> tuple[SeenFit, ...]:
        """What people saw who tried it."""
        return seen_fits(self.record) if self.record else ()

    @cached_property
    def doubts(self) -> tuple[Message, ...]:
        """Its sizes that are in dispute, each with what is said of it."""
        return doubts(self.record) if self.record else ()

    def seen_in(self, vehicle: str, opening: str) -> tuple[SeenFit, ...]:
        """What people saw who tried it in this opening, by the id that the opening is written under."""
        return tuple(one for one in self.tried if (one.vehicle, one.opening) == (vehicle, opening))

    def conditions(self, vehicle: str, opening: str) -> list[When]:
        """On what it depends whether it suits this opening."""
        return [place.when for place in self.facts.suits if (place.vehicle, place.opening) == (vehicle, opening)]


Gear = Stocked[GearFacts]
"""One piece of gear of any kind."""


def stocked(name: str, record: GearRecord) -> Gear:
    """What a record of gear, by its id, puts on the shelf."""
    facts = reckoned(record).gear
    return Stocked(name, facts, record.demo == "yes", record.lang, record, record.whose)


def of_kind(items: Iterable[Gear], kind: type[F]) -> list[Stocked[F]]:
    """Those pieces that are of one kind."""
    return [cast("Stocked[F]", item) for item in items if isinstance(item.facts, kind)]


def only(item: Gear, kind: type[F]) -> Stocked[F]:
    """The same piece, known to be of a kind. Raises TypeError where it is of another."""
    if not isinstance(item.facts, kind):
        raise TypeError(f"'{item.id}' is a {item.facts.kind}, and a {kind.kind} was asked for")
    return cast("Stocked[F]", item)


@dataclass(frozen=True)  # without slots: what is made for which opening is looked up once
class Stock:
    """All gear whose records can be relied on, and the records (`folder/id`) that were left out.

    One that is not `asked` is unknown, which is not the same as an empty one: what hangs on it stays open.
    """

    items: tuple[Gear, ...]
    left_out: tuple[str, ...] = ()
    asked: bool = True

    def of(self, kind: type[F]) -> list[Stocked[F]]:
        """The gear of one kind, in the order of the files."""
        return of_kind(self.items, kind)

    def taken(self, opening: Opening) -> list[Gear]:
        """The gear that goes into openings of its kind."""
        return [item for item in self.items if isinstance(item.facts, opening.takes)]

    def refused(self, name: str) -> bool:
        """Whether a piece of gear, by its id, was left out."""
        return any(address.rpartition("/")[2] == name for address in self.left_out)

    def keeping(self, kind: type[AnyGear], kept: Collection[str]) -> "Stock":
        """The stock with no more of one kind than the pieces named by their ids."""
        items = (item for item in self.items if item.id in kept or not isinstance(item.facts, kind))
        return Stock(tuple(items), self.left_out)

    def suiting(self, vehicle: str, opening: str, car: Mapping[str, str]) -> list[Gear]:
        """The gear that is made for an opening of a car, and what is made for no car in particular."""
        made = {number for number, when in self._made_for.get((vehicle, opening), ()) if when.holds(car)}
        return [self.items[number] for number in sorted({*self._for_any, *made})]

    def conditions(self, vehicle: str, opening: str) -> list[When]:
        """On what it depends which gear suits this opening."""
        return [when for _, when in self._made_for.get((vehicle, opening), ())]

    @cached_property
    def _made_for(self) -> Mapping[tuple[str, str], Sequence[tuple[int, When]]]:
        """For each vehicle and opening, which gear is made for it, by its number, and in which cars."""
        found: dict[tuple[str, str], list[tuple[int, When]]] = {}
        for number, item in enumerate(self.items):
            for place in item.facts.suits:
                found.setdefault((place.vehicle, place.opening), []).append((number, place.when))
        return found

    @cached_property
    def _for_any(self) -> Sequence[int]:
        """The numbers of the gear that is made for no car in particular."""
        return [number for number, item in enumerate(self.items) if not item.facts.suits]


NOTHING = Stock(())
"""An empty shelf."""

NOT_ASKED = Stock((), asked=False)
"""A shelf that nobody looked at: what is said then holds whatever stands on it."""


def read(workspace: Workspace, sound: Callable[[Entry], bool]) -> Stock:
    """Read every gear record of the workspace; one that cannot be read in full, or is not `sound`, is left out and named."""
    items, left_out = [], []
    for path in workspace.every("gear"):
        address, gear = _read(workspace, path, (_state(path), *map(_state, workspace.additions(path))), sound)
        if gear:
            items.append(gear)
        else:
            left_out.append(address)
    return Stock(tuple(items), tuple(left_out))


def _state(path: Path) -> Hashable:
    """What differs once a file was written anew; for one that cannot be looked at, something that never comes again."""
    try:
        there = path.stat()
    except OSError:
        return object()
    return there.st_ino, there.st_size, there.st_mtime_ns


@lru_cache(maxsize=4096)  # who edits one record and looks again reads one record again
def _read(
    workspace: Workspace, path: Path, _state: Hashable, sound: Callable[[Entry], bool]
) -> tuple[str, Gear | None]:
    """What one record puts on the shelf, with its address."""
    entry = workspace.load(path)
    if isinstance(entry.record, GearRecord) and not entry.problems and sound(entry):
        return entry.address, stocked(entry.id, entry.record)
    return entry.address, None
