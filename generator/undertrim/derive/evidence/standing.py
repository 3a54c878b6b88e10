"""Whether a record was checked at a car, and whether that still holds."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from undertrim.derive.evidence.fingerprint import Changes, changed_among, changed_since
from undertrim.derive.evidence.obstacles import Obstacle, in_the_way_of, obstacles
from undertrim.derive.evidence.resting import of_stamp
from undertrim.derive.evidence.taken import SEEN
from undertrim.record.model import VehicleRecord, VerifiedPart
from undertrim.record.source import Data


class Word(StrEnum):
    """A record's standing in a word."""

    VERIFIED = "verified"
    STALE = "stale"
    UNVERIFIED = "unverified"


@dataclass(frozen=True, slots=True)
class Standing:
    """A record's standing: what is in the way, what was edited since it was verified, and how its parts stand that were verified by themselves."""

    word: Word
    obstacles: tuple[Obstacle, ...]
    changes: Changes
    parts: tuple["PartStanding", ...] = ()


@dataclass(frozen=True, slots=True)
class PartStanding:
    """The stamp of a part: it is verified, or stale by what was edited since, or something is in the way."""

    word: Word
    stamp: VerifiedPart
    changes: Changes


def _parts(record: VehicleRecord, data: Data) -> Iterator[PartStanding]:
    for stamp in record.verified_parts.values():
        changes = changed_among(data, stamp.facts, of_stamp(record, data, stamp))
        seen = stamp.taken == SEEN
        word = Word.UNVERIFIED if in_the_way_of(record, stamp.facts, taken_seen=seen) else Word.VERIFIED
        yield PartStanding(Word.STALE if changes else word, stamp, changes)


def standing(record: VehicleRecord, data: Data) -> Standing:
    """How a record stands; `data` is the same record as typed.

    Verified: somebody stamped it, no fact was edited since and nothing is in the way. Stale: facts were edited.
    """
    stamp = record.verified
    changes = changed_since(data, stamp.facts) if stamp else Changes()
    in_the_way = obstacles(record)
    parts = tuple(_parts(record, data))
    if changes:
        return Standing(Word.STALE, in_the_way, changes, parts)
    word = Word.VERIFIED if stamp and not in_the_way else Word.UNVERIFIED
    return Standing(word, in_the_way, changes, parts)
