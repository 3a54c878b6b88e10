"""What is done with a mutant: all that the commands do with a record, each stage watched for exceptions and time."""

# Long because it is one list of stages: all that commands and pages do with a record, each of them watched.

import time
import traceback
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, partial
from itertools import groupby, islice
from pathlib import Path
from typing import Any, TypeVar

from mutants import ROOT, Mutant

from undertrim.check import one_file, reports, settling
from undertrim.check.across import Across, across
from undertrim.check.one_file import CRASH, Looked
from undertrim.check.register import COLLECTION_RULES
from undertrim.check.runner import Report
from undertrim.check.shelf import stock
from undertrim.derive import jobs
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear, Stock, Stocked
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import targets
from undertrim.derive.wiring.groups import joints
from undertrim.derive.wiring.leads import NoLeads
from undertrim.publish.encoding import compact, indented
from undertrim.publish.facts import shelf as shelf_facts
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.joint import joints as joints_data
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.publish.facts.visit import visit
from undertrim.publish.printed import pdf
from undertrim.publish.terminal.fit import fit_data, fit_text
from undertrim.publish.terminal.plan import plan_text
from undertrim.publish.terminal.wiring import joint_text, plugs_text
from undertrim.record.combinations import TooMany
from undertrim.record.gear import GearRecord
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.model.kinds.receiver import LeadsGear
from undertrim.record.problem import Problem
from undertrim.record.source import read_bytes
from undertrim.record.store import Entry, Workspace, address, entry
from undertrim.words import say
from undertrim.work.worker import Failed
from vehicle_pages import all_pages

HANG = 2.0
"""Seconds of processor time that no stage may need; a clock would blame the record for a busy machine."""
REFUSALS = (jobs.BadRequest, Unreachable, TooTangled, Unplannable, NoLeads, TooMany)
"""What the commands make a sentence of."""
DAY = date(2026, 1, 1)
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Found:
    """What went wrong: in which stage, what and where in a form that is the same for the same fault, and all that is known."""

    stage: str
    what: str
    detail: str = ""


@dataclass(frozen=True, slots=True)
class Tried:
    """What became of a mutant; it `passed` if the check has no errors."""

    passed: bool
    found: Found | None


class _Stop(Exception):  # noqa: N818 - it ends a trial
    def __init__(self, found: Found) -> None:
        super().__init__(found)
        self.found = found


@dataclass(frozen=True, slots=True)
class _Base:
    """The shipped records, read once in each process."""

    workspace: Workspace
    shelf: Stock
    looked: tuple[Looked, ...]

    def around(self, path: Path) -> "_Base":
        """What a record meets first: what names it and what it names, and two of each kind of gear for every vehicle."""
        here = address(path)
        named = {place.vehicle for item in self.shelf.items if item.id == path.stem for place in item.facts.suits}
        at_hand = [item for item in self.shelf.items if any(place.vehicle == here for place in item.facts.suits)]
        for _, items in groupby(sorted(self.shelf.items, key=_kind), key=_kind):
            at_hand.extend(islice((item for item in items if not item.facts.suits), 2))
        ids = {item.id for item in at_hand}
        named |= {address(item.path) for item in self.looked if item.path.parent.name == path.parent.name}
        looked = [item for item in self.looked if item.path.stem in ids or address(item.path) in named]
        return replace(self, shelf=replace(self.shelf, items=tuple(at_hand)), looked=tuple(looked))


def _kind(item: Gear) -> str:
    return item.facts.kind


@cache
def base() -> _Base:
    """The whole collection."""
    workspace = Workspace(ROOT)
    return _Base(
        workspace, stock(workspace), tuple(one_file.neighbour(workspace.load(path)) for path in workspace.files())
    )


@cache
def _around(path: Path) -> _Base:
    return base().around(path)


def tried(mutant: Mutant, *, dear: bool = False) -> Tried:
    """Put a mutant in the place of its original, and do with it and around it what the commands would.

    What is `dear` is left out otherwise: the whole collection, a vehicle's sheets, and the page of a vehicle beside
    spoilt gear.
    """
    passed = False
    near = base() if dear else _around(mutant.path)
    try:
        made = _stage(
            "read",
            lambda: entry(mutant.path, near.workspace.kind(mutant.path), read_bytes(mutant.content, mutant.path)),
        )
        passed = not _checked(made, near.looked).errors
        if isinstance(made.record, VehicleRecord) and not made.problems:
            _commands(made, made.record, near.shelf)
            if passed:
                _published(made, near.shelf, sheet=dear)
        elif isinstance(made.record, GearRecord) and passed and dear:
            _neighbours_published(made, made.record)
    except _Stop as stop:
        return Tried(passed, stop.found)
    return Tried(passed, None)


def failed(why: Failed) -> Found:
    """What is said of a mutant that ended its worker, or was ended."""
    return Found("worker", f"{why.fault}: {say(why.said)[:80]}", why.trace)


def _stage(name: str, work: Callable[[], T]) -> T:
    """The result of one stage. Raises _Stop where it fails or takes too long."""
    before = time.process_time()
    try:
        result = work()
    except REFUSALS:
        raise
    except (OSError, MemoryError):
        raise  # the worker knows what to say of these
    except Exception as error:
        raise _Stop(Found(name, _signature(error), traceback.format_exc(limit=-8))) from error
    took = time.process_time() - before
    if took > HANG:
        raise _Stop(Found(name, "takes too long", f"{took:.1f} s of processor time"))
    return result


def _willing(name: str, work: Callable[[], T]) -> T | None:
    """The same; nothing where a command would refuse with a sentence."""
    try:
        return _stage(name, work)
    except REFUSALS:
        return None


def _signature(error: Exception) -> str:
    """The kind of an exception and the line of ours that it came from."""
    ours = [frame for frame in traceback.extract_tb(error.__traceback__) if "undertrim" in frame.filename]
    place = f"{Path(ours[-1].filename).name}:{ours[-1].lineno}" if ours else "?"
    return f"{type(error).__name__} at {place}"


def _checked(made: Entry, beside: Sequence[Looked]) -> Report:
    """The check of one file, then of all with it in its place, and the report of it in every form."""
    looked = _stage("check", lambda: one_file.look(made))
    others = [item for item in beside if item.path.stem != looked.path.stem]
    said = _stage("check of all", lambda: across([looked, *others])) if looked.card else Across()
    _no_crash("check of all", [problem for found in said.found.values() for problem in found])
    settled = _stage("allows", lambda: tuple(settling.settled(looked, said.of(looked), COLLECTION_RULES)))
    _no_crash("check", [*looked.problems, *settled])
    report = Report(1, tuple(sorted(settled, key=lambda problem: problem.sort_key)))
    for write in (reports.text, reports.as_json, reports.github):
        _stage("report", partial(_encoded, write, report))
    return report


def _encoded(write: Callable[[Report], str], report: Report) -> bytes:
    return write(report).encode()


def _no_crash(stage: str, problems: Sequence[Problem]) -> None:
    for problem in problems:
        if problem.rule == CRASH:
            raise _Stop(
                Found(stage, problem.message.partition(": ")[0] + problem.message.partition(": ")[2][:16], str(problem))
            )


def _commands(made: Entry, record: VehicleRecord, shelf: Stock) -> None:
    """`plan`, `fit` and `wiring`, which need no more than what the schema allows."""
    _willing("plan", lambda: plan_text(visit(record, made.address, targets(record), {}, shelf)).encode())
    vehicle = Vehicle(record, made.address, shelf, clearances())
    _willing("fit", lambda: _fit(vehicle))
    _willing("wiring", lambda: plugs_text(car_wiring(record, made.address, {})).encode())
    for opening in [item for item in record.openings.values() if item.takes_over]:
        for leads in shelf.of(LeadsGear):
            _willing("joint", partial(_joint, vehicle, opening, leads))


def _joint(vehicle: Vehicle, opening: Opening, leads: Gear) -> bytes:
    found = joints(vehicle.record, vehicle.address, opening, leads, vehicle.stock)
    return joint_text(joints_data(vehicle.record, vehicle.address, leads, found)).encode()


def _fit(vehicle: Vehicle) -> bytes:
    answers = [item for opening in vehicle.record.openings.values() for item in answer(vehicle, opening, None, {})]
    return (fit_text(vehicle, answers, full=True) + compact(fit_data(vehicle, answers))).encode()


def _published(made: Entry, shelf: Stock, *, sheet: bool) -> None:
    """A vehicle's page and data, and its sheet where it is wanted."""
    known = _willing("facts", lambda: facts.vehicle(made, DAY))
    if known is None:
        return
    _stage("page", lambda: all_pages(known).encode())
    _stage("file on the shelf", lambda: _on_shelf(made, shelf))
    _stage("data", lambda: indented(known).encode())
    if sheet:
        _stage("sheet", lambda: pdf.render(known, dict.fromkeys(pdf.VIEWS, "https://undertrim.example/"), "a4", DAY))


def _neighbours_published(made: Entry, record: GearRecord) -> None:
    """A shipped vehicle with this gear among the stock: the first that it names, or one of all by its name's length."""
    shelf = base().shelf
    items = (*(item for item in shelf.items if item.id != made.id), Stocked(made.id, record.gear))
    vehicle = _vehicle_beside(record)
    _willing("a vehicle beside it", lambda: _on_shelf(vehicle, replace(shelf, items=items)))


def _on_shelf(made: Entry, shelf: Stock) -> bytes:
    """What follows from a vehicle and the stock."""
    assert isinstance(made.record, VehicleRecord)
    made_of = Vehicle(reckoned(made.record), made.address, shelf, clearances())
    return "".join(shelf_facts.of_vehicle(made_of).values()).encode()


def _vehicle_beside(record: GearRecord) -> Entry:
    vehicles = _vehicles()
    named: list[Any] = [place.vehicle for place in record.gear.suits if place.vehicle in vehicles]
    return vehicles[named[0] if named else sorted(vehicles)[len(record.gear.model) % len(vehicles)]]


@cache
def _vehicles() -> dict[str, Entry]:
    loaded = [
        base().workspace.load(path) for path in base().workspace.files() if base().workspace.kind(path) == "vehicle"
    ]
    return {item.address: item for item in loaded}
