"""What a record still wants to know, as text for a terminal."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.questions import Field, Question
from undertrim.publish.facts.question_words import cars_words, form_words
from undertrim.publish.terminal.lines import wrapped
from undertrim.words import Items, Value, message, say


@dataclass(frozen=True, slots=True)
class Asked:
    """The questions of one vehicle."""

    vehicle: str
    questions: Sequence[Question]


def questions_text(asked: Asked) -> str:
    """One vehicle's questions, each with why, how and its fields; ends in a newline."""
    counted = message("questions/counted", vehicle=asked.vehicle, count=len(asked.questions))
    lines = [say(counted) if asked.questions else say(message("questions/none", vehicle=asked.vehicle))]
    for number, question in enumerate(asked.questions, 1):
        lines += _question(number, question)
    return "\n".join([*lines, ""])


def _question(number: int, question: Question) -> Iterator[str]:
    said = message("questions/asked", ask=question.ask, sort=message(f"questions/sort-{question.sort}"))
    yield from wrapped(said, f"{number:4}. ", " " * 6)
    yield from wrapped(question.why, " " * 6, " " * 6)
    if question.cars:
        yield from wrapped(message("questions/cars", cars=cars_words(question)), " " * 6, " " * 6)
    if question.how:
        yield from wrapped(message("questions/how", page=question.how), " " * 6, " " * 6)
    if not question.fields:
        yield from wrapped(message("questions/for-a-person"), " " * 6, " " * 6)
    for field in question.fields:
        yield from wrapped(_field(field), " " * 6, " " * 8)


def _field(field: Field) -> Value:
    said = message("questions/field", about=field.about, form=form_words(field.form))
    if field.only_if:
        other, words = field.only_if
        said = message("questions/only-if", field=said, other=other.split("/")[-1], words=Items(words, "or"))
    return message("questions/optional", field=said) if field.optional else said
