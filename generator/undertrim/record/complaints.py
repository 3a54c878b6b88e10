"""Turns what the validator found into sentences a contributor understands.

Each complaint says what is wrong at one place and the way out. The validator's own text is never shown.
"""

import difflib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from jsonschema.exceptions import ValidationError

from undertrim.record import schema
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Pointer, Source

RULE = "schema"


@dataclass(frozen=True, slots=True)
class Complaint:
    """One sentence about one place; `key` points at the key instead of its value."""

    pointer: Pointer
    message: str
    hint: str = ""
    key: bool = False


def complaints(source: Source, name: str) -> tuple[Complaint, ...]:
    """Everything in the data of `source` that the schema called `name` does not allow, first per place."""
    if not isinstance(source.data, dict):
        return (Complaint((), "the file holds no record", "start with 'format: 1'"),)
    found: dict[tuple[Pointer, str], Complaint] = {}
    for error in schema.validator(name).iter_errors(source.data):
        for complaint in _rewrite(error):
            topic = complaint.message if complaint.key or "missing" in complaint.message else ""
            found.setdefault((complaint.pointer, topic), complaint)
    return tuple(found.values())


def as_problem(source: Source, complaint: Complaint) -> Problem:
    """A complaint with its file, line and column."""
    position = source.position(complaint.pointer, key=complaint.key)
    return Problem(source.path, position, Level.ERROR, RULE, complaint.message, complaint.hint)


def _rewrite(error: ValidationError) -> Iterator[Complaint]:
    pointer = tuple(error.absolute_path)
    if error.instance is None:
        hint = "write the value, or 'unknown' where that is allowed, or remove the line"
        yield Complaint(pointer, f"'{pointer[-1] if pointer else 'record'}' is blank", hint, key=True)
        return
    writer = _name if _about_a_key(error) else _WRITERS.get(str(error.validator), _other)
    yield from writer(error, pointer)


def _about_a_key(error: ValidationError) -> bool:
    """Whether the error is about the name of a key; the key is then the error's instance."""
    for step in reversed(error.absolute_schema_path):
        if step in ("properties", "additionalProperties", "items"):
            return False
        if step == "propertyNames":
            return True
    return False


def _title(error: ValidationError) -> str:
    title = error.schema.get("title", "value") if isinstance(error.schema, dict) else "value"
    return str(title)[0].lower() + str(title)[1:]


def _hint(error: ValidationError) -> str:
    if not isinstance(error.schema, dict):
        return ""
    if "hint" in error.schema:
        return str(error.schema["hint"])
    return _example(error.schema)


def _example(field: dict[str, Any]) -> str:
    examples = field.get("examples")
    if not examples:
        return ""
    return f"for example {_yaml(examples[0])}"


def _yaml(value: object) -> str:
    """A value as it would be typed on one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {_yaml(inner)}" for key, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(_yaml(inner) for inner in value) + "]"
    return str(value)


def _extra(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    assert isinstance(error.schema, dict)
    known = error.schema["properties"]
    for key in error.instance:
        if key not in known:
            yield Complaint((*pointer, key), f"'{key}' is not a field of {_title(error)}", _right_key(error.schema, key), key=True)


def _right_key(owner: dict[str, Any], key: str) -> str:
    instead = owner.get("misnamed", {}).get(key)
    if instead:
        return f"write '{instead}'"
    return nearest(key, list(owner["properties"]), "fields")


def nearest(word: str, known: list[str], what: str) -> str:
    """The hint for a misspelt word: the nearest known one, or all of them where none is near."""
    folded = {name.lower().replace("_", "-"): name for name in known}
    close = difflib.get_close_matches(word.lower().replace("_", "-"), list(folded), n=1, cutoff=0.6)
    if close:
        return f"did you mean '{folded[close[0]]}'?"
    shown = ", ".join(known[:40])
    return f"{what}: {shown}"


def _missing(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    assert isinstance(error.schema, dict)
    absent = [name for name in error.validator_value if name not in error.instance]
    for name in absent:
        field = error.schema.get("properties", {}).get(name, {})
        hint = f"add '{name}: …'" if not field else f"add '{name}': {_describe(field)}"
        yield Complaint(pointer, f"'{name}' is missing from {_where(pointer)}", hint, key=bool(pointer))


def _describe(field: dict[str, Any]) -> str:
    known = {**(schema.resolve(field["$ref"]) if "$ref" in field else {}), **field}
    text = str(known.get("description", "")).split(". ")[0].rstrip(".")
    return f"{text[:1].lower()}{text[1:]}, {_example(known)}" if text else _example(known)


def _where(pointer: Pointer) -> str:
    if not pointer:
        return "the record"
    last = pointer[-1]
    return f"line {last + 1} of '{pointer[-2]}'" if isinstance(last, int) else f"'{last}'"


def _choice(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    known = [str(value) for value in error.validator_value]
    title = _title(error)
    if isinstance(error.instance, dict | list):
        yield Complaint(pointer, f"{title} is one word, not a {_sort(error.instance)}", f"one of: {', '.join(known)}")
        return
    word = str(error.instance)
    hint = {"true": "yes", "false": "no"}.get(word.lower(), "")
    hint = f"write '{hint}'" if hint in known else nearest(word, known, "one of")
    yield Complaint(pointer, f"'{word}' is not a known {title}", hint)


def _sort(value: object) -> str:
    if isinstance(value, dict):
        return "mapping"
    return "list" if isinstance(value, list) else "text"


_WANTED = {"object": "a mapping", "array": "a list", "string": "text", "integer": "a whole number"}


def _wrong_type(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    types = error.validator_value if isinstance(error.validator_value, list) else [error.validator_value]
    wanted = " or ".join(_WANTED[name] for name in types)
    found = _sort(error.instance)
    shown = f"'{error.instance}'" if found == "text" else f"a {found}"
    yield Complaint(pointer, f"{_title(error)} must be {wanted}, not {shown}", _hint(error))


def _pattern(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    yield Complaint(pointer, f"'{error.instance}' is not a valid {_title(error)}", _hint(error))


def _name(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    """A key that may not stand in its mapping."""
    key = str(error.instance)
    if error.validator == "enum":
        hint = nearest(key, [str(value) for value in error.validator_value], "allowed here")
        yield Complaint((*pointer, key), f"'{key}' does not belong here", hint, key=True)
        return
    yield Complaint((*pointer, key), f"'{key}' is not a valid {_title(error)}", _hint(error), key=True)


def _one_of(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
    names = [branch["required"][0] for branch in error.validator_value]
    present = [name for name in names if name in error.instance]
    if present:
        both = " and ".join(f"'{name}'" for name in present)
        yield Complaint(pointer, f"one {_title(error)} has {both}", "make one entry of each")
        return
    yield Complaint(pointer, f"a {_title(error)} names none of {', '.join(names)}", "say what it is, for example 'screw: T20'")


def _plain(message: Callable[[ValidationError], str]) -> Callable[[ValidationError, Pointer], Iterator[Complaint]]:
    def write(error: ValidationError, pointer: Pointer) -> Iterator[Complaint]:
        yield Complaint(pointer, message(error), getattr(error, "hint", "") or _hint(error))

    return write


_other = _plain(lambda error: f"{_title(error)} is not valid here")

_WRITERS: dict[str, Callable[[ValidationError, Pointer], Iterator[Complaint]]] = {
    "additionalProperties": _extra,
    "required": _missing,
    "enum": _choice,
    "type": _wrong_type,
    "pattern": _pattern,
    "oneOf": _one_of,
    "quantity": _plain(lambda error: error.message),
    "drive": _plain(lambda error: error.message),
    "minimum": _plain(lambda error: f"{_title(error)} {error.message}"),
    "maximum": _plain(lambda error: f"{_title(error)} {error.message}"),
    "minLength": _plain(lambda error: f"{_title(error)} is empty"),
    "maxLength": _plain(lambda error: f"{_title(error)} is longer than {error.validator_value} characters"),
    "minItems": _plain(lambda error: f"{_title(error)} is an empty list"),
    "maxItems": _plain(lambda error: f"{_title(error)} has more than {error.validator_value} entries"),
    "minProperties": _plain(lambda error: f"{_title(error)} needs at least {error.validator_value} entries"),
    "uniqueItems": _plain(lambda error: f"{_title(error)} names something twice"),
}
