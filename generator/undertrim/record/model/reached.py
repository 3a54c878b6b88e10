"""What somebody may want to get at for its own sake, though no gear goes in behind it."""

from dataclasses import dataclass
from typing import Literal

from undertrim.record.model.basics import ALWAYS, Side, When, Written
from undertrim.record.model.parts import Part, Ref
from undertrim.record.model.wiring import Run


@dataclass(frozen=True, slots=True)
class Reached(Written):
    """A part or a cable run that is reached `for_` something, by its own id; `behind` are the parts that must be off for it, `section` where it is written."""

    id: str
    name: str
    for_: str
    behind: tuple[Ref, ...]
    section: Literal["parts", "runs"]
    when: When = ALWAYS
    each: tuple[Side, ...] = ()
    form_of: str = ""

    @classmethod
    def part(cls, part: Part) -> "Reached":
        """A part, which comes off itself."""
        return cls(part.id, part.name, part.reached_for, (Ref(part.id),), "parts", part.when, part.each, part.form_of)

    @classmethod
    def run(cls, run: Run) -> "Reached":
        """A cable run, of which the trims come off on its side."""
        return cls(run.id, run.name, run.reached_for, run.over, "runs", run.when)
