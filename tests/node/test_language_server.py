"""What an editor with a server of the language YAML shows, completes and marks by the schemas in `schema/editor/`."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from language_server import Server
from pages import ROOT
from undertrim.record.fields import root
from undertrim.record.layout import modeline
from undertrim.record.store import Workspace

PLACE = Workspace(ROOT)
FINCH = ROOT / "records" / "vehicles" / "kelbrook" / "finch-2014-2018.yaml"


@pytest.fixture(scope="module")
def server() -> Iterator[Server]:
    with Server() as running:
        yield running


def text_of(path: Path) -> str:
    return modeline.with_line(path.read_text(encoding="utf-8"), modeline.wanted(path, PLACE.kind(path), ROOT))


def test_no_false_alarm_in_anything_shipped(server: Server) -> None:
    files = PLACE.files()
    assert len(files) > 50
    for path in files:
        assert server.problems(path, text_of(path)) == [], path


LINES = text_of(FINCH).splitlines()
RELEASE = next(number for number, line in enumerate(LINES) if line == "        release: [pull, rearward, 3 min]")
VENT = LINES.index("      vent-trim:")
PART = "      odd-trim:\n        release: pull"


def said(server: Server, line: int, text: str) -> list[str]:
    """What is said of the record with another line in place of one."""
    changed = [*LINES[:line], text, *LINES[line + 1 :]]
    return [problem["message"] for problem in server.problems(FINCH, "\n".join(changed) + "\n")]


def test_a_field_is_explained_in_the_words_of_the_schema(server: Server) -> None:
    assert said(server, RELEASE, LINES[RELEASE]) == []
    assert said(server, RELEASE, "        release: pull") == []
    shown = server.hover(FINCH, RELEASE, 9).replace("\\", "")
    part = root("vehicle").child("parts").child("*").child("release").schema  # type: ignore[union-attr]
    assert part["title"].english in shown
    assert part["description"].english in shown
    assert "`unscrew`" in shown


def test_a_wrong_key_and_a_wrong_word_are_marked(server: Server) -> None:
    assert any("relaese" in text for text in said(server, RELEASE, "        relaese: [pull, rearward, 3 min]"))
    assert any('"pull"' in text and '"peel"' in text for text in said(server, RELEASE, "        release: pul"))


@pytest.mark.parametrize(
    ("line", "marked"),
    [
        ("        held_by: {clip: pus, count: 2}", '"push"'),
        ("        held_by: [{clip: push, cuont: 2}]", "cuont"),
        ("        tethers: {lamp: [Lamp plug, plog]}", '"plug"'),
        ("        takes: 3", "type"),
        ("        takes: 3 mm", "min"),
        ("        held_by: {clip: push, count: many}", "pattern"),
    ],
)
def test_short_forms_are_held_to_their_fields(server: Server, line: str, marked: str) -> None:
    assert any(marked in text for text in said(server, VENT, f"{PART}\n{line}\n{LINES[VENT]}"))


@pytest.mark.parametrize(
    "line",
    [
        "        held_by: {clip: push, at: {top: 2}}",
        "        held_by: [{clip: push, count: unknown}, {hook: tab, count: '2'}]",
        "        after: none",
        "        tethers: {lamp: [Lamp plug, plug, [lamps, sound]]}",
        "        takes: none",
        "        refit_takes: 1 1/2 min",
        "        laid: 2016",
    ],
)
def test_what_may_be_typed_is_not_marked(server: Server, line: str) -> None:
    assert said(server, VENT, f"{PART}\n{line}\n{LINES[VENT]}") == []


def test_keys_and_words_are_offered(server: Server) -> None:
    said(server, RELEASE, f"{LINES[RELEASE]}\n        ")
    offered = server.offered(FINCH, RELEASE + 1, 8)
    assert {"after", "needs", "laid", "cautions"} <= set(offered)
    assert "release" not in offered
    said(server, RELEASE, "        release: ")
    assert {"pull", "lift", "peel"} <= set(server.offered(FINCH, RELEASE, 17))
    said(server, len(LINES) - 1, f"{LINES[-1]}\n")
    assert "closures" in server.offered(FINCH, len(LINES), 0)
