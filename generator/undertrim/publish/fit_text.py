"""What fits, as data and as text for a terminal: every number in both systems of units."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.functions import Need
from undertrim.derive.fit.margins import Check, Number, both
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts.wiring import function_name

Data = dict[str, Any]
WIDTH = 100
_MORE = "The numbers behind each check: undertrim fit VEHICLE OPENING GEAR, or --format json."
_CLOSING = "The maker's information, local codes and licensed practice come first."


def fit_data(vehicle: Vehicle, answers: Sequence[Answer]) -> Data:
    """The answers as data; lengths in mm."""
    return {
        "vehicle": vehicle.address,
        "demo": vehicle.record.demo == "yes",
        "left_out": list(vehicle.stock.left_out),
        "openings": [_opening(answer) for answer in answers],
    }


def _opening(answer: Answer) -> Data:
    return {
        "opening": answer.opening.id,
        "name": answer.opening.name,
        "kind": answer.opening.kind,
        "there": answer.there,
        "cars": [dict(car) for car in answer.cars],
        "fits": [_fit(fit) for fit in answer.fits],
    }


def _fit(fit: Fit) -> Data:
    return {
        "gear": fit.gear,
        "name": fit.name,
        "verdict": fit.kind,
        "headline": fit.headline,
        "parts": list(fit.parts),
        "to_get": list(fit.to_get),
        "checks": [_check(check) for check in fit.checks],
        "notes": list(fit.notes),
        "functions": [_need(need) for need in fit.needs],
    }


def _check(check: Check) -> Data:
    return {
        "name": check.name,
        "verdict": check.verdict,
        "words": check.words,
        "need_mm": check.need,
        "have_mm": check.have,
        "margin_mm": check.margin,
        "uncertainty_mm": check.uncertainty,
        "missing": list(check.missing),
        "mend": check.mend,
        "numbers": [_number(number) for number in check.numbers],
    }


def _number(number: Number) -> Data:
    return {
        "label": number.label,
        "mm": number.value,
        "uncertainty_mm": number.step,
        "text": number.text,
        "default": number.default,
    }


def _need(need: Need) -> Data:
    return {"function": need.function, "by": need.by, "words": need.words, "providers": list(need.providers)}


def fit_text(vehicle: Vehicle, answers: Sequence[Answer], *, full: bool) -> str:
    """The answers as text, ending in a newline; in `full` with every number behind every check."""
    lines = [line for answer in answers for line in _answer(answer, full)]
    return "\n".join([*_head(vehicle), *lines, "", *(() if full else (_MORE,)), _CLOSING, ""])


def _head(vehicle: Vehicle) -> Iterator[str]:
    facts = vehicle.record.vehicle
    yield f"{facts.make} {facts.model} ({vehicle.address}): what fits"
    if vehicle.record.demo == "yes":
        yield "Demonstration data: this vehicle is invented."
    for address in vehicle.stock.left_out:
        yield f"Left out, its record has problems: {address}"


def _answer(answer: Answer, full: bool) -> Iterator[str]:
    kinds = " or ".join(", ".join(f"{name}={choice}" for name, choice in car.items()) for car in answer.cars)
    yield ""
    title = f"{answer.opening.name} ({answer.opening.id})"
    yield from _wrapped(f"{title}, in cars with {kinds}" if kinds else title, "", "  ")
    if not answer.there:
        yield "  not there in these cars"
    elif not answer.fits:
        yield f"  no {answer.opening.kind} in stock"
    for fit in answer.fits:
        yield from _of(fit, full)


def _of(fit: Fit, full: bool) -> Iterator[str]:
    yield ""
    yield from _wrapped(f"{fit.name}: {fit.headline}  <{fit.gear}>", "  ", "      ")
    for check in fit.checks:
        yield from _wrapped(f"{_MARK[check.verdict]:8} {check.words}", "    ", " " * 13)
        if full:
            numbers = (_said(number) for number in check.numbers if number.value != 0 or number.step)
            yield from _wrapped("; ".join(numbers), " " * 13, " " * 13)
    for need in fit.needs:
        yield from _wrapped(f"{function_name(need.function)}: {need.words}", "    - ", "      ")
    for note in fit.notes:
        yield from _wrapped(note, "    note: ", "          ")


_MARK = {"fits": "ok", "marginal": "close", "fails": "NO", "unknown": "unknown"}


def _said(number: Number) -> str:
    step = f" ± {both(number.step)}" if number.step else ""
    return f"{number.label} {number.text}{step}{' (usual)' if number.default else ''}"


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )
