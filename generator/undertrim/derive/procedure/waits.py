"""How long to wait once the battery is off: the maker's time for the restraint system, never a usual value."""

from undertrim.record.model import Blank, Prep, VehicleRecord, Wait
from undertrim.record.units import Quantity

WHY = "The restraint unit keeps reserve power after the battery is off"


def after(prep: Prep, record: VehicleRecord) -> Wait | None:
    """The wait after a preparation: the longer of its own and, with the battery off, the restraint system's; unknown beats both.

    None where the preparation has none and either leaves the battery on or no restraint system is fitted.
    """
    wanted = [wait for wait in (prep.wait, _restraint(record) if prep.sets.get("battery") == "off" else None) if wait]
    unknown = [wait for wait in wanted if not isinstance(wait.time, Quantity)]
    return unknown[0] if unknown else max(wanted, key=_seconds, default=None)


def _seconds(wait: Wait) -> float:
    return wait.time.value if isinstance(wait.time, Quantity) else 0.0


def _restraint(record: VehicleRecord) -> Wait | None:
    facts = record.restraint
    if facts is None:
        return Wait(Blank.UNKNOWN, WHY)
    if facts.fitted == "no" or facts.wait is Blank.NONE:
        return None
    return Wait(facts.wait, WHY, facts.source)
