"""What one visit says on terminal and in the JSON: its jobs, its steps, the cars that it covers."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.publish.encoding import Spread
from undertrim.publish.facts import blockers, totals, words
from undertrim.publish.facts.kits import KitWork
from undertrim.publish.facts.shown_steps import ToldStep
from undertrim.record.own_language import OwnLanguage
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class OpenChoice:
    """A choice of a variant that was left open, and how to tell it at the car."""

    id: str
    label: Value
    tell: Value


@dataclass(frozen=True, slots=True)
class OpenVariant:
    """A variant that was not chosen and makes a difference to the jobs."""

    id: str
    ask: Value
    choices: Sequence[OpenChoice]


@dataclass(frozen=True, slots=True)
class TakenRoute:
    """Where one of several routes was taken: the part, the route's name, out of which, for which car."""

    part: str
    route: str
    of: Sequence[str]
    car: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class VisitStep:
    """A step with the cars it is for; its lines are those of the cars the visit covers, `kits` those that are built up in it."""

    step: Spread[ToldStep]
    when: Value
    clauses: words.Clauses
    kits: Sequence[KitWork]


@dataclass(frozen=True, slots=True)
class ShownFitting:
    """How long the chosen gear takes to fit in some kinds of car, none where it is so in all; `unsaid` are the ids of gear that says nothing."""

    cars_words: Value
    minutes: float
    unsaid: Sequence[str]
    words: Value


@dataclass(frozen=True, slots=True)
class ShownVisit:
    """The procedure for a visit, with its totals."""

    vehicle: str
    title: str
    demo: bool
    lang_words: OwnLanguage
    jobs: Sequence[str]
    job_names: Sequence[Value]
    closed: Sequence[str]
    variant: Mapping[str, str]
    variant_words: Value
    open_variants: Sequence[OpenVariant]
    blockers: Sequence[blockers.Blocker]
    routes: Sequence[TakenRoute]
    steps: Sequence[VisitStep]
    cars: Sequence[totals.CarTotals]
    fitting: Sequence[ShownFitting]
