"""What becomes of what the factory unit also does, as data and in words: the same on page, sheet, terminal and in the JSON."""

from collections.abc import Collection, Mapping
from typing import Any

from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.duties import Fate
from undertrim.derive.fit.duty_groups import Becomes, becomes
from undertrim.derive.fit.stock import Stock
from undertrim.publish.facts import doubts, words
from undertrim.record.model import VehicleRecord, When
from undertrim.words import Items, Message, Value, message, say

Data = dict[str, Any]

LAW = message("duties/law")
_OWNER = message("duties/owner")
_NOBODY = message("duties/nobody")


def duties(record: VehicleRecord, address: str, stock: Stock) -> list[Data]:
    """Every duty with what becomes of it, one entry for each outcome; `word` is STOP, LOST, UNKNOWN, NEEDED or empty."""
    counted = reckoned(record)
    return [duty(counted, item) for item in becomes(counted, address, stock)]


def duty(record: VehicleRecord, item: Becomes) -> Data:
    """One outcome of a duty; `kept_words` says what becomes of it."""
    word = _word(item)
    return {
        "id": item.duty.id,
        "name": item.outcome.name,
        "kept_by": item.duty.kept_by,
        "becomes": item.outcome.said,
        "kept_words": message("duties/not-plain", becomes=item.outcome.said) if word == "STOP" else item.outcome.said,
        "fate": str(item.outcome.fate),
        "weight": item.outcome.kind.weight,
        "weight_words": item.outcome.kind.words,
        "by": list(item.outcome.by),
        "word": word,
        "conflicts": doubts.marks(record, ("duties", item.duty.id)),
        "note": item.duty.note,
        "openings": list(item.openings),
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "source": list(item.duty.source),
    }


def going(found: Collection[Data], opening: str, car: Mapping[str, str] | None = None) -> list[Data]:
    """Those of the duties that do not simply stay, at one opening, in the cars that `car` leaves open."""
    return [
        item for item in found
        if opening in item["openings"] and item["fate"] != Fate.STAYS and _holds(item["clauses"], car or {})
    ]  # fmt: skip


def of_answer(vehicle: Vehicle, found: Answer) -> list[Data]:
    """Those at the opening of an answer, in its cars. What stays is left out, and what gear keeps: each fit says by what."""
    every = duties(vehicle.record, vehicle.address, vehicle.stock)
    kinds = found.cars or ({},)
    if not found.there:
        return []
    every = [item for item in every if item["fate"] != Fate.KEPT]
    return [item for item in every if any(going([item], found.opening.id, car) for car in kinds)]


def line(item: Data) -> str:
    """`hazard switch [Map radio]: STOP, not a plain replacement: LOST with the factory unit`."""
    code = "line-in" if item["when"] else "outcome"
    cars = {"cars": item["when"]} if item["when"] else {}
    return say(message(f"duties/{code}", duty=item["name"], becomes=item["kept_words"], **cars))


def text(item: Data) -> Value:
    """What a blocker says of a duty that is lost or may be."""
    usual = {"none": _OWNER, "unknown": _NOBODY}.get(item["kept_by"], "")
    become = _sentence(item["becomes"]) if item["kept_by"] not in ("none", "unknown") else ""
    said = (
        _own(item["note"]) or ("" if item["word"] == "STOP" and item["kept_by"] == "none" else usual),
        become,
        _weight(item),
    )
    return Items(tuple(part for part in said if part), "spaced")


def _weight(item: Data) -> Value:
    """Who decides on a loss, where it is not the owner alone."""
    if item["word"] == "STOP":
        return LAW
    return message("duties/weight-unknown", weight=item["weight_words"]) if item["weight"] == "unknown" else ""


def _sentence(becomes: Message) -> Message:
    """What becomes of a duty, as a sentence."""
    return message(f"{becomes.code}-sentence", **becomes.values)


def _own(note: str) -> str:
    """A record's own text, as a sentence."""
    return note and f"{note[0].upper()}{note[1:]}{'' if note.endswith(('.', '!', '?')) else '.'}"


def _word(item: Becomes) -> str:
    if item.outcome.stops:
        return "STOP"
    return {Fate.LOST: "LOST", Fate.UNKNOWN: "UNKNOWN", Fate.KEPT: "NEEDED"}.get(item.outcome.fate, "")


def _holds(clauses: Mapping[str, list[str]], car: Mapping[str, str]) -> bool:
    return When(tuple((name, tuple(choices)) for name, choices in clauses.items())).holds(car)
