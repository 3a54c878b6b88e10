"""What somebody asks for, word by word, before anybody has looked whether it is so."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from undertrim.words import Message, message

JOBS = "jobs"
"""The word before the openings that are worked at."""

SOME = "some"
"""Gear that is left open: some receiver, some speaker."""

NONE = "none"
"""That nothing of a kind stands between."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A vehicle by its name, openings to work at, and other words with their values, such as `radio` with `map` or `dash.kit` with the id of a kit.

    `gear` and `kits` are ids without a word on the opening that they are for. `said` is what is wrong with how it was written.
    """

    vehicle: str = ""
    jobs: tuple[str, ...] = ()
    words: tuple[tuple[str, str], ...] = ()
    gear: tuple[str, ...] = ()
    kits: tuple[str, ...] = ()
    said: tuple[Message, ...] = ()

    def also(self, other: "Asked") -> "Asked":
        """Both together; a word with two values is said."""
        words, said = agreed([*self.words, *other.words])
        return Asked(
            self.vehicle or other.vehicle,
            tuple(dict.fromkeys((*self.jobs, *other.jobs))),
            words,
            (*self.gear, *other.gear),
            (*self.kits, *other.kits),
            (*self.said, *other.said, *said),
        )

    def with_job(self, job: str) -> "Asked":
        """The same with one more opening to work at."""
        return replace(self, jobs=tuple(dict.fromkeys((*self.jobs, job))))


def agreed(words: Sequence[tuple[str, str]]) -> tuple[tuple[tuple[str, str], ...], tuple[Message, ...]]:
    """Each word once with its first value, and what is said of those that have another too."""
    found: dict[str, str] = {}
    said = [
        message("visit/said-twice", word=word, first=found[word], second=value)
        for word, value in words
        if found.setdefault(word, value) != value
    ]
    return tuple(found.items()), tuple(dict.fromkeys(said))
