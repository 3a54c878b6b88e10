"""Answers of the electrical calculators for a terminal, and as data."""

import dataclasses
import textwrap
from collections.abc import Iterator, Sequence
from typing import Any, Protocol

from undertrim.derive.electrical.cable import Choice
from undertrim.derive.electrical.conductors import size
from undertrim.derive.electrical.numbers import Number

WIDTH = 100
_CLOSING = "The maker's information, local codes and licensed practice come first."


class Answer(Protocol):
    """What every calculator gives, whatever else it gives."""

    @property
    def headline(self) -> str:
        """The answer in a line."""

    @property
    def numbers(self) -> tuple[Number, ...]:
        """Every number used."""

    @property
    def notes(self) -> tuple[str, ...]:
        """What to know beside it."""


def answer_data(answer: Any) -> dict[str, Any]:
    """An answer as data, numbers in SI units."""
    return dataclasses.asdict(answer)


def answer_text(answers: Sequence[Answer], scheme: str = "") -> str:
    """Answers as text, ending in a newline: each with its conditions, all numbers and notes. `scheme` is that of cable sizes."""
    return "\n".join([*(line for answer in answers for line in _of(answer, scheme)), _CLOSING, ""])


def _of(answer: Answer, scheme: str) -> Iterator[str]:
    yield from _wrapped(answer.headline, "", "  ")
    for line in _conditions(answer, scheme) if isinstance(answer, Choice) else ():
        yield from _wrapped(line, "  - ", "    ")
    yield from _wrapped("; ".join(_said(one) for one in answer.numbers), "  numbers: ", " " * 11)
    for note in answer.notes:
        yield from _wrapped(note, "  note: ", " " * 8)
    yield ""


def _conditions(choice: Choice, scheme: str) -> Iterator[str]:
    for condition in choice.conditions:
        found = f"{size(scheme, condition.size).label} or thicker" if condition.size else "no size listed"
        yield f"{condition.words}: {found}"


def _said(number: Number) -> str:
    return f"{number.label} {number.text}" + ("" if number.origin in ("given", "computed") else f" ({number.origin})")


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )
