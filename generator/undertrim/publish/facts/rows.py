"""Lines of a table of facts, as the rooms of the kinds give them."""

from typing import TypeAlias

from undertrim.words import Value

Row: TypeAlias = tuple[str, Value, Value]
"""A fact of an opening: the keys that lead from the opening to it (`face/width`; empty where it is no single fact), its label and its value."""
