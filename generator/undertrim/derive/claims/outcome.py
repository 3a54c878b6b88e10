"""What came of one answer."""

from dataclasses import dataclass
from enum import StrEnum

from undertrim.words import Message, SaidError


class Deed(StrEnum):
    """What was done with it."""

    FILLED = "filled"
    """What nobody knew, or nobody had said, is written down."""
    SEEN_AGAIN = "seen-again"
    """The record says so; that somebody else found it too is written down."""
    DISPUTED = "disputed"
    """The record says something else: both stand in a conflict."""
    ALREADY = "already"
    """All of it stands in the record."""
    KEPT = "kept"
    """It says nothing that the record could be given."""
    REFUSED = "refused"
    """It cannot be taken."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What was done with an answer, and how that is said."""

    deed: Deed
    said: Message

    @property
    def changes(self) -> bool:
        """Whether the record is another one for it."""
        return self.deed in (Deed.FILLED, Deed.SEEN_AGAIN, Deed.DISPUTED)


class Refused(SaidError, ValueError):  # noqa: N818 - it names what happened
    """An answer that cannot be taken, with the reason."""
