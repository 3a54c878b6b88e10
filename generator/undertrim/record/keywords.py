"""What the keywords of our schemas mean: those of our own, and the usual ones where scalars arrive as text."""

import datetime
from collections.abc import Callable, Iterator
from typing import Any

from jsonschema import Draft202012Validator
from jsonschema.exceptions import ValidationError

from undertrim.record import drives, schema, units
from undertrim.record.numerals import quoted
from undertrim.record.schema import Schema


class Refused(ValidationError):  # noqa: N818 - it names what happened
    """What a keyword of ours refuses: `text` says more than that it does, `hint` is the way out."""

    def __init__(self, text: str = "", hint: str = "", **where: Any) -> None:
        super().__init__(text, **where)
        self.text = text
        self.hint = hint


Errors = Iterator[ValidationError]


def _type(validator: Any, types: Any, instance: object, field: Schema) -> Errors:
    if instance == "unknown" and field.get("mayBeUnknown"):
        return
    yield from Draft202012Validator.VALIDATORS["type"](validator, types, instance, field)
    if "string" in types and isinstance(instance, str) and "\n" in instance and not field.get("paragraphs"):
        yield Refused(validator="lines")


def _all_of(validator: Any, branches: list[Schema], instance: object, block: Schema) -> Errors:
    for index, branch in enumerate(branches):
        for error in validator.descend(instance, branch, schema_path=index):
            error.block = block
            yield error


def _if(validator: Any, condition: Schema, instance: object, branch: Schema) -> Errors:
    """Our conditions only ask for one plain value, so they are answered without a second validation."""
    field, values = schema.asked_by(condition)
    if not isinstance(instance, dict) or instance.get(field) not in values:
        return
    for error in validator.descend(instance, branch["then"], schema_path="then"):
        error.condition = field, instance[field]
        yield error


def _quantity(_: Any, spec: Schema, instance: object, __: Schema) -> Errors:
    if not isinstance(instance, str) or instance in schema.blanks(spec):
        return
    try:
        units.parse(instance, spec["kind"])
    except units.UnitError as error:
        yield Refused(error.message, error.hint)


def _drive(_: Any, wanted: bool, instance: object, __: Schema) -> Errors:
    if not wanted or not isinstance(instance, str):
        return
    try:
        drives.parse(instance)
    except drives.DriveError as error:
        yield Refused(error.message, error.hint)


def _minimum(_: Any, limit: int, instance: object, __: Schema) -> Errors:
    if schema.whole(instance) and int(str(instance)) < limit:
        yield Refused(f"{quoted(str(instance))} is less than {limit}")


def _maximum(_: Any, limit: int, instance: object, __: Schema) -> Errors:
    if schema.whole(instance) and int(str(instance)) > limit:
        yield Refused(f"{quoted(str(instance))} is more than {limit}")


def _calendar(_: Any, wanted: bool, instance: object, __: Schema) -> Errors:
    try:
        if wanted and isinstance(instance, str):
            datetime.date.fromisoformat(instance)
    except ValueError:
        yield Refused()


def _unique(_: Any, wanted: bool, instance: object, __: Schema) -> Errors:
    """Names each entry that an earlier one repeats; only lists of words are looked at, ours hold no others."""
    seen: set[str] = set()
    for index, item in enumerate(instance) if wanted and isinstance(instance, list) else ():
        if isinstance(item, str):
            if item in seen:
                yield Refused(quoted(item), path=[index])
            seen.add(item)


KEYWORDS: dict[str, Callable[[Any, Any, Any, Schema], Errors]] = {
    "type": _type,
    "allOf": _all_of,
    "if": _if,
    "quantity": _quantity,
    "drive": _drive,
    "minimum": _minimum,
    "maximum": _maximum,
    "calendar": _calendar,
    "uniqueItems": _unique,
}
