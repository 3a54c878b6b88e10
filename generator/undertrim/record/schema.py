"""The JSON Schemas of the records, read and resolved. Beside the usual keywords they hold some of ours.

`quantity` (a value typed with its unit), `drive` (what turns a fastener), `calendar` (a day that exists), `paragraphs`
(text of several lines), `mayBeUnknown` and `order` (it says what waits for what, and in which cars; so does what is inside it
until it says otherwise) stand in the schema beside the field they describe. So do the words for what may be said once
(`shapes.py` lists them), which refuse nothing, and `namedBy`: the things of a mapping may have an id of the record's own where they
say by that field what they are about. Scalars arrive as text; a field of type integer accepts text that is a whole
number, in quotes or not.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim import resources
from undertrim.words import Language

NAMES = ("common", "vehicle", "gear", "claim")
OWN_ID = "urn:undertrim:common#/$defs/id"
"""What an id of the record's own may be."""
PREFIX = "urn:undertrim:"
_WHOLE = re.compile(r"-?(0|[1-9][0-9]{0,17})")

Schema = dict[str, Any]

MOST_ENTRIES = 300
"""So many entries a list or mapping may have for which the schema names no limit; the largest car has not half of it."""


def is_named_by(says: str, thing: object) -> bool:
    """Whether a thing says by a field what it is about (`namedBy`), so that it may have an id of the record's own."""
    return isinstance(thing, dict) and says in thing


@dataclass(frozen=True, slots=True)
class SchemaText:
    """A title, description or hint: where it stands in its schema, by which translators know it, and its English."""

    place: str
    english: str

    def say(self, speech: Language) -> str:
        """In words of a language."""
        return speech.text(self.place, self.english)

    @property
    def first(self) -> "FirstSentence":
        """Its first sentence alone."""
        return FirstSentence(self)


@dataclass(frozen=True, slots=True)
class FirstSentence:
    """The first sentence of a description, without its full stop."""

    of: SchemaText

    def say(self, speech: Language) -> str:
        """In words of a language."""
        return self.of.say(speech).split(". ")[0].rstrip(".")


WORDS = ("title", "description", "hint")
"""Keywords of a schema that hold words for people; once loaded, each is a `SchemaText`."""


@cache
def load(name: str) -> Schema:
    """One schema by its short name: common, vehicle or gear. Its references are made absolute, so `resolve` takes each."""
    path = resources.top("schema") / f"{name}.schema.json"
    text = path.read_text(encoding="utf-8")
    schema: Schema = json.loads(text.replace('"$ref": "#/', f'"$ref": "{PREFIX}{name}#/'))
    if name in _BY_KIND:
        _lay_in(schema["$defs"][_BY_KIND[name]], [part[_BY_KIND[name]] for part in parts() if _BY_KIND[name] in part])
    _bound(schema)
    _give_words(f"schema/{name}", schema)
    return schema


_BY_KIND = {"vehicle": "opening", "gear": "gear"}
"""The block of a schema whose fields depend on the kind."""


def parts() -> list[Schema]:
    """What each kind adds to the schemas, in the order of their names."""
    return [
        json.loads(path.read_text(encoding="utf-8")) for path in sorted(resources.top("schema").glob("kinds/*.json"))
    ]


def _lay_in(block: Schema, parts: list[Schema]) -> None:
    """Give a block the kinds and their fields, right behind the last field that all must have."""
    kinds = {kind: said for part in parts for kind, said in part["kinds"].items()}
    own = {name: spec for part in parts for name, spec in part["properties"].items()}
    special = {name for said in kinds.values() for name in said["fields"]}
    stated = list(block["properties"].items())
    place = next(i for i, (name, _) in enumerate(stated, 1) if name == block["required"][-1])
    block["properties"] = {**dict(stated[:place]), **own, **dict(stated[place:])}
    block["properties"]["kind"]["enum"] = list(kinds)
    before, after = ([name for name, _ in some if name not in special] for some in (stated[:place], stated[place:]))
    block["allOf"] = [
        {
            "if": {"properties": {"kind": {"const": kind}}, "required": ["kind"]},
            "then": {"required": said["required"], "propertyNames": {"enum": [*before, *said["fields"], *after]}},
        }
        for kind, said in kinds.items()
    ]


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


def _give_words(place: str, block: Schema) -> None:
    """Make a text that knows its place of every word for people."""
    for word in WORDS:
        if word in block:
            block[word] = SchemaText(f"{place}/{word}", block[word])
    for way, inner in _below(block):
        _give_words(f"{place}/{way}", inner)


def _below(block: Schema) -> Iterator[tuple[str, Schema]]:
    """The schemas right inside one, with the way to each."""
    for word in ("properties", "together", "$defs"):
        yield from ((f"{word}/{name}", inner) for name, inner in block.get(word, {}).items())
    for word in ("items", "additionalProperties", "propertyNames", "then"):
        if isinstance(block.get(word), dict):
            yield word, block[word]
    for word in ("allOf", "oneOf"):
        yield from ((f"{word}/{number}", inner) for number, inner in enumerate(block.get(word, ())))


def texts(name: str) -> Iterator[SchemaText]:
    """All words for people in one schema."""
    yield from _texts(load(name))


def _texts(block: Schema) -> Iterator[SchemaText]:
    yield from (block[word] for word in WORDS if word in block)
    for _, inner in _below(block):
        yield from _texts(inner)


def reference(name: str) -> str:
    """What refers to a schema by its short name; `vehicle/group` is a block that is defined in one."""
    document, _, block = name.partition("/")
    return f"{PREFIX}{document}#/$defs/{block}" if block else f"{PREFIX}{document}"


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
