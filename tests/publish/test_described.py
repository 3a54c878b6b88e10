"""What is published of a kind is described in the room of the kind."""

from typing import Any

import pytest

from undertrim.publish import described

MADE: dict[str, Any] = {"title": "Bore", "description": "A hole.", "type": "object", "properties": {}}


def test_a_kind_brings_its_drawings_its_form_and_its_gear(monkeypatch: pytest.MonkeyPatch) -> None:
    named = {"drawn": {"bore": "hole"}, "place": "hole", "sizes": {"camera": "hole"}, "$defs": {"hole": MADE}}
    monkeypatch.setattr(described, "parts", lambda: [{"published": named}])
    defined, there = described.schema()["$defs"], {"$ref": "#/$defs/hole"}
    assert defined["hole"] == MADE
    assert defined["drawn"]["properties"] == {"bore": there}
    assert defined["form"]["properties"]["opening"]["anyOf"] == [there]
    assert defined["shelf-gear"]["properties"]["gear"]["anyOf"] == [there]
    assert defined["shelf-gear"]["properties"]["kind"]["enum"] == ["camera"]


def test_a_kind_may_be_neither_drawn_nor_typed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(described, "parts", lambda: [{"published": {"$defs": {}}}, {}])
    assert described.schema()["$defs"]["drawn"]["properties"] == {}


def test_the_usual_clearances_are_those_of_the_kinds() -> None:
    usual = described.schema()["$defs"]["usual"]
    assert set(usual["required"]) == set(usual["properties"]) > {"rear", "plug_room", "bounds"}
