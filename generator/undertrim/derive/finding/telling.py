"""What is said of what was typed: which question tells two vehicles apart, what a VIN says, and why there is nothing (`assets/undertrim/finder-said.js`)."""

import re
from collections.abc import Iterator, Sequence

from undertrim.derive import vin
from undertrim.derive.finding.matching import Hit, Query, Token, light, search
from undertrim.derive.finding.rows import Row, Vocabulary
from undertrim.derive.finding.times import Span, holds
from undertrim.words import Items, Message, Value, message

_MOST_NAMED = 5
"""So many models are named where none is of the time that was asked for. A default of ours."""


def bodies(row: Row) -> Value:
    """The bodies of a vehicle."""
    shapes = (message("vehicle-page/body-shape", body=message(f"body/{body}")) for body in row.bodies)
    return Items(tuple(shapes), "or")


def telling(one: Row, other: Row) -> tuple[Message, dict[str, Value]]:
    """The question that tells two vehicles apart at the car, and what each answers, by address; none where their names tell it."""
    first, later = sorted((one, other), key=lambda row: row.built_from)
    if (one.make, one.model) == (other.make, other.model) and first.built_to and first.built_to <= later.built_from:
        ask = message("finder/ask-built", month=later.built_from)
        before = message("finder/answer-before", month=first.built_to)
        return ask, {first.address: before, later.address: message("finder/answer-from", month=later.built_from)}
    if one.bodies and other.bodies and list(one.bodies) != list(other.bodies):
        return message("body/ask"), {one.address: bodies(one), other.address: bodies(other)}
    return message("finder/ask-which"), {}


def counted(hits: Sequence[Hit]) -> tuple[Message, dict[str, Value]]:
    """How many vehicles, and what each answers where two remain."""
    if len(hits) == 2:
        ask, answers = telling(hits[0].row, hits[1].row)
        return message("finder/two", ask=ask), answers
    return (message("finder/is-this") if len(hits) == 1 else message("finder/found", count=len(hits))), {}


def of_number(asked: Query, hits: Sequence[Hit], latest: int) -> Iterator[Message]:
    """What a number says by itself."""
    if asked.misread:
        yield message("finder/vin-letters")
    if not asked.number:
        return
    row = hits[0].row if len(hits) == 1 else None
    every = vin.model_years(asked.number, light=light(row) if row else None, latest=latest)
    own = [year for year in every if row and row.first_year <= year <= row.last_year]
    years = Items(tuple(map(str, own or every)), "or")
    yield message("finder/vin-year", years=years) if every else message("finder/vin-no-year")
    if not vin.checks(asked.number):
        wrong = message("finder/vin-wrong", digit=vin.check_digit(asked.number))
        yield wrong if vin.asks_check(asked.number) else message("finder/vin-unchecked")
    yield message("finder/vin-stays")


def why_none(asked: Query, rows: Sequence[Row], words: Vocabulary, latest: int) -> Message | None:
    """Why nothing is found: a time that no record covers is not a slip of the finger."""
    if asked.misread:
        return None
    if asked.number and not asked.tokens:
        return message("finder/no-pattern")
    timed = [token for token in asked.tokens if token.times]
    named = [token for token in asked.tokens if not token.times]
    without = _found(asked, named, rows, words, latest) if timed else []
    if without:
        failing = next((token for token in timed if not any(holds(token.times, row) for row in without)), timed[0])
        return recorded(without, failing.times)
    odd = [token for token in named if re.match(r"'?[0-9]{1,4}[./–—-][0-9]", token.text)]
    rest = [token for token in named if token not in odd]
    if odd and _found(asked, rest, rows, words, latest):
        return message("finder/not-a-time", typed=" ".join(token.text for token in odd))
    return message("finder/none")


def _found(asked: Query, tokens: Sequence[Token], rows: Sequence[Row], words: Vocabulary, latest: int) -> list[Row]:
    return [hit.row for hit in search(Query(tokens, asked.number, asked.misread), rows, words, latest)]


def recorded(rows: Sequence[Row], spans: Sequence[Span]) -> Message:
    """What is recorded where no vehicle is of the time asked for: "No Finch of 2020; recorded: 2014 to 2018"."""
    months = any(span.months for span in spans)
    models: dict[str, list[Row]] = {}
    for row in rows:
        models.setdefault(f"{row.make} {row.model}", []).append(row)
    of = {name: Items(tuple(_span(row, months) for row in sorted(models[name], key=lambda row: row.first_year)), "comma") for name in sorted(models)}  # fmt: skip
    if len(of) == 1:
        ((name, all_of),) = of.items()
        return message("finder/no-such-time", name=name, time=spans[0].words, recorded=all_of)
    shown: list[Value] = [message("gear-page/unit", title=name, value=of[name]) for name in list(of)[:_MOST_NAMED]]
    if len(of) > _MOST_NAMED:
        shown.append(message("finder/and-more", count=len(of) - _MOST_NAMED))
    return message("finder/none-of-time", time=spans[0].words, recorded=Items(tuple(shown), "semicolon"))


def _span(row: Row, months: bool) -> Value:
    if months and row.built_from:
        return message("finder/built", **{"from": row.built_from, "to": row.built_to})
    first, last = str(row.first_year), str(row.last_year)
    return first if first == last else message("finder/years", first=first, last=last)
