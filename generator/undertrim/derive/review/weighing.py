"""How closely a reviewer should look at a changed fact."""

from dataclasses import replace

from undertrim.derive.evidence import cautious
from undertrim.derive.evidence.facts import schema_at
from undertrim.derive.evidence.readings import read
from undertrim.derive.review.change import FactChange, Sort, Weight
from undertrim.record.model import Caution, Duty, Fastener, Part, Tether
from undertrim.record.model.car_facts import Todo
from undertrim.words import Value, message

SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
"""ANSI Z535.6, the gravest first."""
_POWER = frozenset({"needs", "sets", "battery", "supply", "fuse", "gauge", "turn_on", "wait", "latch", "key", "sensor"})
_GLASS = frozenset({"over", "obstruction", "to"})
_HELD = frozenset({"seat", "belt", "wheel"})
_RISKY = frozenset({"restraint", "high-voltage", "48-volt"})


def weighed(change: FactChange, before: object, after: object) -> FactChange:
    """The change with its weight, and why; `before` and `after` are what the model has there."""
    why = _dropped(change, before, after) or _lighter(change, before, after)
    if why:
        return replace(change, weight=Weight.WEAKER if change.same_source else Weight.CARE, why=why, lighter=True)
    if care := _careful(change):
        return replace(change, weight=Weight.CARE, why=care)
    return change


def _dropped(change: FactChange, before: object, after: object) -> Value:
    """Why it is graver that something is gone, or that its word is another one; empty where it is not."""
    if change.sort is Sort.GONE and after is None:
        if isinstance(before, Caution):
            return message("review/caution-dropped")
        if isinstance(before, Todo):
            return message("review/care-dropped")
        if isinstance(before, Duty):
            return message("review/duty-dropped")
        if isinstance(before, Tether) and before.circuit in _RISKY:
            return message("review/plug-dropped", circuit=message(f"tethers/{before.circuit}"))
        if isinstance(before, Fastener) and before.role in _HELD:
            return message("review/role-dropped")
        if isinstance(before, Part) and any(one.circuit in _RISKY for one in before.tethers.values()):
            return message("review/part-dropped")
    return _by_field(change, before, after)


def _by_field(change: FactChange, before: object, after: object) -> Value:
    match change.pointer:
        case ("areas", _, "restraints") if isinstance(before, tuple) and _fewer(before, after):
            return message("review/restraint-dropped")
        case (*_, "signal") if change.before in SIGNALS and change.after in SIGNALS:
            softer = SIGNALS.index(change.before) < SIGNALS.index(change.after)
            return message("review/signal-softer") if softer else ""
        case ("duties", _, "kept_by") if change.after == "stays":
            return message("review/duty-stays")
        case (*_, "role") if change.before in _HELD and change.after not in _HELD:
            return message("review/role-dropped")
        case ("after_battery", "checked_none") if len(change.after) > len(change.before):
            return message("review/none-to-do")
    return ""


def _fewer(before: tuple[str, ...], after: object) -> bool:
    """Whether one of the restraint parts of an area is no longer named; one that is only called otherwise is still there."""
    named = [name for name in before if name not in ("none", "unknown")]
    left = [name for name in after if name not in ("none", "unknown")] if isinstance(after, tuple) else []
    denied = before == ("unknown",) and after == ("none",)
    return denied or len(left) < len(named)


def _lighter(change: FactChange, before: object, after: object) -> Value:
    """Why the fact is less cautious than it was, for one on which lives depend; empty where it is not."""
    known = cautious.order("/".join(map(str, change.pointer)))
    if not known.safety or change.thing:
        return ""
    kind = schema_at(change.pointer).get("quantity", {}).get("kind", "")
    was, now = (read(text or known.absent, kind) for text in (change.before, change.after))
    return message("review/lighter", why=known.reason) if cautious.lighter(known, was, now) else ""


def _careful(change: FactChange) -> Value:
    steps = set(map(str, change.pointer))
    known = cautious.order("/".join(map(str, change.pointer)))
    if known.safety:
        return message("review/safety")
    if steps & _POWER or change.pointer[0] in ("closures", "rest"):
        return message("review/power")
    if steps & _GLASS and "depth" in steps:
        return message("review/glass")
    return ""
