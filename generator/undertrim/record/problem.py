"""What every stage reports: a place in a file, what is wrong there, and the way out."""

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path


class Level(StrEnum):
    """How much a problem matters: an error stops publication, a warning asks for a second look."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True, order=True)
class Position:
    """A place in a text file; both numbers start at 1."""

    line: int
    column: int


def printable(text: str) -> str:
    """The text on one line, with a question mark for whatever would steer the terminal it is printed on."""
    return text if text.isprintable() else "".join(char if char.isprintable() else "?" for char in text)


@dataclass(frozen=True, slots=True)
class Problem:
    """One finding, complete enough to be printed, sorted and mended.

    `message` is lower case, has no full stop and quotes the value; `hint` is the way out, or empty. Whatever a record
    may have brought into them, both are one printable line.
    """

    file: Path
    position: Position
    level: Level
    rule: str
    message: str
    hint: str = ""

    def __post_init__(self) -> None:
        object.__setattr__(self, "message", printable(self.message))
        object.__setattr__(self, "hint", printable(self.hint))

    @property
    def sort_key(self) -> tuple[str, Position, str, str]:
        """Order by file, then place, then rule."""
        return (str(self.file), self.position, self.rule, self.message)
