"""A quick answer to one question: does a record fit its schema? Nothing is said of what does not.

Each schema becomes one test, a chain of plain functions, so that a good record costs about a millisecond; the validator,
which knows every single fault, only reads what fails here. A keyword that is not known here fails, so that a schema may
gain one and stay strict.
"""

import re
from collections.abc import Callable, Iterator
from functools import cache
from typing import Any

from undertrim.record import schema, values
from undertrim.record.schema import Schema
from undertrim.record.source import Data

Test = Callable[[Data], bool]

SILENT = frozenset(
    {"$schema", "$id", "$defs", "title", "description", "examples", "hint", "misnamed", "paragraphs", "mayBeUnknown", "order", "then", "short", "follows", "unless", "group", "named", "aside", "also", "blanks", "leads", "bySide", "namedBy", "together", "among", "listed"}
)  # fmt: skip
"""Keywords that refuse nothing by themselves: words for people, and what a neighbouring keyword reads."""


def fits(data: Data, name: str) -> bool:
    """Whether the schema called `name` has nothing against `data`."""
    return _referred(schema.reference(name))(data)


def takes(block: Schema, value: Data) -> bool:
    """Whether one block of a schema has nothing against a value."""
    return _test(block)(value)


def unknown_keywords(name: str) -> set[str]:
    """The keywords in the schema called `name` that this module does not know; a record that meets one never fits."""
    found = {word for block in _blocks(schema.load(name)) for word in block}
    return found - SILENT - set(_KEYWORDS)


def _blocks(block: Schema) -> Iterator[Schema]:
    """A schema and all schemas inside it."""
    yield block
    for word, inner in block.items():
        below = inner.values() if word in ("properties", "$defs") else inner if word in ("allOf", "oneOf") else [inner]
        if word in (
            "properties",
            "$defs",
            "allOf",
            "oneOf",
            "items",
            "additionalProperties",
            "propertyNames",
            "if",
            "then",
        ):
            for item in below:
                yield from _blocks(item) if isinstance(item, dict) else ()


@cache
def _referred(reference: str) -> Test:
    return _test(schema.resolve(reference))


def _test(block: Schema | bool) -> Test:
    """One function for a schema: true where each of its keywords is content."""
    if isinstance(block, bool):
        return lambda _: block
    tests = tuple(_one(word, limit, block) for word, limit in block.items() if word not in SILENT)
    if len(tests) == 1:
        return tests[0]
    return lambda value: all(test(value) for test in tests)


def _one(word: str, limit: Any, block: Schema) -> Test:
    made = _KEYWORDS.get(word)
    return made(limit, block) if made else _never


def _never(_: Data) -> bool:
    return False


def _type(types: str | list[str], block: Schema) -> Test:
    wanted = (types,) if isinstance(types, str) else tuple(types)
    if not set(wanted) <= {"string", "array", "object", "integer"}:
        return _never
    unknown, lines = bool(block.get("mayBeUnknown")), "string" not in wanted or bool(block.get("paragraphs"))
    classes = tuple(_CLASSES[name] for name in wanted if name in _CLASSES)
    integer = "integer" in wanted

    def test(value: Data) -> bool:
        if isinstance(value, classes) or (integer and schema.whole(value)) or (unknown and value == "unknown"):
            return lines or not isinstance(value, str) or "\n" not in value
        return False

    return test


_CLASSES: dict[str, type[Any]] = {"string": str, "array": list, "object": dict}


def _enum(known: list[str], _: Schema) -> Test:
    words = frozenset(known)
    return lambda value: isinstance(value, str) and value in words


def _const(known: str, _: Schema) -> Test:
    return lambda value: bool(value == known)


def _pattern(pattern: str, _: Schema) -> Test:
    search = re.compile(pattern).search
    return lambda value: not isinstance(value, str) or search(value) is not None


def _properties(fields: dict[str, Schema], _: Schema) -> Test:
    tests = {name: _test(block) for name, block in fields.items()}

    def test(value: Data) -> bool:
        return not isinstance(value, dict) or all(tests[key](inner) for key, inner in value.items() if key in tests)

    return test


def _additional(block: Schema | bool, around: Schema) -> Test:
    known, test_one = frozenset(around.get("properties", ())), _test(block)

    def test(value: Data) -> bool:
        return not isinstance(value, dict) or all(test_one(inner) for key, inner in value.items() if key not in known)

    return test


def _names(block: Schema, around: Schema) -> Test:
    test, own, says = _test(block), _referred(schema.OWN_ID), around.get("namedBy")
    if says is None:
        return lambda value: not isinstance(value, dict) or all(map(test, value))
    return lambda value: (
        not isinstance(value, dict)
        or all((own if schema.is_named_by(says, inner) else test)(name) for name, inner in value.items())
    )


def _items(block: Schema, _: Schema) -> Test:
    test = _test(block)
    return lambda value: not isinstance(value, list) or all(map(test, value))


def _required(names: list[str], _: Schema) -> Test:
    wanted = frozenset(names)
    return lambda value: not isinstance(value, dict) or wanted <= value.keys()


def _length(kind: type[Any], allowed: Callable[[int, int], bool]) -> Callable[[int, Schema], Test]:
    """A keyword about how long a text, list or mapping is."""
    return lambda limit, _: lambda value: not isinstance(value, kind) or allowed(len(value), limit)


def _all_of(branches: list[Schema], _: Schema) -> Test:
    tests = tuple(map(_test, branches))
    return lambda value: all(test(value) for test in tests)


def _one_of(branches: list[Schema], _: Schema) -> Test:
    tests = tuple(map(_test, branches))
    return lambda value: sum(test(value) for test in tests) == 1


def _if(condition: Schema, around: Schema) -> Test:
    field, wanted = schema.asked_by(condition)
    then = _test(around["then"])

    def test(value: Data) -> bool:
        return not isinstance(value, dict) or value.get(field) not in wanted or then(value)

    return test


def _reference(reference: str, _: Schema) -> Test:
    """Looked up at the first use, so that a schema may refer to itself."""
    return lambda value: _referred(reference)(value)


def _ours(refused: Callable[[Any, Data], object]) -> Callable[[Any, Schema], Test]:
    return lambda limit, _: lambda value: refused(limit, value) is None


_KEYWORDS: dict[str, Callable[[Any, Schema], Test]] = {
    "$ref": _reference,
    "type": _type,
    "enum": _enum,
    "const": _const,
    "pattern": _pattern,
    "properties": _properties,
    "additionalProperties": _additional,
    "propertyNames": _names,
    "items": _items,
    "required": _required,
    "minLength": lambda limit, _: lambda value: not isinstance(value, str) or len(value.strip()) >= limit,
    "maxLength": _length(str, int.__le__),
    "minItems": _length(list, int.__ge__),
    "maxItems": _length(list, int.__le__),
    "minProperties": _length(dict, int.__ge__),
    "maxProperties": _length(dict, int.__le__),
    "allOf": _all_of,
    "oneOf": _one_of,
    "if": _if,
    **{word: _ours(refused) for word, refused in values.REFUSED.items()},
}
