"""Who found what out, what is disputed, and what was verified."""

from dataclasses import dataclass, field
from typing import Literal

from undertrim.record.model.basics import Count, Month, Sources


@dataclass(frozen=True, slots=True)
class CarSeen:
    """The car that was looked at: as one line of `text`, or field by field; None and nothing where it was not said."""

    text: str = ""
    year: Count | None = None
    built: Month | None = None
    side: Literal["left", "right", "unknown"] | None = None
    is_: dict[str, str] = field(default_factory=dict)
    note: str = ""


@dataclass(frozen=True, slots=True)
class Evidence:
    """Who found what out, on which car, when, how."""

    id: str
    how: str
    on: str
    by: str
    car: CarSeen | None = None
    side: Literal["left", "right"] | None = None
    """At which side of the car, where a thing is there once for each."""
    with_: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Claim:
    """What one piece of evidence says, as typed; one without is what the record said before, from nobody knows where."""

    says: str
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Conflict:
    """A fact on which the evidence disagrees; `about` are the keys that lead to it, joined with `/`."""

    id: str
    about: str
    claims: tuple[Claim, ...]
    settled_by: str = ""


@dataclass(frozen=True, slots=True)
class Verified:
    """Who checked the record at which car, with a fingerprint of every block of facts as it stood then."""

    on: str
    by: str
    car: CarSeen
    facts: dict[str, str]
    taken: Literal["", "seen"] = ""
    """Whether what is taken from other records was looked at on this car."""


@dataclass(frozen=True, slots=True)
class VerifiedPart:
    """Who checked the openings `of` a record at which car, at one side or wherever they are, with the fingerprints of what they rest on."""

    id: str
    on: str
    by: str
    car: CarSeen
    of: tuple[str, ...]
    facts: dict[str, str]
    side: Literal["left", "right"] | None = None
    taken: Literal["", "seen"] = ""
