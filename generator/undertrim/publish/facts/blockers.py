"""What can stop the job or costs the owner something, as it is shown (`derive/blockers.py` reckons it)."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from undertrim.derive import blockers as derived
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.derive.visit import blockers as of_visits
from undertrim.derive.visit.visit import Visit
from undertrim.publish.facts import words
from undertrim.record.identity import slug
from undertrim.record.model import VehicleRecord
from undertrim.words import ENGLISH, Value, say


@dataclass(frozen=True, slots=True)
class Blocker:
    """What is in the way: `weight` is stop, lost, unknown or need; `openings` are those it is about, none for every job.

    By its `id` a device remembers who agreed to it, whatever language its title is said in.
    """

    id: str
    weight: str
    title: Value
    text: Value
    openings: Sequence[str]
    when: Value
    clauses: words.Clauses


def blockers(record: VehicleRecord, address: str = "", stock: Stock = NOTHING) -> list[Blocker]:
    """Those of every job, in order of weight. `stock` is the gear that may keep what the factory unit does."""
    return [_shown(record, item) for item in derived.blockers(record, address, stock)]


def of_visit(made: Visit, openings: Collection[str] | None = None) -> list[Blocker]:
    """Those of a visit, in its cars; `openings` where others are asked about than are worked at."""
    return [_shown(made.record, item) for item in of_visits.blockers(made, openings)]


def _shown(record: VehicleRecord, item: derived.Blocker) -> Blocker:
    cars = words.others(record, item.when, item.titled) if item.titled else words.when(record, item.when)
    return Blocker(
        slug(say(item.title, ENGLISH)),
        item.weight,
        item.title,
        item.text,
        item.openings,
        cars,
        words.clauses(item.when),
    )
