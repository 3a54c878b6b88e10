"""A fact of a record in words, from the keys that lead to it: `Front door speakers: clear depth`."""

from collections.abc import Iterator, Mapping
from typing import Any

from undertrim.publish.facts.words import listed
from undertrim.record.fields import Node, root
from undertrim.record.source import Data, Pointer
from undertrim.words import Value, message


def fact_name(data: Data, pointer: Pointer) -> Value:
    """What a fact is called: the things around it by their names, then the fields by their titles in the schema.

    `data` is the record as typed; a pointer that leads nowhere in it is named by what the schema says of its keys.
    """
    things: list[Value] = []
    titles: list[str] = []
    for thing, title in _words(data, pointer):
        things += [thing] if thing else []
        titles += [title] if title else []
    kept = [title for place, title in enumerate(titles) if not any(title in later for later in titles[place + 1 :])]
    about, field = listed(*things), listed(*(message("facts/field", title=title) for title in kept))
    if about and field:
        return message("facts/field-of", thing=about, field=field)
    return message("facts/named", name=about or field)


def block_name(data: Data, block: str) -> Value:
    """What a block of facts (`parts/vent-trim`) is called: its name, or its section with its id."""
    return fact_name(data, tuple(block.split("/")))


def _words(data: Data, pointer: Pointer) -> Iterator[tuple[Value, str]]:
    """Each step as a thing (with a name or number of its own) or as the title of a field, the other empty."""
    node: Node | None = root("vehicle")
    value: Data = data
    for place, step in enumerate(pointer):
        keyed = isinstance(step, int) or step not in (node.schema.get("properties", {}) if node else {})
        value, node = _inner(value, step), node.child(step) if node else None
        if keyed:
            yield _thing(pointer[0], step, value), ""
        elif place == len(pointer) - 1 or not _named_below(value, pointer[place + 1]):
            title = _title(node, step)
            yield (title, "") if place == 0 and len(pointer) > 1 else ("", title.lower())


def _inner(value: Data, step: str | int) -> Any:
    try:
        return value[step]
    except (KeyError, IndexError, TypeError):
        return None


def _named_below(value: Data, step: str | int) -> bool:
    """Whether what follows says by its own name what it is."""
    below = _inner(value, step)
    return isinstance(below, Mapping) and "name" in below


def _thing(section: str | int, step: str | int, value: Data) -> Value:
    if isinstance(value, Mapping) and "name" in value:
        name: Value = value["name"]
        return name
    if isinstance(step, int):
        return message("facts/number", number=step + 1)
    return message(f"areas/{step}") if section == "areas" else step.replace("-", " ")


def _title(node: Node | None, step: str | int) -> str:
    return str(node.schema.get("title", step)) if node else str(step)
