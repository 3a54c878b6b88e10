"""Messages become sentences by one catalogue, and translators' tools can read it."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from babel.messages.pofile import read_po, write_po

import undertrim
from undertrim.resources import table
from undertrim.words import Language, Message, message, sentence, way_out
from undertrim.words.catalogue import FOLDER, UnknownLanguage, english, language, read
from undertrim.words.message import word

ROOT = Path(__file__).parent.parent.parent
PACKAGE = Path(undertrim.__file__).parent
ROOMS = sorted(path.stem for path in (FOLDER / "english").glob("*.toml"))


def texts() -> Iterator[tuple[str, str, str]]:
    """Every text of the catalogue: its code, its part, and its English."""
    for room in ROOMS:
        for name, entry in english(room).items():
            yield from ((f"{room}/{name}", part, text) for part, text in entry.items())


@pytest.fixture(scope="module")
def marked(tmp_path_factory: pytest.TempPathFactory) -> Language:
    """A language in which every text is marked, made by the tools that translators use."""
    folder = tmp_path_factory.mktemp("words")
    template = folder / "undertrim.pot"
    subprocess.run(
        [
            sys.executable,
            "-m",
            "babel.messages.frontend",
            "extract",
            "-F",
            "pyproject.toml",
            "-o",
            template,
            "generator",
        ],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    with template.open("rb") as file:
        catalogue = read_po(file)
    for entry in catalogue:
        if entry.id:
            entry.string = f"[{entry.id}]"
    with (folder / "undertrim.po").open("wb") as out:
        write_po(out, catalogue)
    return read("xx", folder / "undertrim.po")


def test_a_message_is_a_sentence_with_its_values() -> None:
    said = message(
        "replay/fewer-put-in", step="Trim", count=3, of=4, kind=word("fasteners", "clip", "label"), what="push"
    )
    assert sentence(said) == "'Trim' puts in 3 of 4 clip 'push'"
    assert way_out(said) == ""


def test_a_message_stands_in_a_message() -> None:
    doing = message("acts/park", tether="Lamp plug")
    said = message("replay/ends-restraint", step="Trim", doing=doing)
    assert sentence(said) == "'Trim' leaves 'Lamp plug' off, which is restraint wiring"
    assert way_out(said) == "write 'then: leave', or 'then: rejoin'"


def test_a_name_of_a_record_is_never_taken_for_a_place_to_fill() -> None:
    assert "'{count}'" in sentence(message("replay/twice", step="{count}"))


def test_what_the_catalogue_does_not_know_is_our_fault() -> None:
    for wrong in (message("replay/no-such-code"), message("replay/twice")):
        with pytest.raises(KeyError):
            sentence(wrong)
    with pytest.raises(UnknownLanguage):
        language("xx")


def test_every_text_reaches_the_translators(marked: Language) -> None:
    from undertrim.words.catalogue import context

    assert {(context(code, part), text) for code, part, text in texts()} <= set(marked.texts)


def test_a_marked_language_leaves_no_word_unmarked(marked: Language) -> None:
    doing = message("acts/park", tether="Lamp plug")
    said = message("replay/ends-restraint", step="Trim", doing=doing)
    assert sentence(said, marked) == "['Trim' [leaves 'Lamp plug' off], which is restraint wiring]"
    lid = message("replay/locked-in", step="Battery off", name="boot", lid=word("states", "state", "boot", "label"))
    assert "the [boot] shut" in sentence(lid, marked)
    assert way_out(lid, marked) == "[add 'needs: {boot: open}' to this preparation]"


def test_a_translation_of_another_sentence_is_not_shown(marked: Language) -> None:
    old = Language("xx", {("replay/twice", "'{step}' is off"): "old"})
    assert sentence(message("replay/twice", step="Trim"), old) == "'Trim' is off already"


@pytest.mark.parametrize(("code", "part", "text"), list(texts()), ids=lambda text: text if "/" in text else "")
def test_a_text_is_a_sentence_without_its_full_stop(code: str, part: str, text: str) -> None:
    assert text.strip() == text != ""
    assert not text.endswith(".")
    assert part in ("says", "way_out")


def test_every_code_in_the_source_is_in_the_catalogue_with_its_values() -> None:
    known = {code for code, _, _ in texts()}
    written = {code for path in PACKAGE.rglob("*.py") for code in _codes(path)}
    assert written - known == set()
    assert len(written) > 40  # else they are not found


def _codes(path: Path) -> Iterator[str]:
    """Codes that stand in full in `message(...)` and `fault(...)`."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.args:
            places = {"message": (node.args[0], ""), "fault": (node.args[1] if len(node.args) > 1 else None, "replay/")}
            argument, room = places.get(node.func.id, (None, ""))
            if isinstance(argument, ast.Constant) and isinstance(argument.value, str):
                yield room + argument.value


def test_every_state_has_words_for_each_value_it_can_have() -> None:
    values = {(state, entry["initial"]) for state, entry in table("states")["state"].items()}
    values |= {pair for entry in table("states")["usual"] for pair in entry["sets"].items()}
    assert {f"{state}-{value}" for state, value in values} | {"battery-partly-off"} <= set(english("states"))


def test_messages_are_values() -> None:
    assert message("replay/twice", step="A") == Message("replay/twice", (("step", "A"),))
    assert len({message("replay/twice", step="A"), message("replay/twice", step="A")}) == 1
