"""What the page of questions gets: every word that may be chosen has a name, bounds let nothing pass that a record refuses, and the questions are those of the list."""

import pytest

from publishing import of, shipped
from undertrim.derive.claims.values import allowed
from undertrim.derive.questions import AnswerForm, questions
from undertrim.publish.facts import asked
from undertrim.record import schema
from undertrim.record.model import VehicleRecord
from undertrim.words.catalogue import english

RECORDS = {entry.id: entry for entry in shipped()}


def _choosable(block: schema.Schema) -> set[str]:
    """The words of every field that may be unknown, and so may be asked for."""
    known = {**(schema.resolve(block["$ref"]) if "$ref" in block else {}), **block}
    words = set(known["enum"]) - {"unknown"} if "unknown" in known.get("enum", ()) else set()
    inner = [*known.get("properties", {}).values(), known.get("items"), known.get("additionalProperties")]
    return words.union(*(_choosable(one) for one in inner if isinstance(one, dict)))


def test_every_word_that_may_be_chosen_has_a_name() -> None:
    words = _choosable(schema.load("vehicle"))
    assert len(words) > 50
    assert words - english("answers").keys() == set()


def test_no_name_is_left_over() -> None:
    fields = [field for kind in ("vehicle", "common") for field in _enums(schema.load(kind))]
    words = {word for field in fields for word in field}
    assert {name for name in english("answers") if name not in words} == {"kept-by-none"}


def _enums(block: object) -> list[list[str]]:
    if isinstance(block, list):
        return [found for one in block for found in _enums(one)]
    if not isinstance(block, dict):
        return []
    own = [block["enum"]] if isinstance(block.get("enum"), list) else []
    return [*own, *(found for one in block.values() for found in _enums(one))]


@pytest.mark.parametrize("name", RECORDS)
def test_the_page_asks_what_the_list_asks(name: str) -> None:
    entry = RECORDS[name]
    assert isinstance(entry.record, VehicleRecord)
    every = questions(entry.record, entry.source)
    made = of(entry)["asked"]
    assert len(made["questions"]) + len(made["for_a_person"]) == len(every)
    told = {field["about"] for one in made["questions"] for field in one["fields"]}
    must = {field.about for one in every for field in one.fields if not field.only_if}
    assert must <= told


@pytest.mark.parametrize(
    ("least", "most", "unit", "wanted"),
    [
        ("20 mm", "500 mm", "in", (0.7875, 19.68)),  # 20 / 25.4 = 0.78740..., 500 / 25.4 = 19.685...
        ("20 mm", "500 mm", "mm", (20, 500)),
        ("0.2 N.m", "250 N.m", "lbf.ft", (0.1476, 184.3)),  # 0.2 / 1.3558179 = 0.14751..., 250 / 1.3558179 = 184.39...
    ],
)
def test_bounds_in_another_unit_let_nothing_pass_that_a_record_refuses(
    least: str, most: str, unit: str, wanted: tuple[float, float]
) -> None:
    kind = "length" if "mm" in least else "torque"
    form = AnswerForm("quantity", kind, ("mm", "in") if kind == "length" else ("N.m", "lbf.ft"), least, most)
    found = {one.name: (one.least, one.most) for one in asked._units(form)}
    assert found[unit] == wanted


@pytest.mark.parametrize("value", ["0.7875 in", "19.68 in"])
def test_a_value_at_a_bound_is_one_that_a_record_takes(value: str) -> None:
    assert allowed(("openings", "front-door", "depth", "clear"), value) == value
