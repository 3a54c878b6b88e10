"""All that the changes of one record do, put together."""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.derive.blockers import Blocker, of_record
from undertrim.derive.conflict_texts import conflict
from undertrim.derive.evidence.disputed import open_disputes, reckoned
from undertrim.derive.evidence.standing import standing
from undertrim.derive.fact_names import block_name
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.duty_groups import becomes
from undertrim.derive.fit.stock import Stock
from undertrim.derive.review import alike, facts, joints, verdicts, visits
from undertrim.derive.review.change import BlockerChange, Detail, FactChange, Side, Sort, StampChange, Weight
from undertrim.derive.review.explaining import explained
from undertrim.derive.review.explaining import names as called
from undertrim.derive.review.outcome import VehicleChange
from undertrim.derive.review.problems import apart
from undertrim.record.combinations import TooMany
from undertrim.record.model import Evidence, VehicleRecord
from undertrim.words import ENGLISH, Value, message, say


def vehicle(before: Side, after: Side, stocks: tuple[Stock, Stock]) -> VehicleChange:
    """What changed between two sides of one vehicle, with the stock of each."""
    # Long because it is one table: what is compared, a line each.
    renamed = alike.renamed(before.record, after.record)
    names = {old: new for section in ("preps", "parts", "openings") for old, new in renamed.get(section, {}).items()}
    changed = tuple(facts.changes(before, after, renamed))
    found = visits.visits(before, after, names, visits.Told(explained(changed), frozenset(called(changed))))
    was, now = (
        Vehicle(side.record, side.address, shelf, clearances())
        for side, shelf in zip((before, after), stocks, strict=True)
    )
    openings = _openings(before.record, after.record, renamed.get("openings", {}))
    turned, margins = verdicts.verdicts(was, now, openings)
    new, gone = apart(before.problems, after.problems)
    return VehicleChange(
        address=after.address,
        title=f"{after.record.vehicle.make} {after.record.vehicle.model}",
        was=before.address if before.address != after.address else "",
        facts=(*_renamed(before, after, renamed), *changed),
        visits=found.changed,
        refused=found.refused,
        verdicts=turned,
        margins=margins,
        joints=tuple(joints.differing(was, now, openings)),
        blockers=tuple(blockers(was, now)),
        conflicts=tuple(_conflicts(before, after)),
        evidence=tuple(_evidence(before.record, after.record)),
        stamp=_stamp(before, after),
        found=new,
        mended=gone,
        sides=(before, after),
    )


def _openings(before: VehicleRecord, after: VehicleRecord, names: Mapping[str, str]) -> dict[str, str]:
    """The openings that are there on both sides and of one kind, the ids of before by those of now."""
    back = {new: old for old, new in names.items()}
    found = {name: back.get(name, name) for name in after.openings}
    return {
        now: was
        for now, was in found.items()
        if was in before.openings and before.openings[was].kind == after.openings[now].kind
    }


def _renamed(before: Side, after: Side, renamed: alike.Renamed) -> Iterator[FactChange]:
    """What goes by another id now."""
    for section, names in renamed.items():
        for old, new in names.items():
            name = block_name(after.data, f"{section}/{new}")
            yield FactChange((section, new), name, Sort.RENAMED, old, new)


def blockers(before: Vehicle, after: Vehicle) -> Iterator[BlockerChange]:
    """What stands in the way on one side alone."""
    was, now = (list(_standing_in_the_way(one)) for one in (before, after))
    old, new = ({(one.weight, say(one.title, ENGLISH)): one for one in some} for some in (was, now))
    yield from (_blocker(Sort.ADDED, one) for key, one in new.items() if key not in old)
    yield from (_blocker(Sort.GONE, one) for key, one in old.items() if key not in new)


def _standing_in_the_way(vehicle: Vehicle) -> Sequence[Blocker]:
    record = reckoned(vehicle.record)
    try:
        return of_record(record, vehicle.address, vehicle.stock, becomes(record, vehicle.address, vehicle.stock))
    except TooMany:
        return ()  # told where the steps are


def _blocker(sort: Sort, one: Blocker) -> BlockerChange:
    return BlockerChange(sort, one.weight, one.title, one.text)


def _conflicts(before: Side, after: Side) -> Iterator[FactChange]:
    """Facts on which the evidence disagrees now, and those on which it no longer does."""
    was, now = ({one.conflict.about: one for one in open_disputes(side.record)} for side in (before, after))
    for sort, some, others, side in ((Sort.ADDED, now, was, after), (Sort.GONE, was, now, before)):
        for about, dispute in some.items():
            if about not in others:
                told = conflict(side.record, dispute)
                text = say(told.text)
                pointer = dispute.fact.pointer if dispute.fact else (about,)
                weight = Weight.CARE if told.safety and sort is Sort.GONE else Weight.PLAIN
                ends = ("", text) if sort is Sort.ADDED else (text, "")
                yield FactChange(pointer, told.fact, sort, *ends, weight=weight)


def _evidence(before: VehicleRecord, after: VehicleRecord) -> Iterator[Detail]:
    """Pieces of evidence that are new, gone or say something else."""
    for name in dict.fromkeys((*after.evidence, *before.evidence)):
        was, now = before.evidence.get(name), after.evidence.get(name)
        if was != now:
            yield Detail(name, seen(was), seen(now))


def seen(one: Evidence | None) -> Value:
    """A piece of evidence in short; empty for none."""
    if one is None:
        return ""
    return message("review/seen", id=one.id, how=message(f"evidence/how-{one.how}"), on=one.on, by=one.by)


def _stamp(before: Side, after: Side) -> StampChange | None:
    """What became of the verification; None where the record stands as it stood."""
    was, now = standing(before.record, before.data), standing(after.record, after.data)
    changes = now.changes
    lost = (*changes.changed, *changes.added)
    gone = [*changes.removed]
    names = [*(block_name(after.data, one) for one in lost), *(block_name(before.data, one) for one in gone)]
    if was.word == now.word and before.record.verified == after.record.verified and was.changes == now.changes:
        return None
    return StampChange(str(was.word), str(now.word), tuple(names))
