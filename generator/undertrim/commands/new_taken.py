"""Begins the records of cars that claims files describe: the same as 'undertrim new' does, for 'undertrim take'."""

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.check import reports, starting, taking
from undertrim.check.twins import twins
from undertrim.commands import new_car
from undertrim.derive.claims import Deed
from undertrim.record.beginning import NewCar
from undertrim.record.claims import ClaimsFile, NewVehicle
from undertrim.record.problem import Problem, printable
from undertrim.record.store import Workspace
from undertrim.words import Message, WayOut, message, say


@dataclass(frozen=True, slots=True)
class Begun:
    """What came of one new car: its file, where its record is or would be, what was done, and which records it is like."""

    file: ClaimsFile
    path: Path
    deed: Deed
    said: Message
    like: Sequence[Problem] = ()

    def tell(self) -> None:
        """Say it, a refusal on standard error."""
        at = self.file.source.position(("new_vehicle",))
        where = f"{printable(str(self.file.source.path))}:{at.line}:{at.column}: new_vehicle"
        refused = self.deed is Deed.REFUSED
        said = message("claims/refused", said=self.said) if refused else self.said
        way_out = say(WayOut(self.said))
        out = sys.stderr if refused else sys.stdout
        print(
            printable(f"{where}: {say(said)}"), *([f"    {printable(way_out)}"] if way_out else []), sep="\n", file=out
        )
        print(*(f"{line}\n" for line in reports.lines(self.like)), sep="", end="")

    def data(self, place: Workspace) -> dict[str, object]:
        """The same as data."""
        path = str(place.shown(self.path))
        like = [reports.data(problem) for problem in self.like]
        return {
            "file": str(self.file.source.path),
            "path": path,
            "deed": str(self.deed),
            "said": self.said,
            "like": like,
        }


def begin(place: Workspace, files: Sequence[ClaimsFile], *, dry: bool) -> list[Begun]:
    """The records that the files begin, written unless it is `dry`."""
    return [one for file in files for one in _begin(place, file, file.new, dry=dry)]


def _begin(place: Workspace, file: ClaimsFile, new: NewVehicle | None, *, dry: bool) -> Iterator[Begun]:
    if new is None:
        return
    car = new_car.described(new)
    path = place.at(place.name(place.own("vehicles", car.path)))
    shown = printable(str(place.shown(path)))
    if _is_there(place, car, path):
        yield Begun(file, path, Deed.ALREADY, message("starting/already", path=shown))
        return
    made = new_car.begin(place, car, None, another=False)
    if isinstance(made, Message):
        yield Begun(file, path, Deed.REFUSED, made)
    elif made.errors:
        yield Begun(file, path, Deed.REFUSED, taking.spoils(made.errors[0]))
    else:
        like = twins(place, made.entry)
        if not dry:
            made.write()
        code = "starting/would-begin" if dry else "starting/begun"
        yield Begun(file, path, Deed.FILLED, message(code, path=shown), like)


def _is_there(place: Workspace, car: NewCar, path: Path) -> bool:
    """Whether the record that it would begin is there: then the file was taken before."""
    return path.exists() and any(one.same and one.entry.path == path for one in starting.known(place, car.facts))
