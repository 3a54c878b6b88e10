"""Messages and their values as plain data for JSON, and back.

A class of ours that knows its own words is kept by its name and its fields. Whoever tampers with the data can have no other class
made, and no code run.
"""

from dataclasses import fields, is_dataclass
from importlib import import_module
from typing import Any

from undertrim.words.message import Message

_OURS = "undertrim."


def frozen(value: Any) -> Any:
    """A value as data for JSON. Raises TypeError for what is none."""
    if value is None or isinstance(value, str | int | float):
        return value
    if isinstance(value, tuple):
        return [frozen(one) for one in value]
    kind = type(value)
    if not _sayable(kind):
        raise TypeError(f"{kind.__name__} cannot be kept")
    held = (getattr(value, field.name) for field in fields(kind))
    given = (value.code, tuple(value.values.items())) if isinstance(value, Message) else held
    return {f"{kind.__module__}:{kind.__qualname__}": [frozen(one) for one in given]}


def thawed(plain: Any) -> Any:
    """The value again. Raises TypeError, ValueError, AttributeError or ImportError on other data."""
    if isinstance(plain, list):
        return tuple(map(thawed, plain))
    if not isinstance(plain, dict):
        return plain
    [(name, given)] = plain.items()
    module, _, kind = name.partition(":")
    if not module.startswith(_OURS):
        raise ValueError(f"'{name}' is none of ours")
    found = getattr(import_module(module), kind)
    if not _sayable(found):
        raise TypeError(f"'{name}' says nothing")
    return _message(*map(thawed, given)) if found is Message else found(*map(thawed, given))


def _message(code: str, values: tuple[tuple[str, Any], ...]) -> Message:
    return Message(code, dict(values))


def _sayable(kind: Any) -> bool:
    """Whether a class is a frozen record of values that becomes words."""
    told = hasattr(kind, "say") or getattr(kind, "__module__", "") == f"{_OURS}words.message"
    return isinstance(kind, type) and is_dataclass(kind) and kind.__dataclass_params__.frozen and told  # type: ignore[attr-defined]
