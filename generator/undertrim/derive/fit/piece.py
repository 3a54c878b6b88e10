"""A piece of gear as an answer names it."""

from dataclasses import dataclass

from undertrim.words import Language


@dataclass(frozen=True, slots=True)
class Piece:
    """Gear by its id, which is what answers are compared by; in words it is its name, maker and model."""

    id: str
    name: str

    def say(self, _: Language) -> str:
        """The name, which is the same in any language."""
        return self.name
