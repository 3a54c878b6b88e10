"""Slips in who saw what at which car, and in which cars a record covers."""

import re
from collections.abc import Callable, Iterator
from typing import Any

from slips.making import (
    GONE,
    Data,
    Pointer,
    Spoilt,
    changed,
    each,
    gone,
    is_text,
    key,
    number,
    plus,
    slip,
    swapped,
)  # fmt: skip

OTHER_CAR = {
    "how": "measured",
    "on": "2026-01-19",
    "by": "zz",
    "car": "2009, left-hand drive",
    "with": "Calliper 0.05 mm",
}
"""A piece of evidence that was copied with the record it stood in."""


def _pieces(data: Data) -> Iterator[tuple[str, Data]]:
    yield from data.get("evidence", {}).items()


def _piece(data: Data, field: str, altered: Callable[[Any], Any]) -> Spoilt:
    for name, piece in _pieces(data):
        new = altered(piece[field]) if field in piece else None
        if new is not None and new != piece[field]:
            yield name, changed(data, ("evidence", name, field), new)


def _year(step: int) -> Callable[[Any], Any]:
    def altered(car: Any) -> Any:
        if isinstance(car, dict):
            return {**car, "year": str(int(car["year"]) + step)} if car.get("year", "").isdecimal() else None
        return re.sub(r"(?<![\d-])(?:19|20)\d\d(?![\d-])", lambda found: str(int(found[0]) + step), car)

    return altered


def _span(data: Data) -> int:
    built = data["vehicle"]["built"]
    return int(built["to"][:4]) - int(built["from"][:4])


@slip
def evidence_of_long_ago(data: Data) -> Spoilt:
    yield from _piece(data, "on", lambda value: f"1990{value[4:]}")


@slip
def evidence_of_the_future(data: Data) -> Spoilt:
    yield from _piece(data, "on", lambda value: f"2062{value[4:]}")


@slip
def evidence_before_the_first_car(data: Data) -> Spoilt:
    before = int(data["vehicle"]["built"]["from"][:4]) - 1
    yield from _piece(data, "on", lambda value: f"{before}{value[4:]}")


@slip
def evidence_of_an_older_car(data: Data) -> Spoilt:
    yield from _piece(data, "car", _year(-_span(data) - 5))


@slip
def evidence_of_a_newer_car(data: Data) -> Spoilt:
    yield from _piece(data, "car", _year(_span(data) + 5))


@slip
def evidence_one_year_off(data: Data) -> Spoilt:
    yield from _piece(data, "car", _year(1))


@slip
def evidence_of_the_other_side(data: Data) -> Spoilt:
    def other(car: Any) -> Any:
        if isinstance(car, dict):
            side = {"left": "right", "right": "left"}.get(car.get("side", ""))
            return {**car, "side": side} if side else None
        swap = {"left-hand": "right-hand", "right-hand": "left-hand"}
        return re.sub("left-hand|right-hand", lambda found: swap[found[0]], car)

    yield from _piece(data, "car", other)


@slip
def evidence_of_another_variant(data: Data) -> Spoilt:
    for name, variant in data.get("variants", {}).items():
        choices = list(variant["choices"])
        for one, other in ((choices[0], choices[-1]), (choices[-1], choices[0])):
            yield from _piece(data, "car", _answered(name, one, other, variant["choices"]))


def _answered(name: str, one: str, other: str, choices: Data) -> Callable[[Any], Any]:
    def altered(car: Any) -> Any:
        if isinstance(car, dict):
            return {**car, "is": {**car["is"], name: other}} if car.get("is", {}).get(name) == one else None
        for word in (choices[one]["label"], one):
            if re.search(rf"\b{re.escape(word)}\b", car, re.IGNORECASE):
                return re.sub(rf"\b{re.escape(word)}\b", choices[other]["label"].lower(), car, flags=re.IGNORECASE)
        return None

    return altered


@slip
def evidence_of_a_variant_that_is_not_there(data: Data) -> Spoilt:
    for name, piece in _pieces(data):
        car = piece.get("car")
        if isinstance(car, dict) and car.get("is"):
            variant = next(iter(car["is"]))
            yield name, changed(data, ("evidence", name, "car", "is", variant), "sporty")
        elif isinstance(car, str) and car.count(",") > 1:
            yield name, changed(data, ("evidence", name, "car"), f"{car.rpartition(',')[0]}, sporty radio")


@slip
def car_of_evidence_left_out(data: Data) -> Spoilt:
    yield from _piece(data, "car", gone)


@slip
def instrument_left_out(data: Data) -> Spoilt:
    yield from _piece(data, "with", gone)


@slip
def measured_for_seen(data: Data) -> Spoilt:
    yield from _piece(data, "how", lambda value: "measured" if value == "seen" else None)


@slip
def seen_for_measured(data: Data) -> Spoilt:
    yield from _piece(data, "how", lambda value: "seen" if value == "measured" else None)


@slip
def day_and_month_exchanged(data: Data) -> Spoilt:
    yield from _piece(
        data, "on", lambda value: f"{value[:4]}-{value[8:]}-{value[5:7]}" if int(value[8:]) < 13 else None
    )


@slip
def evidence_copied_from_another_record(data: Data) -> Spoilt:
    for name, _ in _pieces(data):
        yield name, changed(data, ("evidence", name), OTHER_CAR)


@slip
def source_left_out(data: Data) -> Spoilt:
    yield from each(data, key("source"), gone)


@slip
def source_exchanged(data: Data) -> Spoilt:
    names = [name for name, _ in _pieces(data)]

    def other(value: Any) -> Any:
        return names[(names.index(value) + 1) % len(names)] if is_text(value) and value in names else None

    yield from each(data, key("source"), other)


@slip
def one_source_of_several_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda at: at[-2:-1] == ("source",), lambda value: GONE)


@slip
def first_month_a_year_off(data: Data) -> Spoilt:
    for step in (1, -1):
        yield (
            f"{step}",
            changed(data, ("vehicle", "built", "from"), number(plus(step))(data["vehicle"]["built"]["from"])),
        )


@slip
def last_month_a_year_off(data: Data) -> Spoilt:
    for step in (1, -1):
        yield f"{step}", changed(data, ("vehicle", "built", "to"), number(plus(step))(data["vehicle"]["built"]["to"]))


@slip
def model_years_one_off(data: Data) -> Spoilt:
    for end in data["vehicle"].get("model_years", {}):
        for step in (1, -1):
            where: Pointer = ("vehicle", "model_years", end)
            yield f"{end} {step}", changed(data, where, str(int(data["vehicle"]["model_years"][end]) + step))


@slip
def one_drive_side_left_out(data: Data) -> Spoilt:
    for side in data["vehicle"]["drive_side"] if len(data["vehicle"]["drive_side"]) > 1 else ():
        yield side, changed(data, ("vehicle", "drive_side"), [side])


@slip
def other_drive_side_added(data: Data) -> Spoilt:
    if len(data["vehicle"]["drive_side"]) == 1:
        yield "both", changed(data, ("vehicle", "drive_side"), ["left", "right"])


@slip
def marks_of_two_variants_exchanged(data: Data) -> Spoilt:
    for name, variant in data.get("variants", {}).items():
        one, other = list(variant["choices"])[:2]
        here = ("variants", name, "choices")
        yield f"{name} tell", swapped(data, (*here, one, "tell"), (*here, other, "tell"))
        yield f"{name} label", swapped(data, (*here, one, "label"), (*here, other, "label"))


@slip
def conflict_settled_by_another(data: Data) -> Spoilt:
    for name, conflict in data.get("conflicts", {}).items():
        for evidence, _ in _pieces(data):
            if conflict.get("settled_by") not in (None, evidence):
                yield f"{name} {evidence}", changed(data, ("conflicts", name, "settled_by"), evidence)


@slip
def conflict_left_out(data: Data) -> Spoilt:
    for name in data.get("conflicts", {}):
        yield name, changed(data, ("conflicts", name), GONE)


@slip
def record_copied_for_another_model(data: Data) -> Spoilt:
    for name in ("Heron", "Rail"):
        yield name, changed(data, ("vehicle", "model"), name)
