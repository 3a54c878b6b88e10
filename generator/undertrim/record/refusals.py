"""Validates a record against its schema: every single thing that the schema refuses, with what it would have."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from undertrim.record import gate
from undertrim.record.fields import Node, root
from undertrim.record.schema import Schema
from undertrim.record.source import Data, Pointer
from undertrim.words import Message, Value, message

if TYPE_CHECKING:
    from jsonschema.exceptions import ValidationError


@dataclass(frozen=True, slots=True)
class Refusal:
    """`keyword` of the schema refuses the `value` at `pointer`; `limit` is what the keyword asks for.

    `kind` is the schema that refuses, `field` the same with what is said of this very field; `block` is the schema
    of the mapping whose fields it is about, `condition` the (field, value) in that mapping on which it depends. Where
    a key is refused, the key is the value and `pointer` leads to its mapping. `said` is set where a keyword of ours
    has more to say.
    """

    pointer: Pointer
    keyword: str
    limit: Any
    value: Any
    kind: Schema
    field: Schema
    block: Schema
    of_key: bool = False
    condition: tuple[str, str] | None = None
    said: Message | None = None

    @property
    def title(self) -> Value:
        """What the schema calls the kind of value, such as a month."""
        return _title(self.kind)

    @property
    def name(self) -> Value:
        """What the schema calls the field, such as the first month of build."""
        return _title(self.field)


def _title(known: Schema) -> Value:
    title: Value = known.get("title") or message("schema/value")
    return title


def refusals(data: Data, name: str) -> Iterator[Refusal]:
    """Everything in `data` that the schema called `name` refuses, in the order of the schema."""
    return iter(()) if gate.fits(data, name) else _each(data, name)


def _each(data: Data, name: str) -> Iterator[Refusal]:
    from undertrim.record import keywords  # slow to import, and a good record needs no sentence

    for error in keywords.validator(name).iter_errors(data):
        yield _refusal(error, root(name))


def _refusal(error: "ValidationError", whole: Node) -> Refusal:
    kind = error.schema if isinstance(error.schema, dict) else {}
    pointer = tuple(error.absolute_path)
    of_key = _of_key(error)
    return Refusal(
        pointer,
        str(error.validator),
        error.validator_value,
        error.instance,
        kind,
        kind if of_key else _field(whole, pointer, kind),
        getattr(error, "block", kind),
        of_key,
        getattr(error, "condition", None),
        getattr(error, "said", None),
    )


def _field(node: Node, pointer: Pointer, kind: Schema) -> Schema:
    """What is said of the field at `pointer`; `kind` where the schema describes only what may stand there."""
    for step in pointer:
        below = node.child(step)
        if below is None:
            return kind
        node = below
    return node.schema


def _of_key(error: "ValidationError") -> bool:
    for step in reversed(error.absolute_schema_path):
        if step in ("properties", "additionalProperties", "items"):
            return False
        if step == "propertyNames":
            return True
    return False
