"""Takes the whole records of a gift ('undertrim give --out'): each where there is none, if the check has nothing against it."""

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from undertrim.check import giving, reports, taking
from undertrim.check.settling import check_entry
from undertrim.check.twins import twins
from undertrim.derive.claims import Deed
from undertrim.record.layers import Shared
from undertrim.record.problem import Level, Problem, printable
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, WayOut, message, say


@dataclass(frozen=True, slots=True)
class Brought:
    """What came of one record: its file in the gift, where it stands or would stand, and what was done."""

    file: Path
    path: Path
    deed: Deed
    said: Message
    like: Sequence[Problem] = ()

    def tell(self) -> None:
        """Say it, a refusal on standard error."""
        refused = self.deed is Deed.REFUSED
        said = message("claims/refused", said=self.said) if refused else self.said
        out = sys.stderr if refused else sys.stdout
        print(printable(f"{self.file}: {say(said)}"), file=out)
        if way_out := say(WayOut(self.said)):
            print(f"    {printable(way_out)}", file=out)
        print(*(f"{line}\n" for line in reports.lines(self.like)), sep="", end="")

    def data(self, place: Workspace) -> dict[str, object]:
        """The same as data."""
        path = str(place.shown(self.path))
        like = [reports.data(problem) for problem in self.like]
        return {"file": str(self.file), "path": path, "deed": str(self.deed), "said": self.said, "like": like}


def files(paths: Sequence[Path]) -> list[Path]:
    """The claims files among some paths: what is a folder is a gift, and may hold one."""
    every = [path / giving.CLAIMS if path.is_dir() else path for path in paths]
    return [path for path in every if path.is_file()]


def take(place: Workspace, paths: Sequence[Path], *, dry: bool) -> list[Brought]:
    """Take the records of those paths that are gifts; nothing is written if it is `dry`."""
    return [one for path in paths if path.is_dir() for one in _take(place, path.resolve(), dry=dry)]


def _take(place: Workspace, folder: Path, *, dry: bool) -> Iterator[Brought]:
    """A gift is read as a layer on what takes it: so its records may take from those that are here."""
    gift = Workspace(folder, (*place.shared, Shared("", place.root)))
    for path in gift.own_files() if (folder / "records").is_dir() else ():
        target = place.at(gift.name(path))
        said = {"path": printable(str(place.shown(target)))}
        entry = gift.load(path)
        if target.exists():
            same = place.is_same(target, entry.path)
            deed, code = (Deed.ALREADY, "starting/already") if same else (Deed.REFUSED, "copy/there")
            yield Brought(place.shown(path), target, deed, message(code, **said))
        elif refusal := _refusal(entry):
            yield Brought(place.shown(path), target, Deed.REFUSED, refusal)
        else:
            like = twins(place, replace(entry, path=target))
            if not dry:
                giving.copy(path, target)
            code = "starting/would-begin" if dry else "starting/begun"
            yield Brought(place.shown(path), target, Deed.FILLED, message(code, **said), like)


def _refusal(entry: Entry) -> Message | None:
    """Why a record cannot be taken: the first error that the check finds."""
    errors = (problem for problem in check_entry(entry) if problem.level is Level.ERROR)
    return next((taking.spoils(problem) for problem in errors), None)
