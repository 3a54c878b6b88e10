"""One fact that an opening wants."""

from dataclasses import dataclass

from undertrim.record.model import Blank


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact about an opening, by the keys that lead to it joined with '/'; `to_do` says how to find it out."""

    key: str
    known: bool
    to_do: str
    safety: bool = False

    @property
    def name(self) -> str:
        """What it is called: `face width`."""
        return self.key.replace("/", " ").replace("_", " ")


def known(value: object) -> bool:
    """Whether somebody has given an answer; 'none' is one."""
    return value not in (None, "", Blank.UNKNOWN)
