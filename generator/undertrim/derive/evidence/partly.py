"""The stamps of parts of a record: for which car each is, and where a new one goes among them."""

from collections.abc import Mapping
from typing import Any

from undertrim.derive import cars, jobs
from undertrim.derive.evidence import seen
from undertrim.record.model import CarSeen, VehicleRecord
from undertrim.words import message, say

PARTS = "verified_parts"


def car(record: VehicleRecord, text: str, choices: Mapping[str, str]) -> tuple[str, dict[str, str]]:
    """The car in one line with the choices that it did not name, and all that is answered of it. Raises jobs.BadRequest where they disagree."""
    jobs.car(record, choices)
    said = seen.answers(record, seen.seen(record, CarSeen(text)))
    for name, choice in choices.items():
        if said.get(name, choice) != choice:
            raise jobs.BadRequest(message("verify/other-car", variant=name, choice=choice, said=said[name]))
    known = cars.variants(record)
    added = [_called(known, name, choice) for name, choice in choices.items() if name not in said]
    return ", ".join([text, *added]), {**said, **choices}


def _called(known: Mapping[str, cars.AnyVariant], name: str, choice: str) -> str:
    """What a choice is called where a car is told on one line."""
    if name == seen.DRIVE_SIDE:
        return f"{choice}-hand drive"
    label = cars.label(known, name, choice)
    return label if isinstance(label, str) else say(label)


def beside(
    record: VehicleRecord, typed: Any, stamp: Mapping[str, Any], answers: Mapping[str, str]
) -> tuple[str, dict[str, Any]]:
    """All stamps of parts with a new one, and its id: it takes the place of one of the same openings, side and car."""
    there = dict(typed.get(PARTS) or {})
    same = [
        one.id for one in record.verified_parts.values() if _is_same(record, one.of, one.side, one.car, stamp, answers)
    ]
    base = "-".join([*stamp["of"], *([stamp["side"]] if stamp.get("side") else [])])
    name = same[0] if same else base
    number = 2
    while not same and name in there:
        name, number = f"{base}-{number}", number + 1
    return name, {**there, name: stamp}


def _is_same(
    record: VehicleRecord,
    of: tuple[str, ...],
    side: str | None,
    where: CarSeen,
    stamp: Mapping[str, Any],
    answers: Mapping[str, str],
) -> bool:
    there = seen.answers(record, seen.seen(record, where))
    return [*of] == stamp["of"] and (side or "") == stamp.get("side", "") and there == dict(answers)
