"""What all facts of a vehicle are made of, part by part; each part is said before the next is made."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.conflict_texts import Conflict
from undertrim.publish.encoding import Spread
from undertrim.publish.facts import (
    asked,
    blockers,
    connectors,
    coverage,
    duties,
    evidence,
    fit_page,
    from_above,
    identity,
    ladders,
    limits,
    openings,
    photos,
    plans,
    removal_order,
    resting,
    runs,
    targets,
    totals,
    visit_words,
    wiring,
)
from undertrim.publish.facts.kinds import Drawing
from undertrim.publish.facts.whose import ShownWhose
from undertrim.record.own_language import OwnLanguage
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class ShownChoice:
    """A choice of a variant, and how to tell it at the car; its photographs are of that."""

    id: str
    label: Value
    tell: Value
    photos: Sequence[photos.ShownPhoto]


@dataclass(frozen=True, slots=True)
class ShownVariant:
    """What to ask of the car, with its choices."""

    id: str
    ask: Value
    conflicts: Sequence[Value]
    choices: Sequence[ShownChoice]


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the procedure."""

    id: str
    title: Value


@dataclass(frozen=True, slots=True)
class SoundSystem:
    """A factory sound system with what is disputed of it."""

    id: str
    conflicts: Sequence[Value]


@dataclass(frozen=True, slots=True)
class RestraintArea:
    """What of the restraint system is in an area."""

    area: str
    items: Sequence[Value]
    conflicts: Sequence[Value]


@dataclass(frozen=True, slots=True)
class ShownOpening:
    """An opening with its photographs, what it takes, what is drawn of it, and what the pages reckon with."""

    opening: Spread[openings.MeasuredOpening]
    photos: Sequence[photos.ShownPhoto]
    limits: Sequence[limits.ShownLimits]
    drawn: Mapping[str, Drawing]
    form: fit_page.Form


@dataclass(frozen=True, slots=True)
class About:
    """Which cars they are, and how sure what is known of them is."""

    format: int
    id: str
    address: str
    demo: bool
    lang: str
    lang_words: OwnLanguage
    whose: ShownWhose
    identity: Spread[identity.Identity]
    data_date: str
    age: evidence.Age
    standing: evidence.Standing
    conflicts: Sequence[Conflict]
    disputed: Sequence[Value]
    variants: Sequence[ShownVariant]


@dataclass(frozen=True, slots=True)
class Work:
    """What can be worked at, and the steps of it. What is long is had once, as it is said."""

    targets: Sequence[targets.ShownTarget]
    from_above: from_above.FromAbove
    removal_order: Sequence[removal_order.Mapped]
    visit_words: visit_words.VisitWords
    blockers: Sequence[blockers.Blocker]
    openings: Iterable[ShownOpening]
    sections: Sequence[Section]
    steps: Iterable[plans.ShownStep]
    plans: Sequence[plans.Plan]
    totals: Sequence[totals.CarTotals]


@dataclass(frozen=True, slots=True)
class Wired:
    """What is joined to what, and what the wires carry."""

    connectors: Sequence[connectors.ShownConnector]
    ladders: Sequence[ladders.ShownLadder]
    runs: Sequence[runs.ShownRun]
    sound: Sequence[SoundSystem]
    rest: resting.Rest
    functions: Sequence[wiring.CarFunction]
    duties: Sequence[duties.ShownDuty]


@dataclass(frozen=True, slots=True)
class Founded:
    """What may fire where, what of the record is there, what is still asked, and where it comes from."""

    restraints: Sequence[RestraintArea]
    coverage: coverage.Coverage
    asked: asked.Asked
    evidence: Sequence[evidence.ShownEvidence]


Part = About | Work | Wired | Founded
"""A part of what is published of a vehicle; its keys stand beside those of the others."""
