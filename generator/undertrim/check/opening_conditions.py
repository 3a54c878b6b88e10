"""The conditions of openings that can be trusted: those whose variants and choices are all declared."""

from collections.abc import Iterator

from undertrim.check.conditions import undeclared
from undertrim.check.findings import Subject
from undertrim.record.model import Opening


def sound_openings(subject: Subject) -> Iterator[Opening]:
    """Openings of which neither 'when' nor 'not_in' names something undeclared."""
    doubtful = {item.pointer[1] for item in undeclared(subject.record) if item.pointer[:1] == ("openings",)}
    yield from (opening for name, opening in subject.record.openings.items() if name not in doubtful)
