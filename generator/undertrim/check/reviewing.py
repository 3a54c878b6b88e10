"""Reads both sides of a comparison, and puts each record that differs, and each that others reach, through it."""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from undertrim.check import together
from undertrim.check.cache import remembered
from undertrim.check.one_file import Looked, neighbour
from undertrim.check.reaching import TOGETHER, named, reached, uncompared
from undertrim.check.runner import check_entry
from undertrim.check.shelf import stock
from undertrim.check.together import Seen
from undertrim.derive.fit.stock import Stock
from undertrim.derive.review import gear as of_gear
from undertrim.derive.review import vehicle as of_vehicle
from undertrim.derive.review.change import GearSide, Side, Sort, Weight
from undertrim.derive.review.outcome import GearChange, Review, Short, VehicleChange
from undertrim.record import photo_files
from undertrim.record.gear import GearRecord
from undertrim.record.history.base import Base, pairs
from undertrim.record.history.pairs import Pair
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Problem
from undertrim.record.sisters import taken_from, takers
from undertrim.record.store import Entry, Workspace, address
from undertrim.words import Message, message

Progress = Callable[[int, int], None]


def review(here: Workspace, base: Base, progress: Progress | None = None) -> Review:
    """What the changes since `base` do. Raises NoHistory."""
    looking = _Looking(here, base)
    differing = [*pairs(base, here), *looking.added()]
    gear = [(pair, *looking.gear(pair)) for pair in differing if here.kind(here.at(pair.name)) == "gear"]
    vehicles = [pair for pair in differing if here.kind(here.at(pair.name)) == "vehicle"]
    vehicles += looking.taking(vehicles)
    if not vehicles and not gear:
        return Review(base.called, (), (), ())
    stocks = looking.stocks([(pair, before, after) for pair, before, after in gear])
    others = looking.reached([(before, after) for _, before, after in gear], {pair.now for pair in vehicles})
    ids = [Path(pair.name).stem for pair, _, _ in gear]
    told = partial(_tell, progress, len(vehicles) + len(others))
    done = [*_changed(looking, vehicles, stocks, told), *_reached(here, others, stocks, ids, told, len(vehicles))]
    new, gone = looking.together(vehicles)
    return Review(
        base.called,
        tuple(sorted((one for one in done if isinstance(one, VehicleChange) and not one.empty), key=_order)),
        tuple(one for one in done if isinstance(one, Short)),
        tuple(looking.of_gear(gear)),
        new,
        gone,
    )


def _changed(
    looking: "_Looking", vehicles: Sequence[Pair], stocks: tuple[Stock, Stock], told: Callable[[int], None]
) -> Iterator[VehicleChange | Short]:
    """The vehicles whose own records differ."""
    for number, pair in enumerate(vehicles, 1):
        yield looking.vehicle(pair, stocks)
        told(number)


def _reached(
    here: Workspace,
    others: Sequence[Path],
    stocks: tuple[Stock, Stock],
    gear: Sequence[str],
    told: Callable[[int], None],
    before: int,
) -> Iterator[VehicleChange | Short]:
    """The vehicles that only other gear reaches; so many were done `before`."""
    for number, found in enumerate(reached(here, others, stocks, gear), 1):
        yield from found
        told(before + min(number * TOGETHER, len(others)))


def _tell(progress: Progress | None, total: int, number: int) -> None:
    if progress:
        progress(number, total)


def _order(one: VehicleChange) -> tuple[int, str]:
    """The riskiest first."""
    return list(Weight).index(one.weight), one.address


@dataclass(frozen=True)
class _Looking:
    here: Workspace
    base: Base
    before: list[Seen] = field(default_factory=list)
    now: list[Seen] = field(default_factory=list)
    """What the rules for the collection see of each changed record on either side, as it was read."""
    shelf: dict[Path, Looked] = field(default_factory=dict)
    """The same of all gear of now."""

    def added(self) -> list[Pair]:
        """The shared records to which the own layer adds something else."""
        found = ((name, self.here.at(name)) for name in self.base.added())
        return [Pair(name, name) for name, path in found if path.is_file() and not self.here.is_own(path)]

    def taking(self, vehicles: Sequence[Pair]) -> list[Pair]:
        """The records that take something from a changed one, though they say what they said; what those of before take from is fetched."""
        digests = remembered(self.here)
        named = frozenset(Path(name).stem for pair in vehicles for name in (pair.before, pair.now) if name)
        found = takers(self.here.beside(), named, digests) if named else []
        digests.ledger.save()
        known = {pair.now for pair in vehicles}
        names = [name for path in found if (name := self.here.name(path)) not in known]
        self.base.fetch(names)
        more = [Pair(name, name) for name in names]
        self._fetch_sisters([*vehicles, *more])
        return more

    def _fetch_sisters(self, vehicles: Sequence[Pair]) -> None:
        root = self.base.workspace.root
        texts = (root / pair.before for pair in vehicles if pair.before)
        words = frozenset[str]().union(*(taken_from(path.read_bytes()) for path in texts if path.is_file()))
        if words:
            every = (name for name in self.base.names() if name.startswith("records/vehicles/"))
            self.base.fetch(name for name in every if Path(name).stem in words)

    def vehicle(self, pair: Pair, stocks: tuple[Stock, Stock]) -> VehicleChange | Short:
        """One changed vehicle; one that cannot be read or compared is named, and the others go on."""
        before, after = self._loaded(pair)
        broken = [one for one in (before, after) if one and not isinstance(one.record, VehicleRecord)]
        if broken:
            return _broken(pair, before, after)
        try:
            if before and after:
                found = of_vehicle.vehicle(_side(before), _side(after), stocks)
                return replace(found, photos=tuple(_photos(before.path, after.path)))
            return _short(before, after)
        except Exception as error:  # noqa: BLE001 - whatever it is, the run goes on and the record is named
            return uncompared(Path(pair.name), named(error))

    def gear(self, pair: Pair) -> tuple[GearSide | None, GearSide | None]:
        """A changed piece of gear on both sides; None where there is none, or none that can be read."""
        before, after = self._loaded(pair)
        return _gear_side(before), _gear_side(after)

    def of_gear(self, gear: Sequence[tuple[Pair, GearSide | None, GearSide | None]]) -> Iterator[GearChange]:
        """What changed about each piece of gear."""
        yield from (of_gear.gear(before, after) for _, before, after in gear if before or after)

    def stocks(self, gear: Sequence[tuple[Pair, GearSide | None, GearSide | None]]) -> tuple[Stock, Stock]:
        """The stock of before and of now. Only what has no error stands in one."""
        now = stock(self.here, lambda entry: self.shelf.update({entry.source.path: neighbour(entry)}))
        replaced = {Path(pair.name).stem: before if before and _sound(before) else None for pair, before, _ in gear}
        return of_gear.shelf(now, replaced) if replaced else now, now

    def reached(self, gear: Sequence[tuple[GearSide | None, GearSide | None]], known: Collection[str]) -> list[Path]:
        """The other vehicles that changed gear can turn something for."""
        every: set[str] = set()
        for before, after in gear:
            found = of_gear.reaches(before, after)
            if found is None:
                return self._vehicles(known, None)
            every |= found
        return self._vehicles(known, every) if every else []

    def _vehicles(self, known: Collection[str], among: Collection[str] | None) -> list[Path]:
        paths = self.here.every("vehicles")
        wanted = (path for path in paths if among is None or address(path) in among)
        return [path for path in wanted if self.here.name(path) not in known]

    def together(self, vehicles: Sequence[Pair]) -> tuple[tuple[Problem, ...], tuple[Problem, ...]]:
        """What is found of several records together now and was not, and what no longer is."""
        changed = {one.looked.path for one in (*self.before, *self.now)}
        stock = [looked for path, looked in self.shelf.items() if path not in changed]
        files = self._vehicles({pair.now for pair in vehicles}, None)
        return together.differing(self.here, self.before, self.now, stock, files)

    def _loaded(self, pair: Pair) -> tuple[Entry | None, Entry | None]:
        """A changed record on both sides."""
        found = []
        for place, name, known in ((self.base.workspace, pair.before, self.before), (self.here, pair.now, self.now)):
            entry = place.load(place.at(name)) if name else None
            if entry:
                known.append(together.seen(entry, self.here.shown(self.here.at(name))))
            found.append(entry)
        return found[0], found[1]


def _photos(before: Path, after: Path) -> Iterator[str]:
    """The photographs whose files are others, new or gone."""
    was, now = (photo_files.album(path) for path in (before, after))
    for name in dict.fromkeys((*now.names, *was.names)):
        ends = [_content(photo_files.folder(path) / name) for path in (before, after)]
        if ends[0] != ends[1]:
            yield name


def _content(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() and not path.is_symlink() else None


def _side(entry: Entry) -> Side:
    assert isinstance(entry.record, VehicleRecord)
    return Side(entry.record, entry.address, entry.source.data, check_entry(entry))


def _gear_side(entry: Entry | None) -> GearSide | None:
    if entry is None or not isinstance(entry.record, GearRecord):
        return None
    return GearSide(entry.record, entry.id, entry.source.data, check_entry(entry))


def _sound(side: GearSide) -> bool:
    return not any(problem.level is Level.ERROR for problem in side.problems)


def _short(before: Entry | None, after: Entry | None) -> Short:
    entry = after or before
    assert entry
    assert isinstance(entry.record, VehicleRecord)
    record = entry.record
    return Short(
        entry.address,
        f"{record.vehicle.make} {record.vehicle.model}",
        Sort.ADDED if after else Sort.GONE,
        tuple(dict.fromkeys(job.name for job in record.jobs.values())) if after else (),
        record.verified is not None,
        check_entry(entry) if after else (),
    )


def _broken(pair: Pair, before: Entry | None, after: Entry | None) -> Short:
    now = after is not None and not isinstance(after.record, VehicleRecord)
    why: Message = message("review/broken-now" if now else "review/broken-before")
    return Short(address(Path(pair.name)), "", Sort.CHANGED, found=after.problems if now and after else (), why=why)
