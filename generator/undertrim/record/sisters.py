"""Finds the records that others take from, and says in short which ones a record's text may take from."""

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from undertrim.record.digests import Digests, joined
from undertrim.record.nearness import suggestion
from undertrim.record.numerals import quoted
from undertrim.record.sharing import FIELD
from undertrim.record.source import Sister
from undertrim.words import Message, message, one_of

_WORD = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_SHARES = re.compile(rb"(?:^|[{\s\"'])shares[\"']?\s*:")
_ENDINGS = (".yaml", ".yml")


@dataclass(frozen=True)
class Shelf:
    """The vehicle records, those beside the one at `path`; `read` reads one by itself, without what it takes from others."""

    every: Callable[[], Iterable[Path]]
    path: Path
    read: Callable[[Path], Sister]

    def find(self, name: str) -> Sister | Message:
        """The record that goes by `<id>` or `<make>/<id>`, or why nothing can be taken from it."""
        make, _, stem = name.rpartition("/")
        every = list(self.every())
        found = [path for path in every if path.stem == stem and make in ("", path.parent.name)]
        if not found:
            others = sorted({path.stem for path in every if path != self.path})
            near = suggestion(stem, others, message("nearness/vehicles"))
            return message("sharing/no-record", name=quoted(name), near=near)
        if len(found) > 1:
            return message("sharing/several", name=quoted(name), addresses=one_of(*map(_address, found)))
        return message("sharing/itself") if _same(found[0], self.path) else self._sound(found[0])

    def _sound(self, path: Path) -> Sister | Message:
        """The record, if nothing is wrong with what it says and it says all of it itself."""
        found = self.read(path)
        typed = found.source.as_typed.data
        if isinstance(typed, dict) and FIELD in typed:
            return message("sharing/chain", record=quoted(found.address))
        if found.problems or not isinstance(typed, dict) or "vehicle" not in typed:
            return message("sharing/broken", record=quoted(found.address), path=str(found.source.path))
        return found


def sisters_digest(
    every: Callable[[], Iterable[Path]], path: Path, digests: Digests, state: Callable[[Path], str]
) -> str:
    """Changes with every record that the one at `path` may take from, by its `state`; empty where it takes from none.

    The text is not read as YAML: each word in it that some record goes by counts. Raises OSError where it cannot be read.
    """
    words = digests.words(path, _named)
    if not words:
        return ""
    near = (other for other in every() if other.stem in words and other != path)
    return joined("sisters", *(f"{_address(other)} {state(other)}" for other in near))


def takers(every: Iterable[Path], named: frozenset[str], digests: Digests) -> list[Path]:
    """The records that may take something from one that goes by one of these names. Raises OSError where one cannot be read."""
    return [path for path in every if path.stem not in named and named & digests.words(path, _named)]


def taken_from(content: bytes) -> frozenset[str]:
    """The words of a record's text that may be names of those it takes from; none where it takes from no other."""
    return _named(content)


def _named(content: bytes) -> frozenset[str]:
    """The words of a text that may be names of records; none where it takes from no other."""
    if not _SHARES.search(content):
        return frozenset()
    return frozenset(_WORD.findall(content.decode("utf-8", "replace")))


def vehicle_files(vehicles: Path) -> Iterator[Path]:
    """The vehicle records in a folder of all makes, sorted."""
    return (path for path in sorted(vehicles.glob("*/*")) if path.suffix in _ENDINGS and path.name[0] != ".")


def _address(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


def _same(one: Path, other: Path) -> bool:
    return one == other or (one.exists() and other.exists() and one.samefile(other))
