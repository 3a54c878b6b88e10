"""Asks at the terminal who looks at which car."""

from collections.abc import Sequence
from datetime import date

from undertrim.commands import prompts
from undertrim.derive import cars
from undertrim.derive.evidence import holding
from undertrim.publish.build.day import today
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data
from undertrim.words import Value, message, say


def who(record: VehicleRecord, *, measures: bool = True) -> dict[str, Data]:
    """Who looks, on which day, with what where something is measured, and at which car, as a claims file has it at its top. Raises Stopped."""
    by = prompts.text(say(message("ask/by")), _is_initials)
    on = prompts.text(say(message("ask/on")), _is_day, say(message("ask/today")))
    with_ = prompts.text(say(message("ask/with")), lambda said: "", say(message("ask/with-hint"))) if measures else ""
    shared: dict[str, Data] = {"by": by, "on": on or today().isoformat(), "how": "seen"}
    return shared | ({"with": with_} if with_ else {}) | {"car": _car(record)}


def _is_initials(said: str) -> str:
    return "" if 0 < len(said.strip()) <= 20 and any(map(str.isalnum, said)) else say(message("ask/initials"))


def _is_day(said: str) -> str:
    try:
        fine = not said.strip() or date.fromisoformat(said.strip()) <= today()
    except ValueError:
        fine = False
    return "" if fine else say(message("ask/day"))


def _car(record: VehicleRecord) -> dict[str, Data]:
    """The car by all that sets cars of the record apart."""
    car: dict[str, Data] = {}
    known = cars.variants(record)
    for name in holding.unsaid(record, None):
        if name == "year":
            car["year"] = _year(record)
        elif name == "side":
            sides = [(side, say(message(f"sides/{side}"))) for side in record.vehicle.drive_side]
            car["side"] = _choice(message("drive-side/ask"), sides)
        else:
            variant = known[name]
            choices = [
                (one.id, say(message("plan/choice", label=one.label, tell=one.tell)))
                for one in variant.choices.values()
            ]
            car.setdefault("is", {})[name] = _choice(variant.ask, choices)
    return car


def _year(record: VehicleRecord) -> Data:
    first, last = holding.years(record)

    def check(said: str) -> str:
        fine = said.strip() in ("", "?") or (said.strip().isdecimal() and first <= int(said) <= last)
        return "" if fine else say(message("ask/years", first=str(first), last=str(last)))

    said = prompts.text(say(message("ask/year")), check)
    return int(said) if said.isdecimal() else "unknown"


def _choice(ask: Value, choices: Sequence[tuple[str, str]]) -> str:
    return prompts.choose(say(ask), [*choices, ("unknown", say(message("ask/cannot-tell")))])
