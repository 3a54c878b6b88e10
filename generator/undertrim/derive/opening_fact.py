"""One fact that an opening wants."""

from dataclasses import dataclass

from undertrim.record.model import Blank
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact about an opening, by the keys that lead to it joined with '/'; `to_do` says how to find it out; empty where there is nothing to do."""

    key: str
    known: bool
    to_do: Value
    safety: bool = False

    @property
    def name(self) -> Message:
        """What it is called: `face width`."""
        return message(f"opening-facts/{self.key.replace('/', '-')}")


def known(value: object) -> bool:
    """Whether somebody has given an answer; 'none' is one."""
    return value not in (None, "", Blank.UNKNOWN)
