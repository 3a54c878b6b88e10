"""Messages are kept as plain data and come back the same, with what knows its own words; nothing else can be made of such data."""

import json
import sys
from collections.abc import Iterator
from pathlib import Path

import marked
import pytest
from rule_pages import examples, load

from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.register import GEAR_RULES, RECORD_RULES
from undertrim.record import colours, schema, units
from undertrim.record.model import Month
from undertrim.record.store import Workspace
from undertrim.words import Items, Language, WayOut, all_of, message, say, speaking, values, word

COMMA = Language("xx", decimal_mark=",", group_mark=" ")
NESTED = message(
    "schema/fault",
    said=message("yaml/long-text", size=12345),
    hint=Items((word("units", "length", "name"), 1.5, 3, True, WayOut(message("yaml/tab")), Month(2014, 3)), "comma"),
)
SAYABLE = (
    NESTED, units.parse("2 3/16 in", "length"), colours.parse("red/white"), schema.load("vehicle")["title"], schema.load("vehicle")["title"].first, "x",
)  # fmt: skip


@pytest.mark.parametrize("value", SAYABLE)
def test_a_value_comes_back_as_it_was(value: object) -> None:
    assert values.thawed(json.loads(json.dumps(values.frozen(value)))) == value


@pytest.mark.parametrize("value", [object(), {"a": 1}, Path("x"), [1], b"x", message])
def test_what_is_no_value_is_not_kept(value: object) -> None:
    with pytest.raises(TypeError):
        values.frozen(value)


@pytest.mark.parametrize(
    "plain",
    [
        {"os:system": ["true"]}, {"builtins:eval": ["1"]}, {"undertrim.resources:top": ["x"]}, {"undertrim.record.problem:Problem": []},
        {"undertrim.no_such:X": []}, {"undertrim.words.message:message": ["x"]}, {"undertrimmed.words:Message": []}, {"a": 1, "b": 2}, {"": []},
        {"undertrim.words.message:Message": []}, {"undertrim.words.message:Message": [1, 2, 3]}, {"undertrim.words.error:SaidError": ["x"]},
    ],
)  # fmt: skip
def test_nothing_else_is_made_of_data_that_somebody_changed(plain: object) -> None:
    with pytest.raises((TypeError, ValueError, AttributeError, ImportError)):
        values.thawed(plain)


def test_no_module_but_ours_is_even_loaded() -> None:
    assert "this" not in sys.modules
    with pytest.raises(ValueError, match="'this:s' is none of ours"):
        values.thawed({"this:s": []})
    assert "this" not in sys.modules


@pytest.mark.parametrize("name", sorted(RECORD_RULES.keys() | GEAR_RULES.keys()))
def test_every_finding_can_be_kept(name: str) -> None:
    rule = RECORD_RULES.get(name) or GEAR_RULES[name]
    for example in examples(rule.__doc__ or "", "Bad"):
        for file, text in example.files.items():
            for found in runner.check_entry(load(file, text)):
                assert values.thawed(json.loads(json.dumps(values.frozen(found.said)))) == found.said


def test_what_is_remembered_is_said_in_the_language_of_who_asks(tmp_path: Path) -> None:
    home = tmp_path / "records" / "vehicles" / "brindleway"
    home.mkdir(parents=True)
    (home / "otter-2014-2018.yaml").write_text("format: 1\n", encoding="utf-8")
    place = Workspace(tmp_path)
    first, again = (runner.check(place, (), None, Cache(place)).problems for _ in range(2))
    assert any((tmp_path / ".undertrim" / "cache" / "check").iterdir())
    assert first == again
    assert again[0].message == "'openings' is missing from the record"
    with speaking(marked.language()):
        assert again[0].message == f"'openings' {marked.letters('is missing from')} {marked.letters('the record')}"


def test_a_quantity_has_the_decimal_mark_of_the_language() -> None:
    said = {
        text: say(units.parse(text, kind), COMMA)
        for text, kind in (
            ("6.5 mm", "length"),
            ("2 3/16 in", "length"),
            ("10.5 N.m", "torque"),
            ("90 s", "time"),
            ("5", "count"),
        )
    }
    assert said == {
        "6.5 mm": "6,5 mm (0,256 in)",
        "2 3/16 in": "2 3/16 in (55,6 mm)",
        "10.5 N.m": "10,5 N·m (92,9 lbf·in)",
        "90 s": "1 min 30 s",
        "5": "5",
    }
    with speaking(COMMA):
        assert units.show(units.parse("6.5 mm", "length")) == "6,5 mm (0,256 in)"
    assert units.show(units.parse("6.5 mm", "length")) == "6.5 mm (0.256 in)"


def test_a_large_number_is_grouped_and_a_whole_one_has_all_its_digits() -> None:
    assert say(message("yaml/long-text", size=1234567)) == "a text of 1,234,567 characters begins here"
    assert say(message("yaml/long-text", size=1234567), COMMA) == "a text of 1 234 567 characters begins here"
    assert say(1234567) == "1234567"
    assert say(1234.5678) == "1234.57"


def test_a_title_goes_on_in_a_small_letter_and_keeps_the_rest() -> None:
    said = message("schema/empty", name=schema.SchemaText("schema/x/title", "Speaker DIN hole"), hint="")
    assert say(said) == "speaker DIN hole is empty"


def test_a_wires_colour_is_said_in_the_language_of_who_asks() -> None:
    wire = colours.parse("white/brown/black")
    assert wire.words == say(wire) == "white with brown and black tracers"
    assert say(colours.parse("red-white")) == "red with white tracer"
    with speaking(marked.language()):
        assert say(all_of(wire)) == marked.letters("white with brown and black tracers")


def test_every_word_of_the_schemas_reaches_the_translators() -> None:
    known = set(marked.language().texts)
    for name in schema.NAMES:
        found = {(text.place, text.english) for text in schema.texts(name)}
        assert len(found) > 10
        assert found <= known
        assert list(_still_plain(schema.load(name))) == []
    kinds = {text.place for text in schema.texts("vehicle") if "/opening/" in text.place}
    assert any(place.endswith("/face/title") for place in kinds)  # a field that only one kind has


def _still_plain(node: object) -> Iterator[str]:
    """Words of a schema that know no place."""
    if isinstance(node, dict):
        yield from (str(node[word]) for word in schema.WORDS if isinstance(node.get(word), str))
    inner = node.values() if isinstance(node, dict) else node if isinstance(node, list) else ()
    for key, value in node.items() if isinstance(node, dict) else enumerate(inner):
        if key not in ("examples", "misnamed"):
            yield from _still_plain(value)
