"""The one way from facts to plain data and JSON, at the edge: what is published, handed to a template, a script, Typst, or another program.

Facts hold messages; here they become words, in the language of the reader.
"""

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from types import GeneratorType
from typing import Any

from undertrim.words import Items, Language, Message, WayOut, Word, say, spoken

_SAYS = (Message, Word, Items, WayOut)
_PLAIN = frozenset({str, int, float, bool, type(None)})


def said(facts: Any) -> Any:
    """Facts as plain data: every message in words, every dataclass and mapping a dictionary, every sequence a list.

    A field of a dataclass is a key, without the underscore after a word that Python keeps for itself. A value that knows its own words says them.
    A generator is a sequence that is made while it is said, so that of a long one only what is being said is held in messages too.
    """
    return _said(facts, spoken())


def _said(facts: Any, speech: Language) -> Any:
    kind = type(facts)  # a vehicle has some thirty thousand values, nearly all of these few types
    if kind in _PLAIN:
        return facts
    if kind is dict:
        return {key: value if type(value) in _PLAIN else _said(value, speech) for key, value in facts.items()}
    if kind is list or kind is tuple or kind is GeneratorType:
        return [value if type(value) in _PLAIN else _said(value, speech) for value in facts]
    if kind is Message:
        return say(facts, speech)
    return facts if isinstance(facts, str | int | float) else _said(_opened(facts, speech), speech)


def _opened(fact: Any, speech: Language | None = None) -> Any:
    """A fact of another type, one level deep, as JSON or `said` goes on with it."""
    if isinstance(fact, _SAYS) or hasattr(fact, "say"):
        return say(fact, speech)
    if isinstance(fact, Mapping):
        return dict(fact)
    if isinstance(fact, list | tuple):
        return list(fact)
    if is_dataclass(fact) and not isinstance(fact, type):
        return {key: getattr(fact, name) for name, key in _keys(type(fact))}
    raise TypeError(f"{type(fact).__name__} is no fact")


@cache
def _keys(kind: Any) -> tuple[tuple[str, str], ...]:
    """The fields of a dataclass, each with its key."""
    return tuple((field.name, field.name.rstrip("_")) for field in fields(kind))


def compact(data: object) -> str:
    """Data on one line, for programs."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False, default=_opened)


def indented(data: object, step: int = 2) -> str:
    """Data as people read it too."""
    return json.dumps(data, ensure_ascii=False, indent=step, default=_opened)
