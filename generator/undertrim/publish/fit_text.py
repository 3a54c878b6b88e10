"""What fits, as data and as text for a terminal: every number in both systems of units."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.margins import Check, Number, both
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import closed, duties, gear_card, names
from undertrim.publish.facts import fit as facts
from undertrim.publish.facts.wiring import function_name
from undertrim.words import say

Data = dict[str, Any]
WIDTH = 100
_MORE = "The numbers behind each check: undertrim fit VEHICLE OPENING GEAR, or --format json."
_CLOSING = "The maker's information, local codes and licensed practice come first."


def fit_data(vehicle: Vehicle, answers: Sequence[Answer]) -> Data:
    """The answers as data; the numbers of a check are in its unit, mm or ohm."""
    return {
        "vehicle": vehicle.address,
        "demo": vehicle.record.demo == "yes",
        "left_out": list(vehicle.stock.left_out),
        "openings": [
            {
                "opening": answer.opening.id,
                "name": answer.opening.name,
                "kind": answer.opening.kind,
                **facts.of_answer(vehicle, answer),
            }
            for answer in answers
        ],
    }


def fit_text(vehicle: Vehicle, answers: Sequence[Answer], *, full: bool) -> str:
    """The answers as text, ending in a newline; in `full` with every number behind every check."""
    lines = [line for answer in answers for line in _answer(vehicle, answer, full)]
    return "\n".join([*_head(vehicle), *lines, "", *(() if full else (_MORE,)), _CLOSING, ""])


def _head(vehicle: Vehicle) -> Iterator[str]:
    facts = vehicle.record.vehicle
    yield f"{facts.make} {facts.model} ({vehicle.address}): what fits"
    if vehicle.record.demo == "yes":
        yield "Demonstration data: this vehicle is invented."
    for address in vehicle.stock.left_out:
        yield f"Left out, its record has problems: {address}"


def _answer(vehicle: Vehicle, answer: Answer, full: bool) -> Iterator[str]:
    kinds = names.kinds_of_car(vehicle.record, answer.cars)
    yield ""
    title = f"{answer.opening.name} ({answer.opening.id})"
    yield from _wrapped(f"{title}, for: {kinds}" if kinds else title, "", "  ")
    if not answer.there:
        yield "  not there in these cars"
        return
    if answer.closed:
        yield from _wrapped(f"INSIDE: {closed.said(answer.opening, answer.closed)}", "  ", "    ")
        return
    yield from _wrapped(f"takes: {'; '.join(answer.takes)}", "  ", "    ") if answer.takes else ()
    if not answer.fits:
        yield f"  no {answer.opening.kind} in stock"
    common = () if full else facts.shared(answer.fits)
    for note in (*common, *_duties(vehicle, answer)):
        yield from _wrapped(note, "  note: ", "        ")
    for fit in answer.fits:
        yield from _of(vehicle, fit, full, common)


def _duties(vehicle: Vehicle, answer: Answer) -> Iterator[str]:
    """What becomes of the duties of the factory unit."""
    for item in duties.of_answer(vehicle, answer):
        yield from (duties.line(item), *item["conflicts"])


def _of(vehicle: Vehicle, fit: Fit, full: bool, common: Sequence[str]) -> Iterator[str]:
    """In short: what fails or is close, what is not simply on a wire. In full: everything."""
    yield ""
    yield from _wrapped(f"{fit.name}: {fit.headline}  <{fit.gear}>", "  ", "      ")
    for check in fit.checks if full else _telling(fit.checks):
        yield from _wrapped(f"{_MARK[check.verdict]:8} {check.words}", "    ", " " * 13)
        if full:
            numbers = (_said(number) for number in check.numbers if number.value != 0 or number.step)
            yield from _wrapped("; ".join(numbers), " " * 13, " " * 13)
    for need in fit.needs:
        if full or need.by != "wire":
            yield from _wrapped(f"{say(function_name(need.function))}: {need.words}", "    - ", "      ")
    for note in fit.notes:
        if note not in common:
            yield from _wrapped(note, "    note: ", "          ")
    for about in gear_card.of_fit(fit, vehicle.stock) if full else ():
        yield from _wrapped(about, "    about: ", "           ")
    if fit.nearest:
        yield f"    nearest in stock that fits: {fit.nearest_name}"


def _telling(checks: Sequence[Check]) -> Iterator[Check]:
    """The checks that do not hold, and the tightest that does."""
    yield from (check for check in checks if check.verdict != "fits")
    holding = [check for check in checks if check.verdict == "fits" and check.margin is not None and check.unit == "mm"]
    yield from holding[:1]


_MARK = {"fits": "ok", "marginal": "close", "fails": "NO", "unknown": "unknown"}


def _said(number: Number) -> str:
    step = f" ± {both(number.step)}" if number.step else ""
    return f"{number.label} {number.text}{step}{' (usual)' if number.default else ''}"


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )
