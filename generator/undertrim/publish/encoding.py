"""The one way from facts to plain data and JSON, at the edge: what is published, handed to a template, a script, Typst, or another program.

Facts hold messages; here they become words, in the language of the reader.
"""

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from undertrim.words import Items, Message, WayOut, Word, say

_SAID = (Message, Word, Items, WayOut)


def said(facts: Any) -> Any:
    """Facts as plain data: every message in words, every dataclass and mapping a dictionary, every sequence a list.

    A field of a dataclass is a key, without the underscore after a word that Python keeps for itself. A value that knows its own words says them.
    """
    if facts is None or isinstance(facts, str | int | float):
        return facts
    if isinstance(facts, list | tuple):
        return [said(value) for value in facts]
    if isinstance(facts, dict | Mapping):  # what nearly all are stands first: to ask for a Mapping takes long
        return {key: said(value) for key, value in facts.items()}
    if isinstance(facts, _SAID) or hasattr(facts, "say"):
        return say(facts)
    if is_dataclass(facts) and not isinstance(facts, type):
        return {field.name.rstrip("_"): said(getattr(facts, field.name)) for field in fields(facts)}
    raise TypeError(f"{type(facts).__name__} is no fact")


def compact(data: object) -> str:
    """Data on one line, for programs."""
    return json.dumps(said(data), ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def indented(data: object, step: int = 2) -> str:
    """Data as people read it too."""
    return json.dumps(said(data), ensure_ascii=False, indent=step)
