"""What becomes of the fasteners of a part or preparation in one step, and the tools for them."""

from undertrim.derive.procedure.steps import FastenerLine
from undertrim.record.model import Assignment, Fastener, Part, Prep


def coming_out(thing: Part | Prep, car: Assignment) -> tuple[FastenerLine, ...]:
    """The fasteners of a part or preparation as it comes off or is done in this car."""
    live = (fastener for fastener in thing.held_by if fastener.when.holds(car))
    return tuple(
        FastenerLine(f, "leave") if f.leave == "yes" else FastenerLine(f, "out", _left(thing, f)) for f in live
    )


def _left(thing: Part | Prep, fastener: Fastener) -> str:
    """Where fasteners end that do not simply go back with what they hold."""
    if fastener.single_use:
        return "binned"
    if isinstance(thing, Prep) or thing.replaced == "no":
        return ""
    return "moved" if fastener.moves == "yes" else "bagged"


def returning(held_by: tuple[Fastener, ...], car: Assignment) -> tuple[FastenerLine, ...]:
    """The fasteners that go back in this car; new ones for those that are used once."""
    live = (f for f in held_by if f.when.holds(car) and f.leave == "no")
    return tuple(FastenerLine(f, "new" if f.single_use else "back") for f in live)
