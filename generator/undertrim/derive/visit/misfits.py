"""Gear of a visit that does not fit, or of which nobody can say so."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Answer
from undertrim.derive.fit.duty_groups import conditions
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Opening, When
from undertrim.words import Message

STOPPING = ("does-not-fit", "unknown")
"""The verdicts that a job cannot be begun on. What becomes of the factory unit's duties (`stop`) stands by itself."""


@dataclass(frozen=True, slots=True)
class Misfit:
    """A chosen piece of gear with its verdict, and in which cars of the visit."""

    opening: Opening
    fit: Fit
    when: When

    @property
    def certain(self) -> bool:
        """Whether it is known not to fit."""
        return self.fit.kind == "does-not-fit"


def misfits(verdicts: Sequence[Answer]) -> Iterator[Misfit]:
    """Each verdict of a visit that stands in the way; what is said alike of several kinds of car once, with all of them."""
    for opening in {found.opening.id: found.opening for found in verdicts}.values():
        answers = [found for found in verdicts if found.opening.id == opening.id]
        kinds = [car for found in answers for car in found.cars or ({},)]
        same: dict[tuple[str, Message], tuple[Fit, list[Mapping[str, str]]]] = {}
        for found in answers:
            for fit in found.fits:
                if fit.kind in STOPPING:
                    same.setdefault((fit.gear, fit.headline), (fit, []))[1].extend(found.cars or ({},))
        for fit, having in same.values():
            yield from (Misfit(opening, fit, when) for when in conditions(having, kinds))
