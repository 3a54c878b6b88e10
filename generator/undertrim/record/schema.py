"""The JSON Schemas of the records, and a validator that knows our three extra keywords.

`quantity` (a value typed with its unit), `drive` (what turns a fastener) and `mayBeUnknown` stand in the schema beside the
field they describe. Scalars arrive as text; a field of type integer accepts text that is a whole number.
"""

import json
import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator
from jsonschema.exceptions import ValidationError
from jsonschema.protocols import Validator
from jsonschema.validators import extend
from referencing import Registry, Resource
from referencing.jsonschema import DRAFT202012

from undertrim import resources
from undertrim.record import drives, units

NAMES = ("common", "vehicle", "gear")
_WHOLE = re.compile(r"-?(0|[1-9][0-9]*)")

Schema = dict[str, Any]
Errors = Iterator[ValidationError]


@cache
def load(name: str) -> Schema:
    """One schema by its short name: common, vehicle or gear. Its references are made absolute, so `resolve` takes each."""
    path = resources.top("schema") / f"{name}.schema.json"
    text = path.read_text(encoding="utf-8")
    schema: Schema = json.loads(text.replace('"$ref": "#/', f'"$ref": "urn:undertrim:{name}#/'))
    return schema


@cache
def registry() -> Registry[Schema]:
    """All our schemas by their local ids; nothing is fetched."""
    pairs = [(load(name)["$id"], Resource(load(name), DRAFT202012)) for name in NAMES]
    empty: Registry[Schema] = Registry()
    return empty.with_resources(pairs)


@cache
def validator(name: str) -> Validator:
    """A validator for one kind of record."""
    made: Validator = _class()(load(name), registry=registry())
    return made


@cache
def resolve(reference: str) -> Schema:
    """The schema that a reference such as `urn:undertrim:common#/$defs/id` names."""
    contents: Schema = registry().resolver().lookup(reference).contents
    return contents


def whole(text: object) -> bool:
    """Whether a scalar, as typed, is a whole number."""
    return isinstance(text, str) and _WHOLE.fullmatch(text) is not None


@cache
def _class() -> Any:
    checker = Draft202012Validator.TYPE_CHECKER.redefine("integer", lambda _, value: whole(value))
    return extend(
        Draft202012Validator,
        {
            "type": _type,
            "quantity": _quantity,
            "drive": _drive,
            "minimum": _minimum,
            "maximum": _maximum,
            "if": _if,
        },
        type_checker=checker,
    )


def _type(validator: Any, types: Any, instance: object, schema: Schema) -> Errors:
    if instance == "unknown" and schema.get("mayBeUnknown"):
        return
    yield from Draft202012Validator.VALIDATORS["type"](validator, types, instance, schema)


def _if(validator: Any, condition: Schema, instance: object, schema: Schema) -> Errors:
    """Our conditions only ask for one plain value, so they are answered without a second validation."""
    [(field, wanted)] = condition["properties"].items()
    values = wanted["enum"] if "enum" in wanted else [wanted["const"]]
    if isinstance(instance, dict) and instance.get(field) in values:
        yield from validator.descend(instance, schema["then"], schema_path="then")


def _quantity(_: Any, spec: Schema, instance: object, __: Schema) -> Errors:
    if not isinstance(instance, str) or instance in blanks(spec):
        return
    try:
        units.parse(instance, spec["kind"])
    except units.UnitError as error:
        yield _error(error.message, error.hint)


def blanks(spec: Schema) -> tuple[str, ...]:
    """The words that may stand instead of a quantity: `unknown`, `none`, both or neither."""
    return tuple(word for word in ("unknown", "none") if spec.get(word))


def _drive(_: Any, wanted: bool, instance: object, __: Schema) -> Errors:
    if not wanted or not isinstance(instance, str):
        return
    try:
        drives.parse(instance)
    except drives.DriveError as error:
        yield _error(error.message, error.hint)


def _minimum(_: Any, limit: int, instance: object, __: Schema) -> Errors:
    if whole(instance) and int(str(instance)) < limit:
        yield ValidationError(f"'{instance}' is less than {limit}")


def _maximum(_: Any, limit: int, instance: object, __: Schema) -> Errors:
    if whole(instance) and int(str(instance)) > limit:
        yield ValidationError(f"'{instance}' is more than {limit}")


def _error(message: str, hint: str) -> ValidationError:
    error = ValidationError(message)
    error.hint = hint  # type: ignore[attr-defined]
    return error
