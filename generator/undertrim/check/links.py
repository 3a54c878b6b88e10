"""Whether a record's statements of what waits for what, and in which cars, were read in full."""

from undertrim.check.findings import Subject
from undertrim.record.source import Pointer

_SECTIONS = ("vehicle", "variants", "preps", "parts", "openings")

_ASIDE = frozenset((
    "name", "how", "refit_how", "install_how", "test_how", "restore", "note", "cautions", "source",
    "area", "mirrors", "seal", "takes", "refit_takes", "wait", "release", "direction",
    "high_voltage", "count", "at", "length", "thread", "torque", "reuse", "laid", "diameter", "or_drive", "moves", "test", "kit",
    "nominal", "face", "depth", "hole", "bolts", "room_to_grille", "factory_spacer", "impedance",
    "crash_sensor", "ask", "label", "tell", "make", "model", "built", "phase", "model_years",
    "also_called",
))  # fmt: skip
"""Fields that say nothing of order; a field that the schema does not know may be a misspelt one that does."""


def read_in_full(subject: Subject) -> bool:
    """Whether the schema refused nothing that may have said what waits for what.

    Where it did, a rule about order would only find what follows from the gap.
    """
    return all(_aside(pointer) for pointer in subject.entry.dropped)


def _aside(pointer: Pointer) -> bool:
    return pointer[:1] != () and (pointer[0] not in _SECTIONS or not _ASIDE.isdisjoint(pointer[1:]))
