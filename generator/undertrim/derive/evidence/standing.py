"""Whether a record was checked at a car, and whether that still holds."""

from dataclasses import dataclass
from enum import StrEnum

from undertrim.derive.evidence.fingerprint import Changes, changed_since
from undertrim.derive.evidence.obstacles import Obstacle, obstacles
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data


class Word(StrEnum):
    """A record's standing in a word."""

    VERIFIED = "verified"
    STALE = "stale"
    UNVERIFIED = "unverified"


@dataclass(frozen=True, slots=True)
class Standing:
    """A record's standing: what is in the way, and what was edited since it was verified."""

    word: Word
    obstacles: tuple[Obstacle, ...]
    changes: Changes


def standing(record: VehicleRecord, data: Data) -> Standing:
    """How a record stands; `data` is the same record as typed.

    Verified: somebody stamped it, no fact was edited since and nothing is in the way. Stale: facts were edited.
    """
    stamp = record.verified
    changes = changed_since(data, stamp.facts) if stamp else Changes()
    in_the_way = obstacles(record)
    if changes:
        return Standing(Word.STALE, in_the_way, changes)
    word = Word.VERIFIED if stamp and not in_the_way else Word.UNVERIFIED
    return Standing(word, in_the_way, changes)
