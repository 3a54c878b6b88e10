"""One answer of a claims file with all that holds for it."""

from dataclasses import dataclass
from enum import StrEnum

from undertrim.record.source import Data, Pointer


class Found(StrEnum):
    """What came of looking, where it is no value."""

    NONE = "none"
    CANNOT_TELL = "cannot-tell"
    NOT_SO = "not-so"


FOUND = tuple(Found)


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture beside the claims file, and what is to be seen in it."""

    file: str
    shows: str


@dataclass(frozen=True, slots=True)
class Answer:
    """What was found out of one fact: what it `says` as typed, or what was `found`; where in its file it stands, and who says so.

    It is about a vehicle (make/id) or about gear (its id); the other is empty. `size` and `hit` are what was in the way of gear, and what it met.
    `car` is as typed: one line of text, the name it has in the record, or its fields; None where it is not said.
    """

    pointer: Pointer
    vehicle: str
    about: str
    by: str
    on: str
    how: str
    says: str = ""
    found: Found | None = None
    was: str = ""
    with_: str = ""
    car: Data = None
    side: str = ""
    note: str = ""
    photo: Photo | None = None
    gear: str = ""
    size: str = ""
    hit: str = ""

    @property
    def record(self) -> str:
        """The record that it is about, as the file says it."""
        return self.gear or self.vehicle

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys that lead to the fact."""
        return tuple(self.about.split("/"))
