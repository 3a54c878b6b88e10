"""Answers of the electrical calculators for a terminal, and as data."""

from collections.abc import Iterator, Sequence
from typing import Protocol

from undertrim.derive.electrical.cable import Choice, Condition
from undertrim.derive.electrical.conductors import size
from undertrim.derive.electrical.numbers import Number
from undertrim.publish.encoding import Published, said
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Items, Message, Value, message, say


class Answer(Protocol):
    """What every calculator gives, whatever else it gives."""

    @property
    def headline(self) -> Message:
        """The answer in a line."""

    @property
    def numbers(self) -> tuple[Number, ...]:
        """Every number used."""

    @property
    def notes(self) -> tuple[Message, ...]:
        """What to know beside it."""


def answer_data(answer: Answer) -> Published:
    """An answer as data, numbers in SI units."""
    data: Published = said(answer)
    return data


def answer_text(answers: Sequence[Answer], scheme: str = "") -> str:
    """Answers as text, ending in a newline: each with its conditions, all numbers and notes. `scheme` is that of cable sizes."""
    return "\n".join([*(line for answer in answers for line in _of(answer, scheme)), closing(), ""])


def _of(answer: Answer, scheme: str) -> Iterator[str]:
    yield from wrapped(answer.headline, "", "  ")
    for condition in answer.conditions if isinstance(answer, Choice) else ():
        yield from wrapped(_condition(condition, scheme), "  - ", "    ")
    yield from _labelled("calculators/numbers", Items(tuple(map(_number, answer.numbers)), "semicolon"))
    for note in answer.notes:
        yield from _labelled("calculators/note", note)
    yield ""


def _condition(condition: Condition, scheme: str) -> Message:
    found = message("calculators/no-size")
    if condition.size:
        found = message("calculators/or-thicker", size=size(scheme, condition.size).label)
    return message("calculators/condition", condition=condition.words, size=found)


def _number(number: Number) -> Message:
    if number.origin in ("given", "computed"):
        return message("calculators/number", label=number.label, amount=number.text)
    origin = message("calculators/usual") if number.origin == "usual" else number.origin
    return message("calculators/number-from", label=number.label, amount=number.text, origin=origin)


def _labelled(label: str, value: Value) -> list[str]:
    """A text after its label, its further lines under its first."""
    first = f"  {say(message(label))} "
    return wrapped(value, first, " " * len(first))
