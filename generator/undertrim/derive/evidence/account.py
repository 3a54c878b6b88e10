"""What a record's facts rest on, counted: how many are known, measured and verified, who says so, and how often who was corrected.

Counted are facts with a unit, a number or a word of a list; names and sentences are not. A fact rests on the evidence that the nearest block around it
names. What a record takes from another one rests on nothing of its own.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields

from undertrim.derive.evidence.conflicts import disputes
from undertrim.derive.evidence.every_fact import things
from undertrim.derive.evidence.fingerprint import changed_since
from undertrim.record.changing.edits import at
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.source import Data, Pointer, Source
from undertrim.words import Value

AT_A_CAR = frozenset({"measured", "seen"})
TOLD = "told"
UNKNOWN = str(Blank.UNKNOWN)


@dataclass(frozen=True, slots=True)
class Shares:
    """How many facts there are, and of these: `known`; `measured` or seen at a car; `verified`; known from what somebody `told` alone; known from `one` person alone."""

    facts: int = 0
    known: int = 0
    measured: int = 0
    verified: int = 0
    told: int = 0
    one: int = 0

    def __add__(self, other: "Shares") -> "Shares":
        return Shares(*(getattr(self, one.name) + getattr(other, one.name) for one in fields(self)))


@dataclass(frozen=True, slots=True)
class Look:
    """A piece of evidence: who found out, how, when, on which car (as typed), and how many facts name it."""

    id: str
    by: str
    how: str
    on: str
    car: str
    facts: int


@dataclass(frozen=True, slots=True)
class Told:
    """A fact by its address and by what a person calls it."""

    about: str
    name: Value


@dataclass(frozen=True, slots=True)
class Account:
    """One record's; `told` are the facts that rest on what somebody told alone, `corrected` how often a measurement settled against whom."""

    vehicle: str
    shares: Shares
    looks: Sequence[Look] = ()
    told: Sequence[Told] = ()
    corrected: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Person:
    """Who says so: how many facts, measured how many of them, at how many cars, in how many vehicles' records, since when, last when, and how often corrected."""

    by: str
    facts: int
    measured: int
    cars: int
    vehicles: int
    first: str
    last: str
    corrected: int


def _by_address(_: Data, pointer: Pointer) -> Value:
    return "/".join(map(str, pointer))


def account(
    record: VehicleRecord, source: Source, address: str, called: Callable[[Data, Pointer], Value] = _by_address
) -> Account:
    """What one record rests on; `source` is it as a whole, `called` says what a person calls a fact there."""
    known, unchanged = list(_facts(record, source)), _verified(record, source)
    named = Counter(name for _, _, names in known for name in names)
    looks = [
        Look(one.id, one.by, one.how, one.on, _car(source, one.id), named[one.id]) for one in record.evidence.values()
    ]
    how = {one.id: one for one in record.evidence.values()}
    told: list[Told] = []
    shares = Shares()
    for about, text, names in known:
        given = [how[name] for name in names if name in how]
        is_known = text != UNKNOWN
        word = is_known and bool(given) and all(one.how == TOLD for one in given)
        told += [Told(about, called(source.data, _pointer(source.data, about) or ()))] if word else []
        shares += Shares(
            1,
            is_known,
            is_known and any(one.how in AT_A_CAR for one in given),
            is_known and "/".join(about.split("/")[:2]) in unchanged,
            word,
            is_known and len({one.by for one in given}) == 1,
        )
    return Account(address, shares, looks, told, dict(_corrected(record)))


def people(accounts: Sequence[Account]) -> list[Person]:
    """Everybody who found something out, who found out most first."""
    looks: dict[str, list[tuple[str, Look]]] = {}
    for one in accounts:
        for look in one.looks:
            looks.setdefault(look.by, []).append((one.vehicle, look))
    corrected = Counter[str]()
    for one in accounts:
        corrected.update(one.corrected)
    found = (_person(by, theirs, corrected[by]) for by, theirs in looks.items())
    return sorted(found, key=lambda person: (-person.facts, person.by))


def old(accounts: Sequence[Account], before: str) -> list[tuple[str, Look]]:
    """What was found out before a day (`2023-11-27`) and still holds up facts, with its vehicle, the oldest first."""
    found = [
        (one.vehicle, look) for one in accounts for look in one.looks if look.on and look.on < before and look.facts
    ]
    return sorted(found, key=lambda item: (item[1].on, item[0], item[1].id))


def total(accounts: Sequence[Account]) -> Shares:
    """Of all of them together."""
    return sum((one.shares for one in accounts), Shares())


def _person(by: str, looks: Sequence[tuple[str, Look]], corrected: int) -> Person:
    days = sorted(look.on for _, look in looks if look.on)
    return Person(
        by=by,
        facts=sum(look.facts for _, look in looks),
        measured=sum(look.facts for _, look in looks if look.how in AT_A_CAR),
        cars=len({(vehicle, look.car) for vehicle, look in looks if look.how in AT_A_CAR}),
        vehicles=len({vehicle for vehicle, _ in looks}),
        first=days[0] if days else "",
        last=days[-1] if days else "",
        corrected=corrected,
    )


def _facts(record: VehicleRecord, source: Source) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """Each fact that counts: its address, what it says, and the evidence that it rests on."""
    for thing in things(record):
        for place in thing.facts:
            pointer = _pointer(source.data, place.about)
            if place.sized and pointer and not (source.origin and source.origin.is_taken(pointer)):
                yield place.about, place.text, _sources(source.data, pointer)


def _pointer(data: Data, about: str) -> Pointer | None:
    """Where a fact stands in the data; None for one that only follows."""
    found: list[str | int] = []
    for key in about.split("/"):
        found.append(int(key) if isinstance(at(data, tuple(found)), list) and key.isdecimal() else key)
    return tuple(found) if at(data, tuple(found)) is not None else None


def _sources(data: Data, pointer: Pointer) -> tuple[str, ...]:
    """The evidence that the nearest block around a place names."""
    for depth in range(len(pointer), 0, -1):
        block = at(data, pointer[:depth])
        if isinstance(block, dict) and "source" in block:
            said = block["source"]
            return tuple(map(str, said)) if isinstance(said, list) else (str(said),)
    return ()


def _verified(record: VehicleRecord, source: Source) -> frozenset[str]:
    """The blocks that somebody verified and that say what they said then."""
    stamp = record.verified
    if not stamp:
        return frozenset()
    changes = changed_since(source.data, stamp.facts)
    return frozenset(stamp.facts).difference(changes.changed, changes.removed)


def _corrected(record: VehicleRecord) -> Counter[str]:
    """Whose claims a measurement has settled against, by person, once for each conflict."""
    found = Counter[str]()
    for dispute in disputes(record):
        if dispute.settled:
            wrong = [claim for claim in dispute.claims if not dispute.is_value(claim.says)]
            names = {name for claim in wrong for name in claim.source}
            found.update({record.evidence[name].by for name in names if name in record.evidence})
    return found


def _car(source: Source, name: str) -> str:
    """The car of a piece of evidence as it was typed, so that one car is one text."""
    car = at(source.data, ("evidence", name, "car"))
    return (
        car
        if isinstance(car, str)
        else ", ".join(f"{key} {value}" for key, value in car.items())
        if isinstance(car, dict)
        else ""
    )
