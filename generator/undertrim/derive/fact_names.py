"""A fact of a record in words, from the keys that lead to it: `Front door speakers: clear depth`."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from undertrim.derive.fit import duty_kinds
from undertrim.derive.wiring import leads
from undertrim.derive.wiring.functions import functions
from undertrim.record.field_titles import apart
from undertrim.record.fields import Node, root
from undertrim.record.own_text import in_language
from undertrim.record.source import Data, Pointer
from undertrim.words import Items, Language, Value, message, named, say, spoken


@dataclass(frozen=True, slots=True)
class FactName:
    """What a fact is called: the things around it by their names, then the fields by their titles, as they are said of each other."""

    things: tuple[Value, ...]
    titles: tuple[Value, ...]

    def say(self, speech: Language) -> str:
        """In words of a language; a title that the next one holds already is not said twice."""
        parts = [Items(tuple(some), "comma") for some in (self.things, apart(self.titles, speech)) if some]
        both = message("fact-names/fact", things=parts[0], fields=parts[1]) if len(parts) > 1 else Items(tuple(parts))
        name = say(both, speech)
        return name if name[:1].isupper() else name[:1].upper() + name[1:]

    def __str__(self) -> str:
        return self.say(spoken())


def fact_name(data: Data, pointer: Pointer, document: str = "vehicle") -> FactName:
    """What a fact is called: the things around it by their names, then the fields by their titles in the schema.

    `data` is the record as typed, `document` the sort of record; a pointer that leads nowhere in it is named by what the schema says of its keys.
    """
    words = list(_words(data, pointer, document))
    things, titles = (tuple(text for kind, text in words if kind == wanted) for wanted in ("thing", "title"))
    return FactName(things, titles)


def block_name(data: Data, block: str) -> FactName:
    """What a block of facts (`parts/vent-trim`) is called: its name, or its section with its id."""
    return fact_name(data, tuple(block.split("/")))


def _words(data: Data, pointer: Pointer, document: str) -> Iterator[tuple[str, Value]]:
    """Each step as a thing (with a name or number of its own) or as the title of a field."""
    node: Node | None = root(document)
    value: Data = data
    for place, step in enumerate(pointer):
        keyed = isinstance(step, int) or step not in (node.schema.get("properties", {}) if node else {})
        value, node = _inner(value, step), node.child(step) if node else None
        if keyed:
            yield "thing", _thing(pointer[place - 1] if place else "", step, value, data.get("lang", ""))
        elif place == len(pointer) - 1 or not _named_below(value, pointer[place + 1]):
            title = _title(node, step)
            yield "thing" if place == 0 and len(pointer) > 1 else "title", title


def _inner(value: Data, step: str | int) -> Any:
    try:
        return value[step]
    except (KeyError, IndexError, TypeError):
        return None


def _named_below(value: Data, step: str | int) -> bool:
    """Whether what follows says by its own name what it is."""
    below = _inner(value, step)
    return isinstance(below, Mapping) and "name" in below


def _thing(above: str | int, step: str | int, value: Data, lang: str) -> Value:
    if isinstance(value, Mapping) and "name" in value:
        name: Value = value["name"]
        return in_language(name, lang) if isinstance(name, str) else name
    if isinstance(step, int):
        return message("fact-names/number", number=step + 1)
    own = value.get(_SAYS.get(above, "")) if isinstance(value, Mapping) else None
    return _KEYED.get(above, _apart)(own if isinstance(own, str) else step)


def _apart(key: str) -> str:
    return key.replace("-", " ")


def _function(key: str) -> Value:
    """A function in words; an id of the record's own where the record at hand does not say of which it is."""
    return leads.named(key) if key in functions().functions else _apart(key)


def _button(key: str) -> Value:
    return named("buttons", key)


_KEYED: Mapping[str | int, Callable[[str], Value]] = {
    "functions": _function,
    "duties": duty_kinds.named,
    "buttons": _button,
}
"""How the keys of a section are said that are words of ours."""

_SAYS: Mapping[str | int, str] = {"functions": "function"}
"""The field by which a thing of such a section says what it is about, where its key is an id."""


def _title(node: Node | None, step: str | int) -> Value:
    title: Value = node.schema.get("title", str(step)) if node else str(step)
    return title
