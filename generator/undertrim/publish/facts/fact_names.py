"""A fact of a record in words, from the keys that lead to it: `Front door speakers: clear depth`."""

from collections.abc import Iterator, Mapping
from typing import Any

from undertrim.record.fields import Node, root
from undertrim.record.source import Data, Pointer


def fact_name(data: Data, pointer: Pointer) -> str:
    """What a fact is called: the things around it by their names, then the fields by their titles in the schema.

    `data` is the record as typed; a pointer that leads nowhere in it is named by what the schema says of its keys.
    """
    things: list[str] = []
    titles: list[str] = []
    for kind, text in _words(data, pointer):
        (things if kind == "thing" else titles).append(text)
    said = [title for place, title in enumerate(titles) if not any(title in later for later in titles[place + 1 :])]
    name = ": ".join(text for text in (", ".join(things), ", ".join(said)) if text)
    return name[:1].upper() + name[1:]


def block_name(data: Data, block: str) -> str:
    """What a block of facts (`parts/vent-trim`) is called: its name, or its section with its id."""
    return fact_name(data, tuple(block.split("/")))


def _words(data: Data, pointer: Pointer) -> Iterator[tuple[str, str]]:
    """Each step as a thing (with a name or number of its own) or as the title of a field."""
    node: Node | None = root("vehicle")
    value: Data = data
    for place, step in enumerate(pointer):
        keyed = isinstance(step, int) or step not in (node.schema.get("properties", {}) if node else {})
        value, node = _inner(value, step), node.child(step) if node else None
        if keyed:
            yield "thing", _thing(step, value)
        elif place == len(pointer) - 1 or not _named_below(value, pointer[place + 1]):
            title = _title(node, step)
            yield ("thing", title) if place == 0 and len(pointer) > 1 else ("title", title.lower())


def _inner(value: Data, step: str | int) -> Any:
    try:
        return value[step]
    except (KeyError, IndexError, TypeError):
        return None


def _named_below(value: Data, step: str | int) -> bool:
    """Whether what follows says by its own name what it is."""
    below = _inner(value, step)
    return isinstance(below, Mapping) and "name" in below


def _thing(step: str | int, value: Data) -> str:
    if isinstance(value, Mapping) and "name" in value:
        return str(value["name"])
    return f"no. {step + 1}" if isinstance(step, int) else step.replace("-", " ")


def _title(node: Node | None, step: str | int) -> str:
    return str(node.schema.get("title", step)) if node else str(step)
