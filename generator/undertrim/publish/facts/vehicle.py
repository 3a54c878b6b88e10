"""All derived facts of one vehicle record."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, replace
from datetime import date
from types import GeneratorType
from typing import Any

from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOT_ASKED
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.choices import Choices, choices
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner
from undertrim.derive.procedure.steps import SECTIONS
from undertrim.derive.visit.totals import of_record
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import (
    asked,
    blockers,
    connectors,
    coverage,
    doubts,
    drawn,
    duties,
    evidence,
    fit_page,
    from_above,
    identity,
    ladders,
    limits,
    names,
    openings,
    plans,
    removal_order,
    resting,
    runs,
    targets,
    totals,
    visit_words,
    whose,
    wiring,
)
from undertrim.publish.facts import steps as step_facts
from undertrim.publish.facts.photos import Shown, shown
from undertrim.publish.facts.shown_vehicle import (
    About,
    Founded,
    Part,
    RestraintArea,
    Section,
    ShownChoice,
    ShownOpening,
    ShownVariant,
    SoundSystem,
    Wired,
    Work,
)
from undertrim.record.model import AreaFacts, Variant, VehicleRecord
from undertrim.record.own_language import OwnLanguage
from undertrim.record.photo_files import Album
from undertrim.record.store import Entry
from undertrim.words import Language, SaidError, Value, message, speaking, spoken

FORMAT = 5
"""The version of what is published; `schema/published.schema.json` has the same and says when it rises."""


class Unplannable(SaidError):  # noqa: N818 - it names the state of the record
    """No procedure can be worked out for some opening of a record; `said` says why."""


def vehicle(entry: Entry, made: date | None = None, album: Album | None = None) -> Published:
    """The facts of a checked vehicle record. Raises Unplannable for one whose openings cannot all be planned.

    `made` is the day they are published, from which the age of the data is counted; without it no age is given. `album` has the record's
    photographs (those beside its file, if not given). They hold whatever is in stock: what follows from both is in `with_stock.py`.
    """
    return in_each(entry, made, album, (spoken(),))[spoken().tag]


def in_each(
    entry: Entry, made: date | None, album: Album | None, speeches: Sequence[Language]
) -> Mapping[str, Published]:
    """The same facts, worked out once and said in each of some languages, by their tags."""
    typed = entry.record
    assert isinstance(typed, VehicleRecord)
    known = Vehicle(reckoned(typed), entry.address, NOT_ASKED, clearances())
    facts: dict[str, dict[str, Any]] = {speech.tag: {} for speech in speeches}
    photos = shown(entry, known.record, album)
    for part in _parts(entry, typed, known, made, photos):
        whole = _held(part) if len(speeches) > 1 else part
        for speech in speeches:
            with speaking(speech):
                facts[speech.tag] |= said(whole)
    return facts


def _held(part: Part) -> Part:
    """A part that can be said more than once: what is made while it is said is made beforehand."""
    made = ((field.name, getattr(part, field.name)) for field in fields(part))
    listed: Any = {name: list(value) for name, value in made if isinstance(value, GeneratorType)}
    return replace(part, **listed)


def _parts(entry: Entry, typed: VehicleRecord, known: Vehicle, made: date | None, photos: Shown) -> Iterator[Part]:
    """One after the other, so that each is said, and its messages are gone, before the next is made."""
    yield _about(entry, typed, known, made, photos)
    yield _work(known, photos)
    yield _wired(known, photos)
    yield _founded(entry, known, made)


def _about(entry: Entry, typed: VehicleRecord, known: Vehicle, made: date | None, photos: Shown) -> About:
    """Which cars they are, and how sure what is known of them is; `typed` is the record with its conflicts undecided."""
    record = known.record
    return About(
        format=FORMAT,
        id=entry.id,
        address=entry.address,
        demo=record.demo == "yes",
        lang=record.lang,
        lang_words=OwnLanguage(record.lang),
        whose=whose.shown(record.whose),
        identity=identity.identity(record),
        data_date=_data_date(record),
        age=evidence.age(_data_date(record), made),
        standing=evidence.standing(typed, entry.source.data),
        conflicts=evidence.conflicts(typed),
        disputed=doubts.marks(record, ("vehicle",)),
        variants=[_variant(record, variant, photos) for variant in cars.asked(record).values()],
    )


def _work(known: Vehicle, photos: Shown) -> Work:
    """What can be worked at, and the steps of it."""
    record = known.record
    chosen = _choices(Planner(record))
    return Work(
        targets=targets.targets(record),
        from_above=from_above.from_above(record),
        removal_order=removal_order.removal_order(record),
        visit_words=visit_words.visit_words(record),
        blockers=blockers.blockers(record, known.address, known.stock),
        openings=(
            ShownOpening(
                opening=openings.opening(record, item),
                photos=photos.of(item),
                limits=limits.limits(known, item),
                drawn=drawn.drawn(known, item, []),
                form=fit_page.form(known, item),
            )
            for item in record.openings.values()
        ),
        sections=[Section(name, step_facts.section_title(name)) for name in SECTIONS],
        steps=plans.steps(record, chosen, photos),
        plans=plans.plans(chosen),
        totals=totals.of_cars(record, of_record(chosen)),
    )


def _wired(known: Vehicle, photos: Shown) -> Wired:
    """What is joined to what, and what the wires carry."""
    record = known.record
    return Wired(
        connectors=connectors.connectors(record, photos),
        ladders=ladders.ladders(record),
        runs=runs.runs(record),
        sound=[SoundSystem(item.id, doubts.marks(record, ("sound", item.id))) for item in record.sound.values()],
        rest=resting.rest(record),
        functions=[wiring.function(record, item) for item in record.functions.values()],
        duties=duties.duties(record, known.address, known.stock),
    )


def _founded(entry: Entry, known: Vehicle, made: date | None) -> Founded:
    """What may fire where, what of the record is there, what is still asked, and where it comes from."""
    record = known.record
    assert isinstance(entry.record, VehicleRecord)
    return Founded(
        restraints=[
            RestraintArea(name, _restraints(area), doubts.marks(record, ("areas", name)))
            for name, area in record.areas.items()
            if area.restraints
        ],
        coverage=coverage.summary(record),
        asked=asked.asked(entry.record, entry.source, entry.address),
        evidence=evidence.pieces(record, entry.source.data, made),
    )


def _restraints(area: AreaFacts) -> list[Value]:
    """What is named in an area, or that there is nothing or that nobody knows."""
    return list(area.restraint_parts) or [message(f"areas/restraints-{area.restraints_blank}")]


def _choices(planner: Planner) -> Choices:
    try:
        return choices(planner)
    except (Unreachable, TooTangled) as error:
        raise Unplannable(names.refusal(planner.record, error)) from error


def _data_date(record: VehicleRecord) -> str:
    """The newest date of any evidence; empty where there is none."""
    return max((item.on for item in record.evidence.values()), default="")


def _variant(record: VehicleRecord, variant: cars.AnyVariant, photos: Shown) -> ShownVariant:
    seen = photos.of_choices(variant) if isinstance(variant, Variant) else {}
    choices = [
        ShownChoice(choice.id, choice.label, choice.tell, seen.get(choice.id, []))
        for choice in variant.choices.values()
    ]
    return ShownVariant(variant.id, variant.ask, doubts.marks(record, ("variants", variant.id)), choices)
