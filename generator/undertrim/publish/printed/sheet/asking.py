"""The questions of a vehicle as its measuring sheet wants them: who and which car above, then a box for each answer, beside the drawings of what is measured."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import groupby

from undertrim.derive import cars
from undertrim.derive.evidence import holding
from undertrim.derive.fit.place import Vehicle
from undertrim.derive.questions import Field, Question, questions
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts.drawn import drawn
from undertrim.publish.facts.question_words import cars_words, form_words
from undertrim.publish.printed.sheet import frame, visited
from undertrim.publish.printed.sheet.frame import Paper
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Source
from undertrim.words import Items, Message, Value, message

_FEW = 8
"""So many words at most stand each beside a box of its own; of more, one is written down."""


def view(vehicle: Vehicle, source: Source, url: str, paper: Paper, day: date) -> Published:
    """Everything the template of the measuring sheet reads. `day` is that of printing."""
    record, pictures = vehicle.record, Pictures()
    numbered = list(enumerate((one for one in questions(record, source) if one.fields), 1))
    groups = [
        _group(vehicle, place, list(some), pictures)
        for place, some in groupby(numbered, key=lambda pair: _opening(record, pair[1]))
    ]
    shown = said({"car_asked": list(_car(record)), "groups": groups})
    return frame.framed(visited.head(record, vehicle.address), shown, url, paper, day, pictures)


def _opening(record: VehicleRecord, question: Question) -> str:
    """The opening that a question is about, by its id in the whole; empty for another thing."""
    section, _, name = question.about.partition("/")
    written = name.split("/")[0]
    return next(
        (
            opening.id
            for opening in record.openings.values()
            if section == "openings" and opening.written == written and opening.when.holds(_first(question))
        ),
        "",
    )


def _first(question: Question) -> dict[str, str]:
    return {name: said if isinstance(said, str) else said[0] for name, said in question.cars.items()}


def _group(
    vehicle: Vehicle, place: str, asked: Sequence[tuple[int, Question]], pictures: Pictures
) -> dict[str, object]:
    opening = vehicle.record.openings.get(place)
    return {
        "name": opening.name if opening else "",
        "drawings": pictures.openings(said(drawn(vehicle, opening, ()))) if opening else [],
        "questions": [_question(number, one) for number, one in asked],
    }


def _question(number: int, question: Question) -> dict[str, object]:
    return {
        "number": number,
        "ask": question.ask,
        "why": question.why,
        "how": message("questions/how", page=question.how) if question.how else "",
        "cars": cars_words(question) if question.cars else "",
        "fields": [_field(one) for one in question.fields],
    }


def _field(one: Field) -> dict[str, object]:
    few = one.form.sort == "choice" and len(one.form.choices) <= _FEW
    only: Value = ""
    if one.only_if:
        only = message(
            "measuring-sheet/only-if", field=one.only_if[0].split("/")[-1], words=Items(one.only_if[1], "or")
        )
    return {
        "title": one.title,
        "hint": "" if few else form_words(one.form),
        "words": list(one.form.choices) if few else [],
        "units": list(one.form.units),
        "none": one.form.none,
        "only_if": only,
    }


def _car(record: VehicleRecord) -> Iterator[dict[str, object]]:
    """What sets cars of the record apart: a line to fill, or words to tick."""
    known = cars.variants(record)
    for name in holding.unsaid(record, None):
        if name == "year":
            yield {"ask": message("measuring-sheet/year"), "words": []}
        elif name == "side":
            sides: list[Message] = [message(f"sides/{side}") for side in record.vehicle.drive_side]
            yield {"ask": message("drive-side/ask"), "words": sides}
        else:
            choices = known[name].choices.values()
            told = [message("plan/choice", label=one.label, tell=one.tell) for one in choices]
            yield {"ask": known[name].ask, "words": told}
