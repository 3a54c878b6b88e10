"""How sure the facts are, as data: the standing of the record, the conflicts of its evidence, its age."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from undertrim.derive import jobs
from undertrim.derive.conflict_texts import Conflict, conflict
from undertrim.derive.evidence import seen
from undertrim.derive.evidence.age import age as in_words
from undertrim.derive.evidence.conflicts import Dispute, disputes
from undertrim.derive.evidence.fingerprint import Changes
from undertrim.derive.evidence.standing import PartStanding, Word
from undertrim.derive.evidence.standing import Standing as Found
from undertrim.derive.evidence.standing import standing as derived
from undertrim.derive.fact_names import block_name
from undertrim.publish.facts import founded
from undertrim.record.model import Evidence, VehicleRecord, Verified
from undertrim.record.source import Data as Typed
from undertrim.words import Items, Message, Value, WayOut, message


@dataclass(frozen=True, slots=True)
class Obstacle:
    """What stands in the way of verifying a record, and where to find it out."""

    what: Message
    where: WayOut


@dataclass(frozen=True, slots=True)
class EditedBlock:
    """A block of facts that was edited since it was verified: its place, its name for people, and how."""

    block: str
    name: Value
    how: str


@dataclass(frozen=True, slots=True)
class VerifiedPart:
    """A part of the record that somebody verified: its standing as a `word`, what it is `of` and at which side, on which car, and a line of `text`."""

    id: str
    word: str
    of: tuple[str, ...]
    side: str
    on: str
    by: str
    car: Value
    text: Message
    edited: tuple[EditedBlock, ...]


@dataclass(frozen=True, slots=True)
class Standing:
    """The record's standing: `word`, a line of `text`, who verified it when and on which car, what is in the way, what was edited since, and its `parts` that were verified by themselves."""

    word: str
    text: Message
    on: str
    by: str
    car: Value
    obstacles: tuple[Obstacle, ...]
    edited: tuple[EditedBlock, ...]
    parts: tuple[VerifiedPart, ...]


@dataclass(frozen=True, slots=True)
class Age:
    """How old the data of a day was (`words`) on the day the page was made (`on`); both empty where either is not known."""

    words: Value
    on: str


@dataclass(frozen=True, slots=True)
class Seen:
    """What is known of the car that evidence is from; `is_` are its answers by variant."""

    year: int | None
    built: str
    side: str
    is_: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class ShownEvidence:
    """A piece of evidence; `seen` is what is known of its car by field, answers that follow from its month of build included, `facts` name it."""

    id: str
    how: str
    how_words: Message
    on: str
    by: str
    car: Value
    seen: Seen
    with_: str
    note: str
    age: Value
    facts: Sequence[Value]


def standing(record: VehicleRecord, data: Typed) -> Standing:
    """How sure the record is as a whole."""
    found = derived(record, data)
    stamp = record.verified
    return Standing(
        word=str(found.word),
        text=_line(record, found, stamp),
        on=stamp.on if stamp else "",
        by=stamp.by if stamp else "",
        car=seen.shown(record, stamp.car) if stamp else "",
        obstacles=tuple(Obstacle(item.said, WayOut(item.said)) for item in found.obstacles),
        edited=tuple(_edited(found.changes, data)),
        parts=tuple(_part(record, one, data) for one in found.parts),
    )


def _part(record: VehicleRecord, found: PartStanding, data: Typed) -> VerifiedPart:
    stamp, car = found.stamp, seen.shown(record, found.stamp.car)
    names = Items(tuple(_opening(record, name) for name in stamp.of))
    at = message(f"evidence/part-at-{stamp.side}", openings=names) if stamp.side else names
    text = message(f"evidence/part-{found.word}", openings=at, on=stamp.on, by=stamp.by, car=car)
    edited = tuple(_edited(found.changes, data))
    return VerifiedPart(stamp.id, str(found.word), stamp.of, stamp.side or "", stamp.on, stamp.by, car, text, edited)


def _opening(record: VehicleRecord, name: str) -> str:
    """What people call an opening, by the id that it is written under."""
    found = jobs.openings(record, name.partition("@")[0])
    return found[0].name if found else name


def _line(record: VehicleRecord, found: Found, stamp: Verified | None) -> Message:
    if stamp is None or found.word is Word.UNVERIFIED:
        return message("evidence/not-verified")
    if found.word is Word.STALE:
        return message("evidence/stale", count=found.changes.count)
    return message("evidence/verified", on=stamp.on, by=stamp.by, car=seen.shown(record, stamp.car))


def _edited(changes: Changes, data: Typed) -> Iterator[EditedBlock]:
    sorts = {"changed": changes.changed, "added": changes.added, "removed": changes.removed}
    for how, blocks in sorts.items():
        yield from (EditedBlock(block, block_name(data, block), how) for block in blocks)


def conflicts(record: VehicleRecord) -> list[Conflict]:
    """Every conflict: the fact in words, what stands in the record, each claim with its sources, the cautious value and why it is."""
    return [conflict(record, dispute) for dispute in disputes(record)]


def line(record: VehicleRecord, dispute: Dispute) -> Message:
    """A dispute in one line, to stand beside the fact it is about."""
    found = conflict(record, dispute)
    return message("conflicts/line", fact=found.fact, text=found.text)


def age(on: str, made: date | None) -> Age:
    """The age of the data of a day on the day the page was made."""
    words = in_words(on, made) if made else ""
    return Age(words, made.isoformat() if made and words else "")


def pieces(record: VehicleRecord, data: Typed, made: date | None) -> list[ShownEvidence]:
    """Every piece of evidence, with the facts that name it (`facts`) in words; `data` is the record as typed."""
    resting = founded.named(data)
    return [piece(record, item, made, resting.get(item.id, ())) for item in record.evidence.values()]


def how(item: Evidence) -> Message:
    """How it was found out, and at which side of the car where that is said: `measured, on the left`."""
    said = message(f"evidence/how-{item.how}")
    return message(f"evidence/on-the-{item.side}", how=said) if item.side else said


def piece(record: VehicleRecord, item: Evidence, made: date | None, facts: Sequence[Value] = ()) -> ShownEvidence:
    """One piece of evidence, and the facts that name it, in words."""
    known = seen.seen(record, item.car)
    return ShownEvidence(
        id=item.id,
        how=item.how,
        how_words=how(item),
        on=item.on,
        by=item.by,
        car=seen.shown(record, item.car),
        seen=Seen(known.year, str(known.built or ""), known.side, seen.answers(record, known)),
        with_=item.with_,
        note=item.note,
        age=age(item.on, made).words,
        facts=facts,
    )
