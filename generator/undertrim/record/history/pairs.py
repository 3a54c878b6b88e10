"""Which file was which: one that is gone and one that is new, and say nearly the same, are one record under two names."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from pathlib import Path, PurePosixPath

ALIKE = 0.5
"""Half of the lines are the same: what git takes for a renamed file, too (gitdiffcore: the default of -M)."""
MOST_COMPARED = 400
"""So many pairs are read and compared; beyond that, only files of one name or with the same bytes are one."""


@dataclass(frozen=True, slots=True)
class Pair:
    """A record before and now, by its name below the workspace; empty where it was not, or is not."""

    before: str
    now: str

    @property
    def name(self) -> str:
        """What it is called now, or was."""
        return self.now or self.before


def paired(names: Sequence[str], before: Path, now: Path) -> list[Pair]:
    """The files among `names` that differ between two folders, each once."""
    was = {name: content for name in names if (content := _content(before / name)) is not None}
    is_ = {name: content for name in names if (content := _content(now / name)) is not None}
    gone, new = [name for name in was if name not in is_], [name for name in is_ if name not in was]
    renamed = dict(_renamed({name: was[name] for name in gone}, {name: is_[name] for name in new}))
    taken = set(renamed.values())
    found = [Pair(name, name) for name in was if name in is_]
    found += [Pair(name, renamed.get(name, "")) for name in gone]
    found += [Pair("", name) for name in new if name not in taken]
    return sorted(found, key=lambda pair: pair.name)


def _content(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() and not path.is_symlink() else None


def _renamed(gone: dict[str, bytes], new: dict[str, bytes]) -> Iterator[tuple[str, str]]:
    """Old and new names, the most alike first."""
    every = len(gone) * len(new) <= MOST_COMPARED
    scored = [
        (score, before, now)
        for before, was in gone.items()
        for now, is_ in new.items()
        if PurePosixPath(before).parts[1] == PurePosixPath(now).parts[1]
        and (score := _likeness(before, was, now, is_, every=every)) >= ALIKE
    ]
    left, free = set(gone), set(new)
    for _, before, now in sorted(scored, key=lambda one: (-one[0], one[1], one[2])):
        if before in left and now in free:
            left.discard(before)
            free.discard(now)
            yield before, now


def _likeness(before: str, was: bytes, now: str, is_: bytes, *, every: bool) -> float:
    if was == is_:
        return 2.0
    if not every and PurePosixPath(before).name != PurePosixPath(now).name:
        return 0.0
    return SequenceMatcher(None, was.splitlines(), is_.splitlines(), autojunk=False).ratio()
