"""The one way from facts to plain data and JSON, at the edge: what is published, handed to a template, a script, Typst, or another program.

Facts hold messages; here they become words, in the language of the reader.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from operator import attrgetter
from types import GeneratorType, UnionType
from typing import Annotated, Any, Literal, TypeVar, Union, get_args, get_origin

from undertrim.words import Items, Language, Message, WayOut, Word, say, spoken

Published = Mapping[str, Any]
"""A fact that was said: plain data by key, as templates, scripts, Typst and other programs read it. Before that a fact is a dataclass."""

_Fact = TypeVar("_Fact")
_SPREAD = "spread"
Spread = Annotated[_Fact, _SPREAD]
"""The type of a field whose own fields are said in its place: a fact that says all that another one says, and more."""

_SAYS = (Message, Word, Items, WayOut)
_WORDS = frozenset(_SAYS)
_AS_IT_IS = (str, int, float)
_PLAIN = frozenset({str, int, float, bool, type(None)})


def said(facts: Any) -> Any:
    """Facts as plain data: every message in words, every dataclass and mapping a dictionary, every sequence a list.

    A field of a dataclass is a key, without the underscore after a word that Python keeps for itself; one that is `Spread` is the keys
    of the fact that it holds. A value that knows its own words says them.
    A generator is a sequence that is made while it is said, so that of a long one only what is being said is held in messages too.
    """
    return _said(facts, spoken())


def _said(facts: Any, speech: Language) -> Any:
    kind: Any = type(facts)  # a vehicle has some thirty thousand values, nearly all of these few types
    if kind in _PLAIN:
        return facts
    if kind is dict:
        return {key: value if type(value) in _PLAIN else _said(value, speech) for key, value in facts.items()}
    if kind is list or kind is tuple or kind is GeneratorType:
        return [value if type(value) in _PLAIN else _said(value, speech) for value in facts]
    if kind in _WORDS:
        return say(facts, speech)
    if shape := _shape(kind):
        keys, values, deep, spread = shape
        made = dict(zip(keys, values(facts)))  # noqa: B905 - a key for each value; asking whether costs as much as a short fact
        for key in deep:
            value = made[key]
            if type(value) not in _PLAIN:
                made[key] = _said(value, speech)
        return _flat(made, spread) if spread else made
    if isinstance(facts, _AS_IT_IS):
        return facts
    return say(facts, speech) if hasattr(facts, "say") else _said(_opened(facts, speech), speech)


def _opened(fact: Any, speech: Language | None = None) -> Any:
    """A fact of another type, one level deep, as JSON or `said` goes on with it."""
    if isinstance(fact, _SAYS) or hasattr(fact, "say"):
        return say(fact, speech)
    if isinstance(fact, Mapping):
        return dict(fact)
    if isinstance(fact, list | tuple):
        return list(fact)
    kind: Any = type(fact)
    if shape := _shape(kind):
        keys, values, _, spread = shape
        made = dict(zip(keys, values(fact), strict=True))
        return _flat({key: _opened(made[key]) if key in spread else made[key] for key in made}, spread)
    raise TypeError(f"{type(fact).__name__} is no fact")


_Shape = tuple[tuple[str, ...], Callable[[Any], tuple[Any, ...]], tuple[str, ...], frozenset[str]]


@cache
def _shape(kind: Any) -> _Shape | None:
    """The keys of a dataclass, how its values are had in that order, which of them may hold more than JSON has itself, and which are spread.

    None for what is no dataclass or says itself.
    """
    if issubclass(kind, _SAYS) or hasattr(kind, "say") or not is_dataclass(kind):
        return None
    names = tuple(field.name for field in fields(kind))
    deep = tuple(field.name.rstrip("_") for field in fields(kind) if not _is_plain(field.type))
    spread = frozenset(field.name for field in fields(kind) if _SPREAD in getattr(field.type, "__metadata__", ()))
    return tuple(name.rstrip("_") for name in names), _getter(names), deep, spread


def _is_plain(kind: Any) -> bool:
    """Whether a field of this type holds what JSON has itself, so that nobody needs to look at each of its values."""
    if get_origin(kind) in (Union, UnionType):
        return all(map(_is_plain, get_args(kind)))
    return get_origin(kind) is Literal or kind in _PLAIN


def _getter(names: tuple[str, ...]) -> Callable[[Any], tuple[Any, ...]]:
    """How the values of some fields are had together; `attrgetter` gives them so where they are several."""
    return attrgetter(*names) if len(names) > 1 else lambda fact: tuple(getattr(fact, name) for name in names)


def _flat(made: dict[str, Any], spread: frozenset[str]) -> dict[str, Any]:
    """A fact with the keys of what is spread in its place."""
    found: dict[str, Any] = {}
    for key, value in made.items():
        found |= value if key in spread else {key: value}
    return found


def compact(data: object) -> str:
    """Data on one line, for programs."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False, default=_opened)


def indented(data: object, step: int = 2) -> str:
    """Data as people read it too."""
    return json.dumps(data, ensure_ascii=False, indent=step, default=_opened)
