"""Everything that the site publishes as data is described in `schema/published.schema.json`, and all that stands there is published."""

# Long because it is one walk through the schema and everything published, from both ends.

import importlib
import json
import pkgutil
import re
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Annotated, Any, get_args, get_origin

import jsonschema_rs
import pytest
from jsonschema import Draft202012Validator

from disputing import disputing
from publishing import BESIDE, ROOT, Found, exemplified, finders, published, shelf, shelves
from undertrim import publish
from undertrim.derive import conflict_texts
from undertrim.derive.evidence.standing import Word
from undertrim.derive.fit.duties import Fate
from undertrim.derive.fit.stock import Stock
from undertrim.derive.procedure import tally
from undertrim.derive.procedure.steps import SECTIONS
from undertrim.derive.wiring.row import State
from undertrim.publish import described
from undertrim.publish.encoding import compact, said
from undertrim.publish.facts import asked, whose
from undertrim.publish.facts import shelf as shelf_facts
from undertrim.publish.facts.shown_vehicle import Part
from undertrim.publish.facts.vehicle import FORMAT
from undertrim.publish.web import finder
from undertrim.record.model import VehicleRecord
from undertrim.record.whose import Whose

Schema = dict[str, Any]
SCHEMA: Schema = described.schema()
DEFINED: dict[str, Schema] = SCHEMA["$defs"]


FILE: Schema = json.loads(described.text())
"""The description that stands in the site."""


def whole(name: str) -> Schema:
    """The description that some data is held against."""
    return FILE if name == BESIDE else {**SCHEMA, "$ref": f"#/$defs/{name}"}


@cache
def quick(name: str) -> jsonschema_rs.Validator:
    """Says whether anything is wrong, in a hundredth of the time; the other one says what."""
    return jsonschema_rs.Draft202012Validator(whole(name))


@cache
def validator(name: str) -> Draft202012Validator:
    return Draft202012Validator(whole(name))


def problems(found: Found) -> list[str]:
    name, where, data = found
    if quick(name).is_valid(data):
        return []
    return [f"{where}: {error.json_path}: {error.message}" for error in validator(name).iter_errors(data)] or [where]


@pytest.fixture(scope="module")
def everything() -> list[Found]:
    """What the shipped records publish, also with finder and shelf in pieces, and what the examples of the rules would."""
    whole = list(published())
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(finder, "MOST_IN_ONE", 2)
        patch.setattr(shelf_facts, "MOST_IN_ONE", 1000)
        pieces = [*finders(), *shelves(without_one())]
    return [*whole, *pieces, *exemplified(), touched(), added_to(whole)]


def touched() -> Found:
    """What is asked of a car of whose record a contact and the colour of a wire are in dispute."""
    entry = disputing(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml", ["ladders/wheel/pin", "connectors/radio-main/pins/7/colour"])  # fmt: skip
    assert isinstance(entry.record, VehicleRecord)
    return "asked", "a disputed contact", json.loads(compact(asked.asked(entry.record, entry.source, entry.address)))


def added_to(whole: list[Found]) -> Found:
    """A shared vehicle to which a shop added something."""
    made = whose.shown(Whose("County", evidence=frozenset({"e9"}), note="Key in drawer 4."))
    facts = next(data for name, _, data in whole if name == "vehicle")
    return "vehicle", "an addition", {**facts, "whose": json.loads(compact(said(made)))}


def without_one() -> Stock:
    """The shipped stock, of which one record is not offered."""
    return Stock(shelf().items[1:], (f"{shelf().items[0].facts.folder()}/{shelf().items[0].id}",))


def test_the_schema_is_one_and_describes_what_stands_beside_a_page() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$ref"] == "#/$defs/vehicle"


def test_everything_published_is_as_described(everything: list[Found]) -> None:
    assert [problem for found in everything for problem in problems(found)] == []
    assert {name for name, _, _ in everything} == {"vehicle", BESIDE, *SCRIPT_DATA}


SCRIPT_DATA = ("choosing", "claimable", "page", "forms", "finder", "finder-more", "places", "places-slice", "shelf", "shelf-piece", "stock-visit", "stock-wiring", "meter-table", "meter-plug", "calculators", "asked", "new-car")  # fmt: skip


def test_a_new_fact_fails_until_it_is_described(everything: list[Found]) -> None:
    made = deepcopy(everything[0][2])
    made["steps"][0]["mood"] = "good"
    del made["openings"][0]["name"]
    said = problems(("vehicle", "here", made))
    assert [line.split(": ", 2)[1] for line in said] == ["$.openings[0]", "$.steps[0]"]


def test_the_version_is_that_of_the_schema() -> None:
    assert DEFINED["vehicle"]["properties"]["format"]["const"] == FORMAT


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("section-id", SECTIONS),
        ("standing/word", list(Word)),
        ("conflict/state", conflict_texts.CONFLICTS),
        ("duty/fate", list(Fate)),
        ("stock-row/state", list(State)),
        ("page-line/fate", [*tally.FATES, "leave"]),
    ],
)
def test_words_of_the_schema_are_those_of_the_program(place: str, words: list[str]) -> None:
    name, _, key = place.partition("/")
    described = DEFINED[name]["properties"][key] if key else DEFINED[name]
    assert described["enum"] == list(words)


def test_a_typed_fact_has_the_fields_of_its_description() -> None:
    """By its name: a class `MissingCell` is described as `missing-cell`, and so is `ShownMissingCell`, which shows one of derive."""
    found = {kind: re.sub(r"(?<=[a-z])(?=[A-Z])", "-", kind.__name__.removeprefix("Shown")).lower() for kind in typed()}
    described = {kind: name for kind, name in found.items() if name in DEFINED}
    assert len(described) > 60
    assert {kind for kind in described if keys(kind) != list(DEFINED[described[kind]]["properties"])} == set()
    spread = {of for kind in found for _, of in spreading(kind)}
    answers = {kind for kind in found if kind.__module__.rpartition(".")[2] in ANSWERS}
    assert found.keys() - described.keys() - spread - answers == set(get_args(Part))
    assert sorted(key for part in get_args(Part) for key in keys(part)) == sorted(DEFINED["vehicle"]["properties"])


ANSWERS = (
    "account",
    "car_wiring",
    "coverage",
    "fit",
    "gear_page",
    "joints",
    "mirror",
    "shown_joints",
    "shown_review",
    "shown_visit",
    "spans",
    "true_size",
)
"""The modules whose facts only commands answer with, or are what page and sheet make of others; they stand beside no page."""


def keys(kind: type[Any]) -> list[str]:
    """What a fact says, with the keys of what is spread in it."""
    inside = dict(spreading(kind))
    return [key for field in fields(kind) for key in (keys(inside[field.name]) if field.name in inside else [field.name.rstrip("_")])]  # fmt: skip


def spreading(kind: type[Any]) -> Iterator[tuple[str, type[Any]]]:
    """The fields that are spread, each with the class of its fact."""
    return ((field.name, get_args(field.type)[0]) for field in fields(kind) if get_origin(field.type) is Annotated)


def typed() -> Iterator[type[Any]]:
    """The classes of facts."""
    for found in pkgutil.iter_modules(publish.facts.__path__, "undertrim.publish.facts."):
        module = importlib.import_module(found.name)
        yield from (item for item in vars(module).values() if is_dataclass(item) and isinstance(item, type) and item.__module__ == found.name and not hasattr(item, "say"))  # fmt: skip


def blocks(place: str, schema: Any) -> Iterator[tuple[str, Schema]]:
    """A schema and all inside it, each with its place."""
    yield place, schema
    for key, inner in schema.get("properties", {}).items():
        yield from blocks(f"{place}/{key}", inner)
    for key in ("items", "additionalProperties"):
        if isinstance(schema.get(key), dict):
            yield from blocks(f"{place}/*", schema[key])
    for number, inner in enumerate((*schema.get("anyOf", ()), *schema.get("prefixItems", ()))):
        yield from blocks(f"{place}/{number}", inner)


BLOCKS = [pair for name, schema in DEFINED.items() for pair in blocks(name, schema)]


def test_every_fact_has_a_title_and_says_what_it_is() -> None:
    for name, schema in DEFINED.items():
        for place, field in {name: schema, **schema.get("properties", {})}.items():
            told = {**DEFINED.get(field.get("$ref", "").rpartition("/")[2], {}), **field}
            assert told.get("title", "")[:1].strip("1234567890"[:3]), (name, place)
            assert told.get("description", "").endswith("."), (name, place)


def test_nothing_is_left_open() -> None:
    for place, schema in BLOCKS:
        if "properties" in schema:
            assert schema["additionalProperties"] is False, place
        assert schema.keys() & {"$ref", "anyOf", "enum", "const", "type"}, place
        assert schema.get("type") != "array" or schema.get("items") is not None, place


NOT_MET = {
    *("own-words", "own-words/lang", "own-words/text"),  # a record in another language than the page
    # gear in a drawing: what is published draws the opening alone, the sheet of a visit draws its gear too
    *(
        "cut/more/*",
        "dash/more/*",
        "front/more/*",
        "rings/more/*",
        "drawn-margin",
        "drawn-margin/text",
        "drawn-margin/verdict",
    ),
    *(
        "drawn-speaker",
        *(f"drawn-speaker/{part}" for part in ("basket", "depth", "flange", "magnet", "name", "protrusion")),
    ),
    "form/closed/*",  # an opening inside the high-voltage system of some cars alone
    *(
        "standing/parts/*",
        "verified-part",
        *(
            f"verified-part/{part}"
            for part in ("id", "word", "of", "of/*", "side", "on", "by", "car", "text", "edited", "edited/*")
        ),
    ),  # a part verified by itself
    "page-count/unrecorded",  # fasteners that nobody has counted: what is 0 is left out there
    "harness-sizes/keeps/*",  # a harness that keeps a duty by itself
}
"""What no shipped record and no example brings up, by place: a record of that sort would be a poor one to ship."""


def test_everything_described_is_published(everything: list[Found]) -> None:
    met: set[int] = set()
    for name, _, data in everything:
        if name != BESIDE:
            _meet(DEFINED[name], data, met)
    assert {place for place, schema in BLOCKS if id(schema) not in met and not place[-1].isdigit()} == NOT_MET


def _meet(schema: Schema, data: Any, met: set[int]) -> None:
    """Note all that describes some of the data."""
    met.add(id(schema))
    if "$ref" in schema:
        return _meet(DEFINED[schema["$ref"].rpartition("/")[2]], data, met)
    if "anyOf" in schema:
        for inner in schema["anyOf"]:
            if _like(inner, data):
                _meet(inner, data, met)
    elif isinstance(data, dict):
        for key, value in data.items():
            _meet(schema.get("properties", {}).get(key) or schema["additionalProperties"], value, met)
    elif isinstance(data, list):
        for number, value in enumerate(data):
            _meet(schema["prefixItems"][number] if "prefixItems" in schema else schema["items"], value, met)
    return None


def _like(schema: Schema, data: Any) -> bool:
    """Whether a piece of data is meant by one of several descriptions."""
    known = DEFINED[schema["$ref"].rpartition("/")[2]] if "$ref" in schema else schema
    if "anyOf" in known:
        return any(_like(inner, data) for inner in known["anyOf"])
    if "enum" in known:
        return data in known["enum"]
    if "properties" in known:
        return isinstance(data, dict) and set(known["required"]) <= data.keys() <= known["properties"].keys()
    return Draft202012Validator({"type": known["type"]}).is_valid(data)
