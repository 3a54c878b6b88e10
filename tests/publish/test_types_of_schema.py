"""The types of the pages' scripts are those of the schema of what is published."""

import pytest

import types_of_schema


def test_the_types_are_as_the_schema_says(capsys: pytest.CaptureFixture[str]) -> None:
    code = types_of_schema.main(["--check"])
    assert (code, capsys.readouterr().out) == (0, "")


def test_other_types_are_told_with_the_way_out(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:  # fmt: skip
    monkeypatch.setattr(types_of_schema, "made", lambda: "")
    assert types_of_schema.main(["--check"]) == 1
    assert types_of_schema.COMMAND in capsys.readouterr().out


def test_what_a_schema_says_becomes_a_type() -> None:
    two = {"title": "Two", "description": "A pair.", "type": "array", "prefixItems": [{"type": "string"}, {"type": "integer"}]}  # fmt: skip
    one = {
        "title": "One", "description": "A thing.", "type": "object", "required": ["kind"],
        "properties": {
            "kind": {"title": "Kind", "description": "Which.", "enum": ["a", "b"]},
            "more": {"anyOf": [{"$ref": "#/$defs/two-things"}, {"type": "null"}]},
            "by": {"title": "By", "description": "By name.", "type": "object", "additionalProperties": {"type": ["number", "null"]}},
        },
    }  # fmt: skip
    assert types_of_schema.types({"$defs": {"one": one, "two-things": two}}).split("\n\n")[1:] == [
        '/** One: A thing. */\nexport interface One {\n  /** Which. */\n  kind: "a" | "b";\n  more?: TwoThings | null;\n'
        "  /** By name. */\n  by?: Record<string, number | null>;\n}",
        "/** Two: A pair. */\nexport type TwoThings = [string, number];\n",
    ]
