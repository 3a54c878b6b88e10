"""What a car's page of questions asks: the list of `derive.questions` with all that a phone needs to take the answers without a signal."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from math import ceil, floor, log10

from undertrim.derive import cars
from undertrim.derive.claims.outcome import Refused
from undertrim.derive.evidence import holding
from undertrim.derive.evidence.seen import DRIVE_SIDE
from undertrim.derive.questions import AnswerForm, Field, Question, Sort, questions
from undertrim.derive.questions.interview import Interview
from undertrim.derive.wiring.leads import named
from undertrim.record import units
from undertrim.record.colours import colours
from undertrim.record.measuring import drawing_of
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Source
from undertrim.record.unit_table import Unit, kinds
from undertrim.words import Items, Value, message
from undertrim.words.catalogue import english

_DIGITS = 4
"""So many digits a bound has in a unit in which nobody typed it."""


@dataclass(frozen=True, slots=True)
class AskedUnit:
    """A unit to answer in, and between which numbers a value in it is plausible; None where there is no bound."""

    name: str
    fractions: bool
    least: float | None
    most: float | None


@dataclass(frozen=True, slots=True)
class AskedChoice:
    """A word that may be the answer, and what it is called."""

    word: str
    says: Value


@dataclass(frozen=True, slots=True)
class AskedOnlyIf:
    """The answer beside which something is asked: to which fact, with which words."""

    about: str
    words: Sequence[str]


@dataclass(frozen=True, slots=True)
class AskedField:
    """One value that is asked for; `form` is how it is answered, `drawing` shows how it is measured."""

    about: str
    title: Value
    means: Value
    form: str
    units: Sequence[AskedUnit]
    choices: Sequence[AskedChoice]
    none: bool
    stands: str
    optional: bool
    only_if: AskedOnlyIf | None
    drawing: str


@dataclass(frozen=True, slots=True)
class AskedQuestion:
    """What to find out, why it matters, and where the handbook shows how; `cars` is the condition of the cars that can answer it."""

    ask: Value
    why: Value
    looked_up: bool
    how: str
    cars: Mapping[str, Sequence[str]]
    cars_words: Value
    fields: Sequence[AskedField]


@dataclass(frozen=True, slots=True)
class AskedCarChoice:
    """A choice of a variant, how to tell it at the car, and the months (counted from year 0) in which alone it was built."""

    id: str
    label: Value
    tell: Value
    built: Sequence[int]


@dataclass(frozen=True, slots=True)
class AskedVariant:
    """What to ask of the car before its questions."""

    id: str
    ask: Value
    choices: Sequence[AskedCarChoice]


@dataclass(frozen=True, slots=True)
class AskedColour:
    """A colour of insulation: its name as it is typed, its letters, what it is called, and how it looks on a screen."""

    name: str
    letters: str
    says: Value
    hex: str


@dataclass(frozen=True, slots=True)
class Asked:
    """All that is asked of a car. `for_a_person` is what takes more than values; `colours` and `plugs` are there where an answer needs them."""

    vehicle: str
    years: Sequence[int]
    built: Sequence[int]
    sides: Sequence[str]
    variants: Sequence[AskedVariant]
    questions: Sequence[AskedQuestion]
    for_a_person: Sequence[Value]
    colours: Sequence[AskedColour]
    plugs: Sequence[str]


def asked(record: VehicleRecord, source: Source, address: str) -> Asked:
    """The questions of a record; `source` is its source as a whole."""
    every = questions(record, source)
    made = [_question(record, Interview(record, source, {}), one) for one in every if one.fields]
    forms = {field.form.sort for one in every for field in one.fields}
    sides = record.vehicle.drive_side
    return Asked(
        vehicle=address,
        years=holding.years(record),
        built=[record.vehicle.built.from_.index, record.vehicle.built.to.index],
        sides=sides if len(sides) > 1 else (),
        variants=list(_variants(record)),
        questions=made,
        for_a_person=[one.ask for one in every if not one.fields],
        colours=[AskedColour(one.name, one.code, one, one.hex) for one in colours()] if "colour" in forms else [],
        plugs=list(record.connectors) if "pin" in forms else [],
    )


def _variants(record: VehicleRecord) -> Iterator[AskedVariant]:
    for name, variant in cars.variants(record).items():
        if name == DRIVE_SIDE:
            continue
        choices = [AskedCarChoice(one.id, one.label, one.tell, list(_built(one))) for one in variant.choices.values()]
        yield AskedVariant(name, variant.ask, choices)


def _built(choice: cars.AnyChoice) -> Iterator[int]:
    if choice.built:
        yield from (choice.built.from_.index, choice.built.to.index)


def _question(record: VehicleRecord, interview: Interview, one: Question) -> AskedQuestion:
    known = cars.variants(record)
    conditions = {name: (said,) if isinstance(said, str) else tuple(said) for name, said in one.cars.items()}
    labels = (
        Items(tuple(cars.label(known, *pair) for pair in _pairs(name, said)), "or") for name, said in conditions.items()
    )
    return AskedQuestion(
        ask=one.ask,
        why=one.why,
        looked_up=one.sort is Sort.SAFETY,
        how=one.how.replace(".md", ".html"),
        cars=conditions,
        cars_words=Items(tuple(labels), "comma") if conditions else "",
        fields=list(_fields(record, interview, one.fields)),
    )


def _pairs(name: str, words: Iterable[str]) -> Iterator[tuple[str, str]]:
    yield from ((name, word) for word in words)


def _fields(record: VehicleRecord, interview: Interview, fields: Sequence[Field]) -> Iterator[AskedField]:
    """Those that are asked whatever is answered, and those that hang on an answer of this question."""
    here = {field.about for field in fields}
    for field in fields:
        hangs = field.only_if if field.only_if and field.only_if[0] in here else None
        if hangs or _is_asked(interview, field):
            yield _field(record, field, hangs)


def _is_asked(interview: Interview, field: Field) -> bool:
    """Whether what the record says of the other field lets it be asked."""
    with suppress(Refused):
        return interview.asks(field, {})
    return True


def _field(record: VehicleRecord, field: Field, hangs: tuple[str, tuple[str, ...]] | None) -> AskedField:
    form = field.form
    return AskedField(
        about=field.about,
        title=field.title,
        means=field.means,
        form=form.sort,
        units=list(_units(form)),
        choices=[AskedChoice(word, choice_words(field.about, word)) for word in form.choices],
        none=form.none,
        stands=field.stands,
        optional=field.optional,
        only_if=AskedOnlyIf(*hangs) if hangs else None,
        drawing=_drawing(record, field.about),
    )


def choice_words(about: str, word: str) -> Value:
    """What a word of the schema is called where somebody chooses it for a fact; the word itself where nothing else is said for it."""
    field = about.rpartition("/")[2]
    if field == "function":
        return named(word)
    here = f"{field.replace('_', '-')}-{word}"
    name = next((one for one in (here, word) if one in english("answers")), "")
    return message(f"answers/{name}") if name else word


def _units(form: AnswerForm) -> Iterator[AskedUnit]:
    if form.quantity:
        table = kinds()[form.quantity].units
        bounds = [units.parse(text, form.quantity).value if text else None for text in (form.least, form.most)]
        own = form.least.rpartition(" ")[2]  # who says what is plausible of a run of cable in metres measures it so
        for name in dict.fromkeys((own, *form.units) if own in table else form.units):
            least, most = (_in(table[name], bound, up=not place) for place, bound in enumerate(bounds))
            yield AskedUnit(name, table[name].fractions, least, most)


def _in(unit: Unit, bound: float | None, *, up: bool) -> float | None:
    """A bound in a unit, rounded so that a record takes whatever is within."""
    if bound is None:
        return None
    exact = (bound - float(unit.offset)) / float(unit.factor)
    scale = 10.0 ** (_DIGITS - 1 - floor(log10(abs(exact)))) if exact else 1.0
    return (ceil if up else floor)(round(exact * scale, 6)) / scale


def _drawing(record: VehicleRecord, about: str) -> str:
    section, name, field = (*about.split("/", 2), "", "")[:3]
    if section == "connectors":
        return drawing_of("plug", "any", field)
    kind = next((one.kind for one in record.openings.values() if section == "openings" and one.is_named(name)), "")
    return drawing_of("opening", kind, field) if kind else ""
