"""What a record takes from another one."""

from dataclasses import dataclass

from undertrim.words import Message, message


@dataclass(frozen=True, slots=True)
class Taken:
    """The record that something was taken from: its address, what its cars are called, and the first and last month of build.

    `own` are the fields of the same thing (with its section) that the record which takes states itself, with a source.
    """

    address: str
    make: str
    model: str
    first: str
    last: str
    own: tuple[tuple[str, str], ...] = ()

    @property
    def said(self) -> Message:
        """The car in words."""
        return message("sharing/car", make=self.make, model=self.model, first=self.first[:4], last=self.last[:4])
