"""The JSON Schemas of the records, read and resolved. Beside the usual keywords they hold some of ours.

`quantity` (a value typed with its unit), `drive` (what turns a fastener), `calendar` (a day that exists), `paragraphs`
(text of several lines), `mayBeUnknown` and `order` (it says what waits for what, and in which cars; so does what is inside it
until it says otherwise) stand in the schema beside the field they describe. Scalars arrive as text;
a field of type integer accepts text that is a whole number, in quotes or not.
"""

import json
import re
from functools import cache
from typing import Any

from undertrim import resources

NAMES = ("common", "vehicle", "gear")
PREFIX = "urn:undertrim:"
_WHOLE = re.compile(r"-?(0|[1-9][0-9]{0,17})")

Schema = dict[str, Any]

MOST_ENTRIES = 300
"""So many entries a list or mapping may have for which the schema names no limit; the largest car has not half of it."""


@cache
def load(name: str) -> Schema:
    """One schema by its short name: common, vehicle or gear. Its references are made absolute, so `resolve` takes each."""
    path = resources.top("schema") / f"{name}.schema.json"
    text = path.read_text(encoding="utf-8")
    schema: Schema = json.loads(text.replace('"$ref": "#/', f'"$ref": "{PREFIX}{name}#/'))
    _bound(schema)
    return schema


def _bound(block: Schema) -> None:
    """Give every list, and every mapping with names of its own, the usual limit where the schema names none."""
    types = block.get("type", ())
    if "array" in types:
        block.setdefault("maxItems", MOST_ENTRIES)
    if "object" in types and isinstance(block.get("additionalProperties"), dict):
        block.setdefault("maxProperties", MOST_ENTRIES)
    for word in ("properties", "$defs"):
        for inner in block.get(word, {}).values():
            _bound(inner)
    for word in ("items", "additionalProperties", "then"):
        if isinstance(block.get(word), dict):
            _bound(block[word])
    for inner in (*block.get("allOf", ()), *block.get("oneOf", ())):
        _bound(inner)


@cache
def resolve(reference: str) -> Schema:
    """The schema that a reference such as `urn:undertrim:common#/$defs/id` names."""
    document, _, steps = reference.partition("#")
    found = load(document.removeprefix(PREFIX))
    for step in steps.split("/")[1:]:
        found = found[step]
    return found


def whole(text: object) -> bool:
    """Whether a scalar, as typed, is a whole number."""
    return isinstance(text, str) and _WHOLE.fullmatch(text) is not None


def blanks(spec: Schema) -> tuple[str, ...]:
    """The words that may stand instead of a quantity: `unknown`, `none`, both or neither."""
    return tuple(word for word in ("unknown", "none") if spec.get(word))


def asked_by(condition: Schema) -> tuple[str, list[str]]:
    """The field that an `if` of ours asks about, and the values that meet it."""
    [(field, wanted)] = condition["properties"].items()
    return field, wanted["enum"] if "enum" in wanted else [wanted["const"]]
