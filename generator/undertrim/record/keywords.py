"""What the keywords of our schemas mean to the validator: those of our own, and the usual ones where scalars arrive as text."""

from collections.abc import Callable, Iterator
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator
from jsonschema.exceptions import ValidationError
from jsonschema.protocols import Validator
from jsonschema.validators import extend
from referencing import Registry
from referencing.jsonschema import DRAFT202012

from undertrim.record import schema, values
from undertrim.record.numerals import quoted
from undertrim.record.schema import Schema
from undertrim.words import Message


class Refused(ValidationError):  # noqa: N818 - it names what happened
    """What a keyword of ours refuses; `said` where there is more to say than that it does."""

    def __init__(self, said: Message | None = None, **where: Any) -> None:
        super().__init__("", **where)
        self.said = said


Errors = Iterator[ValidationError]
Keyword = Callable[[Any, Any, Any, Schema], Errors]


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
    field, wanted = schema.asked_by(condition)
    if not isinstance(instance, dict) or instance.get(field) not in wanted:
        return
    for error in validator.descend(instance, branch["then"], schema_path="then"):
        error.condition = field, instance[field]
        yield error


def _property_names(validator: Any, names: Schema, instance: object, block: Schema) -> Errors:
    """What says by a field what it is about may have an id of the record's own."""
    says = block.get("namedBy")
    for name, thing in instance.items() if isinstance(instance, dict) else ():
        own = says is not None and schema.is_named_by(says, thing)
        yield from validator.descend(name, {"$ref": schema.OWN_ID} if own else names)


def _of_value(refused: Callable[[Any, Any], values.Said | None]) -> Keyword:
    """The keyword that refuses a single value."""

    def keyword(_: Any, limit: Any, instance: object, __: Schema) -> Errors:
        said = refused(limit, instance)
        if said is not None:
            yield Refused(*said)

    return keyword


def _unique(_: Any, wanted: bool, instance: object, __: Schema) -> Errors:
    """Names each entry that an earlier one repeats."""
    for index, item in values.repeats(instance) if wanted else ():
        yield Refused(quoted(item), path=[index])


def _min_length(validator: Any, limit: int, instance: object, field: Schema) -> Errors:
    """Spaces alone are no text."""
    said = instance.strip() if isinstance(instance, str) else instance
    yield from Draft202012Validator.VALIDATORS["minLength"](validator, limit, said, field)


KEYWORDS: dict[str, Keyword] = {
    **{word: _of_value(refused) for word, refused in values.REFUSED.items()},
    "type": _type,
    "allOf": _all_of,
    "if": _if,
    "minLength": _min_length,
    "propertyNames": _property_names,
    "uniqueItems": _unique,
}


@cache
def validator(name: str) -> Validator:
    """The validator for the schema called `name`; whole numbers are text, and nothing is fetched."""
    resources = [(f"{schema.PREFIX}{each}", DRAFT202012.create_resource(schema.load(each))) for each in schema.NAMES]
    registry: Registry[Schema] = Registry().with_resources(resources)
    checker = Draft202012Validator.TYPE_CHECKER.redefine("integer", lambda _, value: schema.whole(value))
    made = extend(Draft202012Validator, KEYWORDS, type_checker=checker)  # type: ignore[no-untyped-call]
    ready: Validator = made(schema.resolve(schema.reference(name)), registry=registry)
    return ready
