"""A record read for the other drive side, as text for a terminal."""

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

Data = Mapping[str, Any]
WIDTH = 100


def mirror_text(facts: Data) -> str:
    """What is known, what to find out at a car, and what the record is silent about; ends in a newline."""
    head = f"{facts['vehicle']} in {facts['drive_side']}-hand drive, recorded in {facts['recorded_on']}-hand drive"
    return "\n".join([head, *_known(facts["known"]), *_questions(facts["questions"]), *_rest(facts), ""])


def _known(known: Sequence[Data]) -> Iterator[str]:
    yield from ("", "KNOWN") if known else ()
    for fact in known:
        what = "" if fact["fact"] in ("side", "place") else f", {fact['fact']}"
        was = f" (recorded: {fact['recorded']})" if fact["recorded"] not in ("", fact["there"]) else ""
        yield from _wrapped(f"{fact['name']}{what}: {fact['words']}{was}")


def _questions(questions: Sequence[Data]) -> Iterator[str]:
    yield from ("", "TO FIND OUT AT A CAR") if questions else ()
    for fact in questions:
        was = f" (recorded: {fact['recorded']})" if fact["recorded"] else ""
        yield from _wrapped(f"{fact['ask']}{was}")


def _rest(facts: Data) -> Iterator[str]:
    for title, things in (
        ("NOT IN THESE CARS", facts["not_there_names"]),
        ("SIDES NOT RECORDED AT ALL", facts["unsaid_names"]),
    ):
        if things:
            yield ""
            yield title
            yield from _wrapped("; ".join(things))


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent="  ", subsequent_indent="      ", break_long_words=False, break_on_hyphens=False
    )
