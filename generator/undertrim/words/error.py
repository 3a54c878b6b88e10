"""An exception that holds a message: it becomes words where it is printed."""

from undertrim.words.catalogue import sentence, way_out
from undertrim.words.message import Message


class SaidError(Exception):
    """`said` is what is wrong, with its way out in the catalogue where it has one."""

    def __init__(self, said: Message) -> None:
        super().__init__(said)
        self.said = said

    @property
    def message(self) -> str:
        """What is wrong, in words."""
        return sentence(self.said)

    @property
    def hint(self) -> str:
        """The way out, in words; may be empty."""
        return way_out(self.said)

    def __str__(self) -> str:
        return self.message
