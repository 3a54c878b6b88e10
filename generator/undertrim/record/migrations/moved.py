"""What comes of moving a record to another format."""

from dataclasses import dataclass

from undertrim.record.source import Pointer
from undertrim.words import SaidError


@dataclass(frozen=True, slots=True)
class Moved:
    """The text in the new format; `added` are the places of what the new format takes to follow and the old one left unsaid."""

    text: str
    added: tuple[Pointer, ...] = ()


class CannotMove(SaidError, ValueError):  # noqa: N818 - it names what happened
    """The text is laid out in a way that the move would not leave its facts and comments as they are."""
