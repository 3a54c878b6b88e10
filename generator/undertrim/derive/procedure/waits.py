"""How long to wait once the battery is off: the maker's time for the restraint system, never a usual value."""

from undertrim.record.model import Blank, Prep, VehicleRecord, Wait
from undertrim.record.units import Quantity
from undertrim.words import Value, message


def after(prep: Prep, record: VehicleRecord) -> tuple[Wait, ...]:
    """The waits after a preparation: its own and, with the battery off, the restraint system's.

    Waits run side by side, so of two known ones the longer is enough; an unknown one always stands for itself.
    A record that says nothing of its restraint system has an unknown wait, unless the preparation says one.
    """
    said = record.restraint is not None or prep.wait is None
    restraint = _restraint(record) if said and prep.sets.get("battery") == "off" else None
    wanted = [wait for wait in (restraint, prep.wait) if wait]
    known = [wait for wait in wanted if isinstance(wait.time, Quantity)]
    unknown = [wait for wait in wanted if not isinstance(wait.time, Quantity)]
    return (*([max(known, key=_seconds)] if known else []), *unknown[:1])


def own(prep: Prep) -> tuple[Wait, ...]:
    """The wait that a preparation asks for itself."""
    return (prep.wait,) if prep.wait else ()


def why(wait: Wait) -> Value:
    """What is waited for: as the record has it, or the restraint system."""
    return wait.why or message("steps/reserve-power")


def _seconds(wait: Wait) -> float:
    return wait.time.value if isinstance(wait.time, Quantity) else 0.0


def _restraint(record: VehicleRecord) -> Wait | None:
    facts = record.restraint
    if facts is None:
        return Wait(Blank.UNKNOWN, "")
    if facts.fitted == "no" or facts.wait is Blank.NONE:
        return None
    return Wait(facts.wait, "", facts.source)
