"""What every stage reports: a place in a file, what is wrong there, and the way out."""

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from undertrim.words import ENGLISH, Message, sentence, way_out


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
    """One finding, complete enough to be printed, sorted and mended: `said` is what is wrong, with its way out in the catalogue."""

    file: Path
    position: Position
    level: Level
    rule: str
    said: Message

    @property
    def message(self) -> str:
        """What is wrong, in lower case, without a full stop, values in quotes; one printable line, whatever a record brought into it."""
        return printable(sentence(self.said))

    @property
    def hint(self) -> str:
        """The way out, likewise; empty where there is nothing to say."""
        return printable(way_out(self.said))

    @property
    def sort_key(self) -> tuple[str, Position, str, str]:
        """Order by file, then place, then rule, then the English, so that it is the same in every language."""
        return (str(self.file), self.position, self.rule, sentence(self.said, ENGLISH))
