"""The one way from facts to JSON, at the edge: what is published, handed to a script, to Typst, or to another program."""

import json
from dataclasses import fields, is_dataclass
from typing import Any


def encoded(value: object) -> Any:
    """A fact as plain data, one level deep; for `default` of `json.dumps`. Its fields are keys, without the underscore after a word that Python keeps for itself."""
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name.rstrip("_"): getattr(value, field.name) for field in fields(value)}
    raise TypeError(f"{type(value).__name__} is no fact")


def compact(data: object) -> str:
    """Data on one line, for programs."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False, default=encoded)


def indented(data: object, step: int = 2) -> str:
    """Data as people read it too."""
    return json.dumps(data, ensure_ascii=False, indent=step, default=encoded)
