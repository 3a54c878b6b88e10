"""Fields that lead into each other, by their titles in the schema as they stand in a sentence."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.record.fields import Node, root
from undertrim.words import Items, Language, Value, say


@dataclass(frozen=True, slots=True)
class FieldTitles:
    """Titles from the outer to the inner field: `hole diameter`; one that the next holds already is not said twice."""

    titles: tuple[Value, ...]

    def say(self, speech: Language) -> str:
        """In words of a language."""
        return say(Items(tuple(apart(self.titles, speech)), "spaced"), speech)


def apart(titles: Sequence[Value], speech: Language) -> list[str]:
    """Titles in lower case, without those that a later one holds."""
    said = [say(title, speech).lower() for title in titles]
    return [title for place, title in enumerate(said) if not any(title in later for later in said[place + 1 :])]


def field_titles(keys: Sequence[str | int]) -> FieldTitles:
    """The fields that keys of a vehicle record lead through; what the schema does not know is named by its key, an entry of a list by its number."""
    node: Node | None = root("vehicle")
    titles: list[Value] = []
    for key in keys:
        named = node is not None and key in node.schema.get("properties", ())
        node = node.child(key) if node else None
        titles.append(node.schema["title"] if node and named else str(key).replace("_", " "))
    return FieldTitles(tuple(titles))
