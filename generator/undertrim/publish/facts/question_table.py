"""The questions of a car as a table to fill in: what is said once above, then a row for each field."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from undertrim.derive import cars
from undertrim.derive.evidence import holding
from undertrim.derive.questions import Field, Question, Sort, questions
from undertrim.publish.facts.question_words import form_words
from undertrim.record.claims.tables import COLUMNS, IS
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Source
from undertrim.words import Items, Value, message, say

HOWS = ("measured", "seen", "maker", "told")


@dataclass(slots=True)
class Table:
    """Rows of text; `offers` are the words that some cells may have, by row and column from 0."""

    rows: list[list[str]] = field(default_factory=list)
    offers: dict[tuple[int, int], tuple[str, ...]] = field(default_factory=dict)

    def add(self, *cells: str, offers: Mapping[int, tuple[str, ...]] | None = None) -> None:
        """One more row."""
        for column, words in (offers or {}).items():
            self.offers[len(self.rows), column] = words
        self.rows.append(list(cells))


def question_table(record: VehicleRecord, source: Source, address: str) -> Table:
    """All questions with fields, in their order."""
    table = Table()
    table.add("claims", "1")
    table.add("vehicle", address)
    table.add("by", "", say(message("ask/by")))
    table.add("on", "", say(message("ask/today-out")))
    table.add("how", "seen", say(message("ask/how")), offers={1: HOWS})
    table.add("with", "", say(message("ask/with-hint")))
    for name, hint, words in _of_car(record):
        table.add(name, "", hint, offers={1: words} if words else None)
    table.add("")
    table.add(*COLUMNS)
    for question in questions(record, source):
        for one in question.fields:
            _row(table, question, one)
    return table


def _of_car(record: VehicleRecord) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    known = cars.variants(record)
    for name in holding.unsaid(record, None):
        if name == "year":
            first, last = map(str, holding.years(record))
            yield name, say(message("ask/years", first=first, last=last)), ()
        elif name == "side":
            yield name, say(message("drive-side/ask")), tuple(record.vehicle.drive_side)
        else:
            choices = known[name].choices.values()
            told: tuple[Value, ...] = tuple(
                message(
                    "evidence/choice", variant=one.id, choice=message("plan/choice", label=one.label, tell=one.tell)
                )
                for one in choices
            )
            yield f"{IS}{name}", say(Items(told, "semicolon")), (*(one.id for one in choices), "?")


def _row(table: Table, question: Question, one: Field) -> None:
    form = one.form
    words = (*form.choices, *(["-"] if form.none else []), "?") if form.sort == "choice" else ()
    offers = {2: words, 3: form.units, 4: HOWS}
    how = "maker" if question.sort is Sort.SAFETY else "measured" if form.sort == "quantity" else ""
    asked = say(message("ask/in-a-row", ask=question.ask, field=one.title, form=form_words(form)))
    table.add(
        one.about, asked, "", "", how, "", say(question.why), one.stands, offers={k: v for k, v in offers.items() if v}
    )
